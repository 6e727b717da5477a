package org.meadowmark.core.change.rates;

import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Season;

/**
 * New scars of a season in a scope.
 *
 * <p>Scars that were cut and healed between the two surveys were never seen: the longer the season,
 * the more of them are missing.
 *
 * @param season between which surveys
 * @param scope where
 * @param bedHectares bed that both surveys looked at
 * @param newScars scars that are new, lines and polygons
 * @param newScarsInterval exact interval of the expected number
 * @param newMetres length of new scar line inside beds: new scars, and what others grew by
 * @param newMetresInterval interval of the expected length, {@link PoissonInterval#ofLengths}
 */
public record NewScarRate(
    Season season,
    Scope scope,
    double bedHectares,
    int newScars,
    Interval newScarsInterval,
    double newMetres,
    Interval newMetresInterval) {

  private double hectareYears() {
    return bedHectares * season.years();
  }

  /** {@return new scar metres per hectare and year; empty without bed in common} */
  public OptionalDouble metresPerHectareYear() {
    return bedHectares > 0 ? OptionalDouble.of(newMetres / hectareYears()) : OptionalDouble.empty();
  }

  /** {@return interval of {@link #metresPerHectareYear}} */
  public Optional<Interval> metresPerHectareYearInterval() {
    return bedHectares > 0
        ? Optional.of(
            new Interval(
                newMetresInterval.low() / hectareYears(),
                newMetresInterval.high() / hectareYears()))
        : Optional.empty();
  }
}
