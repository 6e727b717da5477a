package org.meadowmark.core.change.rates;

import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Season;

/**
 * A figure of fragmentation, connectivity or damage at two surveys.
 *
 * <p>Each value is that of the survey's own beds and surveyed area.
 *
 * @param season between which surveys
 * @param scope where
 * @param figure which figure
 * @param earlier value at the earlier survey; empty where it is not defined
 * @param later value at the later survey
 * @param ratioInterval interval of later / earlier over beds ({@link BedBootstrap}), of the beds
 *     that both surveys have by id; empty with too few of them. For the connected area it is that
 *     of the parts inside beds
 */
public record FigureChange(
    Season season,
    Scope scope,
    ChangeFigure figure,
    OptionalDouble earlier,
    OptionalDouble later,
    Optional<Interval> ratioInterval) {

  /** {@return later / earlier; empty where one is not defined or the earlier is 0} */
  public OptionalDouble ratio() {
    return earlier.isPresent() && later.isPresent() && earlier.getAsDouble() > 0
        ? OptionalDouble.of(later.getAsDouble() / earlier.getAsDouble())
        : OptionalDouble.empty();
  }
}
