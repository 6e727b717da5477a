package org.meadowmark.core.change.rates;

import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.model.Range;

/**
 * Scars of the earlier survey that were gone at the later one, against the recovery model.
 *
 * <p>Gone means not seen: a scar too narrow to be seen in the later survey counts as healed.
 *
 * @param season between which surveys
 * @param scope where
 * @param species key of the species of the scars' beds, or empty; empty too where species are not
 *     told apart
 * @param widthLowMetres lower limit of the class of widths, which belongs to it; empty in rows of
 *     all widths
 * @param widthHighMetres upper limit, which does not; empty for the widest class
 * @param scars scars in beds that both surveys looked at
 * @param healed those of them that were gone
 * @param interval exact interval of the share; empty without scars
 * @param expected healed scars that the recovery model expects: low with slow edges, high with fast
 *     ones; only of scars that it has a rate for
 * @param expectedOf scars that it has a rate for
 */
public record HealingRate(
    Season season,
    Scope scope,
    String species,
    OptionalDouble widthLowMetres,
    OptionalDouble widthHighMetres,
    int scars,
    int healed,
    Optional<Interval> interval,
    Range expected,
    int expectedOf) {

  /** {@return share that healed; empty without scars} */
  public OptionalDouble share() {
    return scars > 0 ? OptionalDouble.of((double) healed / scars) : OptionalDouble.empty();
  }

  /** {@return rate a year, −ln(1 − share)/years; empty without scars or where all healed} */
  public OptionalDouble perYear() {
    return scars > 0 && healed < scars
        ? OptionalDouble.of(perYear((double) healed / scars))
        : OptionalDouble.empty();
  }

  private double perYear(double share) {
    return -Math.log1p(-share) / season.years();
  }

  /** {@return lower limit of {@link #perYear}} */
  public OptionalDouble perYearLow() {
    return interval.isPresent()
        ? OptionalDouble.of(perYear(interval.get().low()))
        : OptionalDouble.empty();
  }

  /** {@return upper limit of {@link #perYear}; empty where there is none} */
  public OptionalDouble perYearHigh() {
    return interval.isPresent() && interval.get().high() < 1
        ? OptionalDouble.of(perYear(interval.get().high()))
        : OptionalDouble.empty();
  }
}
