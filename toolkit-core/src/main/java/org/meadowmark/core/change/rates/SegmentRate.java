package org.meadowmark.core.change.rates;

import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.rank.ChannelSegment;

/**
 * New scars nearest to a channel segment in a season.
 *
 * @param season between which surveys
 * @param segment the segment
 * @param bedHectares bed in reach that both surveys looked at
 * @param newMetres length of new scar line nearest to the segment, inside beds or not
 * @param newMetresInterval interval of the expected length, {@link PoissonInterval#ofLengths}
 * @param newScars new scars with a part nearest to it
 * @param cutAgain those of them that lie on ground scarred before
 * @param cutAgainInterval exact interval of their share; empty without new scars
 */
public record SegmentRate(
    Season season,
    ChannelSegment segment,
    double bedHectares,
    double newMetres,
    Interval newMetresInterval,
    int newScars,
    int cutAgain,
    Optional<Interval> cutAgainInterval) {

  /** {@return new scar metres per hectare of bed in reach and year; empty without bed} */
  public OptionalDouble metresPerHectareYear() {
    return perHectareYear(newMetres);
  }

  /** {@return lower limit of {@link #metresPerHectareYear}} */
  public OptionalDouble low() {
    return perHectareYear(newMetresInterval.low());
  }

  /** {@return upper limit of {@link #metresPerHectareYear}} */
  public OptionalDouble high() {
    return perHectareYear(newMetresInterval.high());
  }

  /** {@return new scar metres per kilometre of channel and year} */
  public double metresPerKilometreYear() {
    return newMetres / (segment.lengthMetres() / 1_000 * season.years());
  }

  private OptionalDouble perHectareYear(double metres) {
    return bedHectares > 0
        ? OptionalDouble.of(metres / (bedHectares * season.years()))
        : OptionalDouble.empty();
  }
}
