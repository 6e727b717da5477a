package org.meadowmark.core.change.rates;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.measure.StrTreeQuery;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;

/**
 * Finds new scars on ground that an earlier survey saw scarred.
 *
 * <p>A new line lies on earlier ground where it is within half the width of an earlier scar plus
 * the combined positional accuracy of its middle line, or inside a polygon grown by that accuracy.
 * It was cut again where at least half of its length does. A scar that persists may have been cut
 * again too: that cannot be seen and is not counted.
 *
 * <p>Time n log n in scars of a usual density.
 */
public final class ReScarring {
  private static final double LEAST_SHARE = 0.5;

  private ReScarring() {}

  /**
   * {@return ids of the new line scars of a season that lie on ground scarred before}
   *
   * @param pairs surveys in order of time, up to the season
   */
  public static Set<String> of(List<SeasonPair> pairs) {
    SeasonPair last = pairs.get(pairs.size() - 1);
    return of(
        pairs.stream().map(pair -> pair.earlier().mapped()).toList(),
        last.later().mapped(),
        last.match());
  }

  /**
   * {@return ids of the new line scars of a survey that lie on ground scarred before}
   *
   * @param earlier earlier surveys
   * @param survey the survey
   * @param match the last of the earlier ones matched with it
   */
  public static Set<String> of(List<MetricSurvey> earlier, MetricSurvey survey, SeasonMatch match) {
    double tolerance = match.toleranceMetres();
    STRtree index = new STRtree();
    double widest = 0;
    for (MetricSurvey before : earlier) {
      for (Scar scar : before.scars()) {
        index.insert(scar.geometry().getEnvelopeInternal(), scar);
        widest = Math.max(widest, scar.widthMetres());
      }
    }
    index.build();
    Set<String> fresh = new HashSet<>();
    for (ScarChange change : match.later()) {
      if (change.isLine() && change.change() == ChangeClass.NEW) {
        fresh.add(change.id());
      }
    }
    double reach = widest;
    return survey.scars().parallelStream()
        .filter(scar -> fresh.contains(scar.id()))
        .filter(scar -> isOnEarlierGround(scar, index, tolerance, reach, survey))
        .map(Scar::id)
        .collect(Collectors.toSet());
  }

  private static boolean isOnEarlierGround(
      Scar scar, STRtree index, double tolerance, double widest, MetricSurvey survey) {
    Geometry left = scar.geometry();
    double length = left.getLength();
    Coordinate centre = left.getEnvelopeInternal().centre();
    double factor = survey.scale().lengthFactor(centre.x, centre.y);
    Envelope around = new Envelope(left.getEnvelopeInternal());
    around.expandBy((tolerance + widest / 2) * factor);
    for (Scar earlier : StrTreeQuery.<Scar>items(index, around)) {
      double reach = (tolerance + earlier.widthMetres() / 2) * factor;
      if (!left.isWithinDistance(earlier.geometry(), reach)) {
        continue;
      }
      left = left.difference(BufferOp.bufferOp(earlier.geometry(), reach));
      if (left.getLength() <= (1 - LEAST_SHARE) * length) {
        return true;
      }
    }
    return false;
  }
}
