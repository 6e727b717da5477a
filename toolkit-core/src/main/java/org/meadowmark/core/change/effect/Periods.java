package org.meadowmark.core.change.effect;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.meadowmark.core.change.Season;

/**
 * The seasons before and after a marker. A season that the marker's day lies inside is neither.
 *
 * @param before positions of the seasons that end on or before the day
 * @param after positions of those that start on or after it
 */
record Periods(List<Integer> before, List<Integer> after) {

  static Periods around(LocalDate placed, List<Season> seasons) {
    return new Periods(
        IntStream.range(0, seasons.size())
            .filter(season -> !seasons.get(season).end().isAfter(placed))
            .boxed()
            .toList(),
        IntStream.range(0, seasons.size())
            .filter(season -> !seasons.get(season).start().isBefore(placed))
            .boxed()
            .toList());
  }

  boolean areComplete() {
    return !before.isEmpty() && !after.isEmpty();
  }
}
