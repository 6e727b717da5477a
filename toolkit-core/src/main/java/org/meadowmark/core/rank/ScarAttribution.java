package org.meadowmark.core.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.measure.StrTreeQuery;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;

/**
 * Gives every metre of scar line to its nearest channel segment over water.
 *
 * <p>A scar is walked in steps. Where both ends of a step are nearest to the same segment, the step
 * is its; else the step is halved until the change is found to the centimetre. Parts of a scar add
 * up to its length. "Over water" means that the straight way to the nearest point of the segment
 * touches no barrier; a segment that is seen only across a barrier is passed over for the next
 * nearest. Equally near segments: the lower id.
 */
final class ScarAttribution {
  private static final double FINEST_METRES = 0.01;
  private static final double EQUAL_METRES = 1e-9;
  private static final int OUT_OF_REACH = -1;
  private static final int BLOCKED = -2;

  private record Nearest(int segment, double metres) {}

  /**
   * A part of a scar.
   *
   * @param segment position of the segment, or a negative code
   * @param metres length on the ground
   * @param nearestMetres smallest distance to the segment met on the way
   */
  private record Part(int segment, double metres, double nearestMetres) {
    Part plus(Part other) {
      return new Part(segment, metres + other.metres, Math.min(nearestMetres, other.nearestMetres));
    }
  }

  /**
   * Result for one scar.
   *
   * @param shares lengths by segment, by segment id
   * @param lengthMetres length of the scar
   * @param outOfReachMetres length farther from every segment than the reach
   * @param blockedMetres length with segments in reach only across barriers
   */
  record Attributed(
      List<ScarShare> shares, double lengthMetres, double outOfReachMetres, double blockedMetres) {}

  private final MetricSurvey survey;
  private final List<ChannelSegment> segments;
  private final double reachMetres;
  private final double stepMetres;
  private final Barriers barriers;
  private final STRtree index = new STRtree();

  ScarAttribution(
      MetricSurvey survey,
      List<ChannelSegment> segments,
      double reachMetres,
      double stepMetres,
      GeometryFactory factory) {
    this.survey = survey;
    this.segments = segments;
    this.reachMetres = reachMetres;
    this.stepMetres = stepMetres;
    this.barriers = new Barriers(survey.barriers(), factory);
    for (int i = 0; i < segments.size(); i++) {
      index.insert(segments.get(i).geometry().getEnvelopeInternal(), i);
    }
    index.build();
  }

  Barriers barriers() {
    return barriers;
  }

  /** Attributes every scar line, in scar order. */
  List<Attributed> attribute(Progress progress) {
    return IntStream.range(0, survey.scars().size())
        .parallel()
        .mapToObj(
            i -> {
              Attributed attributed = attribute(survey.scars().get(i));
              progress.advance(1);
              return attributed;
            })
        .toList();
  }

  private Attributed attribute(Scar scar) {
    Map<Integer, Part> bySegment = new TreeMap<>();
    double length = 0;
    if (scar.isLine()) {
      Coordinate centre = scar.geometry().getEnvelopeInternal().centre();
      double factor = survey.scale().lengthFactor(centre.x, centre.y);
      for (Object part : LinearComponentExtracter.getLines(scar.geometry())) {
        walk((LineString) part, factor, bySegment);
      }
      length = scar.geometry().getLength() / factor;
    }
    Part none = new Part(OUT_OF_REACH, 0, 0);
    double outOfReach = bySegment.getOrDefault(OUT_OF_REACH, none).metres;
    double blocked = bySegment.getOrDefault(BLOCKED, none).metres;
    List<ScarShare> shares =
        bySegment.values().stream()
            .filter(part -> part.segment >= 0)
            .map(
                part ->
                    new ScarShare(
                        scar.id(),
                        segments.get(part.segment).id(),
                        part.metres,
                        part.nearestMetres))
            .sorted(Comparator.comparing(ScarShare::segmentId, Ids.ORDER))
            .toList();
    return new Attributed(shares, length, outOfReach, blocked);
  }

