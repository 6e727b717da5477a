package org.meadowmark.core.measure.recovery;

import java.util.Locale;
import java.util.Optional;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarRecoveryTime;
import org.meadowmark.core.survey.RecoveryParameters;

/**
 * Edge rates by species: times seen at the place first, then published ones, the user's range for
 * the others.
 */
final class EdgeRates {
  private final ReferenceTables tables;
  private final RecoveryParameters parameters;

  EdgeRates(ReferenceTables tables, RecoveryParameters parameters) {
    this.tables = tables;
    this.parameters = parameters;
  }

  /**
   * The rate in a species.
   *
   * @param species its key; empty or {@code unknown} where it was not mapped
   */
  EdgeRate of(String species) {
    Range observed = parameters.observedRecoveryYears().get(species);
    if (observed != null) {
      double seenWidth = parameters.unlistedScarWidthMetres();
      return new EdgeRate(
          Optional.of(new ScarRecoveryTime(species, observed, seenWidth, "").edgeMetresPerYear()),
          times(observed, seenWidth) + " (observed_recovery_years, " + species + ")");
    }
    ScarRecoveryTime published = tables.scarRecovery().get(species);
    if (published != null) {
      return new EdgeRate(
          Optional.of(published.edgeMetresPerYear()),
          times(published.years(), published.scarWidthMetres())
              + " (table scar-recovery, "
              + species
              + ")");
    }
    String name = species.isEmpty() ? "no species mapped" : "species " + species;
    if (parameters.unlistedRecoveryYears().isEmpty()) {
      return new EdgeRate(
          Optional.empty(),
          name
              + ": no published recovery time; give unlisted_recovery_years or a row of"
              + " scar-recovery");
    }
    Range years = parameters.unlistedRecoveryYears().get();
    double width = parameters.unlistedScarWidthMetres();
    return new EdgeRate(
        Optional.of(new ScarRecoveryTime(species, years, width, "").edgeMetresPerYear()),
        times(years, width) + " (unlisted_recovery_years, " + name + ")");
  }

  private static String times(Range years, double width) {
    return String.format(
        Locale.ROOT,
        "scars of %.2f m close in %.2f, %.2f, %.2f years",
        width,
        years.low(),
        years.middle(),
        years.high());
  }
}
