package org.meadowmark.core.change.effect;

import java.util.List;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.survey.ExposureBasis;

/**
 * New scar metres and exposure of a segment before and after a day.
 *
 * @param metresBefore new scar metres in the seasons before
 * @param exposureBefore exposure times years in those
 * @param metresAfter new scar metres in the seasons after
 * @param exposureAfter exposure times years in those
 */
record Amounts(
    double metresBefore, double exposureBefore, double metresAfter, double exposureAfter) {
  static final Amounts NONE = new Amounts(0, 0, 0, 0);

  static Amounts of(
      SegmentSeasons segment, Periods periods, List<Season> seasons, ExposureBasis basis) {
    return new Amounts(
        metres(segment, periods.before()),
        exposure(segment, periods.before(), seasons, basis),
        metres(segment, periods.after()),
        exposure(segment, periods.after(), seasons, basis));
  }

  private static double metres(SegmentSeasons segment, List<Integer> seasons) {
    return seasons.stream().mapToDouble(segment.newScarMetres()::get).sum();
  }

  private static double exposure(
      SegmentSeasons segment, List<Integer> positions, List<Season> seasons, ExposureBasis basis) {
    return positions.stream()
        .mapToDouble(season -> segment.exposure(basis, season) * seasons.get(season).years())
        .sum();
  }

  Amounts plus(Amounts other) {
    return new Amounts(
        metresBefore + other.metresBefore,
        exposureBefore + other.exposureBefore,
        metresAfter + other.metresAfter,
        exposureAfter + other.exposureAfter);
  }

  Amounts minus(Amounts other) {
    return new Amounts(
        Math.max(0, metresBefore - other.metresBefore),
        exposureBefore - other.exposureBefore,
        Math.max(0, metresAfter - other.metresAfter),
        exposureAfter - other.exposureAfter);
  }

  double rateBefore() {
    return metresBefore / exposureBefore;
  }

  double rateAfter() {
    return metresAfter / exposureAfter;
  }

  /** Change of the rate. */
  double change() {
    return rateAfter() - rateBefore();
  }

  /** Weight of the segment among others: exposure times years in all. */
  double weight() {
    return exposureBefore + exposureAfter;
  }
}
