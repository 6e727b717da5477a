package org.meadowmark.core.measure.recovery;

import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.model.Range;

/**
 * Recovery and loss of one scar, with and without planting.
 *
 * @param scarId the scar
 * @param bedId bed that most of it lies in, by line length, or by area for a polygon; empty where
 *     it lies in none
 * @param species key of that bed's species, or empty
 * @param areaInBedsSquareMetres footprint inside beds, this scar alone: what the loss is of
 * @param excavationMetres how deep it is dug out, where that was mapped
 * @param regrowth how it closes; empty where no rate is known
 * @param basis in words where the rate comes from, or why there is none
 * @param alone without planting; empty where no rate is known
 * @param planted planted at the base; empty where no rate is known
 */
public record ScarRecovery(
    String scarId,
    String bedId,
    String species,
    double areaInBedsSquareMetres,
    OptionalDouble excavationMetres,
    Optional<ScarRegrowth> regrowth,
    String basis,
    Optional<Outlook> alone,
    Optional<Outlook> planted) {

  /**
   * {@return discounted service-hectare-years that planting gives back, over the three estimates}
   */
  public Optional<Range> gainServiceHectareYears() {
    if (alone.isEmpty() || planted.isEmpty()) {
      return Optional.empty();
    }
    Range without = alone.get().lossServiceHectareYears();
    Range with = planted.get().lossServiceHectareYears();
    return Optional.of(
        Range.around(
            without.middle() - with.middle(),
            without.low() - with.low(),
            without.high() - with.high()));
  }
}
