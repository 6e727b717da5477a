package org.meadowmark.core.rank;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.NearestSegments.Nearest;
import org.meadowmark.core.rank.evidence.ChannelTurns;
import org.meadowmark.core.rank.evidence.PartEvidence;
import org.meadowmark.core.rank.evidence.PieceReader;
import org.meadowmark.core.survey.Parameters;

/**
 * Gives every metre of scar line to its nearest channel segment over water, and reads on the way
 * how it lies to the channel and how deep the water is.
 *
 * <p>A scar is walked in steps. Where both ends of a step are nearest to the same segment, the step
 * is its; else the step is halved until the change is found to the centimetre. Parts of a scar add
 * up to its length. "Over water" means that the straight way to the nearest point of the segment
 * touches no barrier; a segment that is seen only across a barrier is passed over for the next
 * nearest.
 */
final class ScarAttribution {
  private static final double FINEST_METRES = 0.01;

  /**
   * The part of a scar that belongs to a segment.
   *
   * @param segment position of the segment
   * @param evidence what was seen along it
   */
  record Part(int segment, PartEvidence evidence) {}

  /**
   * Result for one scar.
   *
   * @param parts by segment id
   * @param lengthMetres length of the scar
   * @param outOfReachMetres length farther from every segment than the reach
   * @param blockedMetres length with segments in reach only across barriers
   */
  record Attributed(
      List<Part> parts, double lengthMetres, double outOfReachMetres, double blockedMetres) {}

  private final MetricSurvey survey;
  private final List<ChannelSegment> segments;
  private final NearestSegments nearest;
  private final double[] turns;
  private final PieceReader reader;
  private final Parameters parameters;

  ScarAttribution(
      MetricSurvey survey,
      List<ChannelSegment> segments,
      NearestSegments nearest,
      Parameters parameters) {
    this.survey = survey;
    this.segments = segments;
    this.nearest = nearest;
    this.parameters = parameters;
    this.turns = ChannelTurns.degrees(segments.stream().map(ChannelSegment::geometry).toList());
    this.reader = new PieceReader(parameters.ranking());
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
    if (!scar.isLine()) {
      return new Attributed(List.of(), 0, 0, 0);
    }
    Coordinate centre = scar.geometry().getEnvelopeInternal().centre();
    Walk walk = new Walk(survey.scale().lengthFactor(centre.x, centre.y));
    for (Object part : LinearComponentExtracter.getLines(scar.geometry())) {
      walk.along((LineString) part);
    }
    List<Part> parts =
        walk.bySegment.entrySet().stream()
            .filter(entry -> entry.getKey() >= 0)
            .map(entry -> new Part(entry.getKey(), entry.getValue()))
            .sorted(Comparator.comparing(part -> segments.get(part.segment).id(), Ids.ORDER))
            .toList();
    return new Attributed(
        parts,
        scar.geometry().getLength() / walk.factor,
        walk.metres(NearestSegments.OUT_OF_REACH),
        walk.metres(NearestSegments.BLOCKED));
  }

  /** The walk along one scar. */
  private final class Walk {
    final Map<Integer, PartEvidence> bySegment = new TreeMap<>();
    private final double factor;
    private final double reach;
    private NearestSegments.Search search;
    private OptionalDouble depth = OptionalDouble.empty();

    Walk(double factor) {
      this.factor = factor;
      this.reach = parameters.channelReachMetres() * factor;
    }

    double metres(int segment) {
      return bySegment.getOrDefault(segment, PartEvidence.NONE).metres();
    }

    void along(LineString line) {
      Coordinate[] vertices = line.getCoordinates();
      Envelope whole = line.getEnvelopeInternal();
      search =
          nearest.within(
              whole.getDiameter() <= 2 * reach ? whole : new Envelope(vertices[0]), reach);
      Nearest atFrom = search.nearest(vertices[0]);
      for (int v = 0; v + 1 < vertices.length; v++) {
        if (!search.covers(vertices[v], vertices[v + 1])) {
          search = nearest.within(new Envelope(vertices[v], vertices[v + 1]), reach);
        }
        double length = vertices[v].distance(vertices[v + 1]) / factor;
        int count = Math.max(1, (int) Math.ceil(length / parameters.attributionStepMetres()));
        LineSegment edge = new LineSegment(vertices[v], vertices[v + 1]);
        Coordinate from = vertices[v];
        for (int i = 1; i <= count; i++) {
          Coordinate to = edge.pointAlong((double) i / count);
          Nearest atTo = search.nearest(to);
          depth = survey.depth().depthMetres((from.x + to.x) / 2, (from.y + to.y) / 2);
          split(from, atFrom, to, atTo, length / count);
          from = to;
          atFrom = atTo;
        }
      }
    }

    private void split(
        Coordinate from, Nearest atFrom, Coordinate to, Nearest atTo, double metres) {
      if (atFrom.segment() == atTo.segment()) {
        add(atFrom.segment(), metres, end(from, atFrom, from, to), end(to, atTo, from, to));
      } else if (metres < FINEST_METRES) {
        PieceReader.End first = end(from, atFrom, from, to);
        PieceReader.End second = end(to, atTo, from, to);
        add(atFrom.segment(), metres / 2, first, first);
        add(atTo.segment(), metres / 2, second, second);
      } else {
        Coordinate middle = LineSegment.midPoint(from, to);
        Nearest atMiddle = search.nearest(middle);
        split(from, atFrom, middle, atMiddle, metres / 2);
        split(middle, atMiddle, to, atTo, metres / 2);
      }
    }

    private void add(int segment, double metres, PieceReader.End first, PieceReader.End second) {
      bySegment.merge(segment, reader.read(metres, first, second, depth), PartEvidence::plus);
    }

    /** How a point of the piece from – to lies to its nearest segment. */
    private PieceReader.End end(Coordinate point, Nearest at, Coordinate from, Coordinate to) {
      if (at.segment() < 0) {
        return new PieceReader.End(Double.POSITIVE_INFINITY, 0, false);
      }
      Coordinate[] line = nearest.line(at.segment());
      Coordinate start = line[at.edge()];
      double x = line[at.edge() + 1].x - start.x;
      double y = line[at.edge() + 1].y - start.y;
      double across = Math.abs(x * (to.y - from.y) - y * (to.x - from.x));
      double along = Math.abs(x * (to.x - from.x) + y * (to.y - from.y));
      double left = x * (point.y - start.y) - y * (point.x - start.x);
      double turn = turns[at.segment()];
      boolean bend = Math.abs(turn) >= parameters.ranking().bendDegrees();
      return new PieceReader.End(
          at.gridMetres() / factor,
          Math.toDegrees(Math.atan2(across, along)),
          bend && turn * left > 0);
    }
  }
}