  private void walk(LineString line, double factor, Map<Integer, Part> bySegment) {
    Coordinate[] vertices = line.getCoordinates();
    Nearest atFrom = nearest(vertices[0], factor);
    for (int v = 0; v + 1 < vertices.length; v++) {
      double length = vertices[v].distance(vertices[v + 1]) / factor;
      int count = Math.max(1, (int) Math.ceil(length / stepMetres));
      Coordinate from = vertices[v];
      for (int i = 1; i <= count; i++) {
        Coordinate to =
            new LineSegment(vertices[v], vertices[v + 1]).pointAlong((double) i / count);
        Nearest atTo = nearest(to, factor);
        split(from, atFrom, to, atTo, length / count, factor, bySegment);
        from = to;
        atFrom = atTo;
      }
    }
  }

  private void split(
      Coordinate from,
      Nearest atFrom,
      Coordinate to,
      Nearest atTo,
      double metres,
      double factor,
      Map<Integer, Part> bySegment) {
    if (atFrom.segment == atTo.segment) {
      add(new Part(atFrom.segment, metres, Math.min(atFrom.metres, atTo.metres)), bySegment);
    } else if (metres < FINEST_METRES) {
      add(new Part(atFrom.segment, metres / 2, atFrom.metres), bySegment);
      add(new Part(atTo.segment, metres / 2, atTo.metres), bySegment);
    } else {
      Coordinate middle = LineSegment.midPoint(from, to);
      Nearest atMiddle = nearest(middle, factor);
      split(from, atFrom, middle, atMiddle, metres / 2, factor, bySegment);
      split(middle, atMiddle, to, atTo, metres / 2, factor, bySegment);
    }
  }

  private static void add(Part part, Map<Integer, Part> bySegment) {
    bySegment.merge(part.segment, part, Part::plus);
  }

  private Nearest nearest(Coordinate point, double factor) {
    double reach = reachMetres * factor;
    Envelope around = new Envelope(point);
    around.expandBy(reach);
    List<Nearest> candidates = new ArrayList<>();
    for (int i : StrTreeQuery.<Integer>items(index, around)) {
      double distance =
          Distance.pointToSegmentString(point, segments.get(i).geometry().getCoordinates());
      if (distance <= reach) {
        candidates.add(new Nearest(i, distance));
      }
    }
    if (candidates.isEmpty()) {
      return new Nearest(OUT_OF_REACH, Double.POSITIVE_INFINITY);
    }
    while (!candidates.isEmpty()) {
      Nearest best = best(candidates);
      if (!barriers.block(point, closestPoint(point, segments.get(best.segment).geometry()))) {
        return new Nearest(best.segment, best.metres / factor);
      }
      candidates.remove(best);
    }
    return new Nearest(BLOCKED, Double.POSITIVE_INFINITY);
  }

  private Nearest best(List<Nearest> candidates) {
    Nearest best = candidates.get(0);
    for (Nearest candidate : candidates) {
      boolean nearer = candidate.metres < best.metres - EQUAL_METRES;
      boolean asNear = candidate.metres <= best.metres + EQUAL_METRES;
      if (nearer || asNear && idBefore(candidate, best)) {
        best = candidate;
      }
    }
    return best;
  }

  private boolean idBefore(Nearest candidate, Nearest best) {
    return Ids.ORDER.compare(segments.get(candidate.segment).id(), segments.get(best.segment).id())
        < 0;
  }

  private static Coordinate closestPoint(Coordinate point, LineString line) {
    Coordinate[] vertices = line.getCoordinates();
    Coordinate closest = vertices[0];
    double smallest = Double.POSITIVE_INFINITY;
    for (int i = 0; i + 1 < vertices.length; i++) {
      Coordinate candidate = new LineSegment(vertices[i], vertices[i + 1]).closestPoint(point);
      double distance = candidate.distance(point);
      if (distance < smallest) {
        smallest = distance;
        closest = candidate;
      }
    }
    return closest;
  }
}
