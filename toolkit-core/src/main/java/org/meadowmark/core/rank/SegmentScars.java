package org.meadowmark.core.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.rank.evidence.BedsInReach;
import org.meadowmark.core.rank.network.SegmentNetwork;
import org.meadowmark.core.survey.Parameters;

/**
 * Channel segments of a survey with the scars nearest to each and the bed in reach, without ranking
 * them.
 *
 * <p>Segments are in {@link Ids#ORDER}. Time n log n in scars, segments and beds.
 */
public final class SegmentScars {
  private final MetricSurvey survey;
  private final Parameters parameters;
  private final GeometryFactory factory = new GeometryFactory();
  private final Barriers barriers;
  private final List<ChannelSegment> segments;
  private final NearestSegments index;

  /**
   * Cuts the channels of a survey.
   *
   * @param survey survey on a metric grid
   * @param parameters length of segments and reach
   */
  public SegmentScars(MetricSurvey survey, Parameters parameters) {
    this.survey = survey;
    this.parameters = parameters;
    this.barriers = new Barriers(survey.barriers(), factory);
    this.segments =
        new ChannelSegmenter(survey.scale(), parameters.segmentLengthMetres(), factory)
            .cut(survey.channels()).stream()
                .sorted(Comparator.comparing(ChannelSegment::id, Ids.ORDER))
                .toList();
    this.index = new NearestSegments(segments, barriers);
  }

  /** {@return the segments} */
  public List<ChannelSegment> segments() {
    return segments;
  }

  /** {@return how they meet, by position} */
  public SegmentNetwork network() {
    List<LineString> lines = segments.stream().map(ChannelSegment::geometry).toList();
    return SegmentNetwork.ofLines(
        lines, segments.stream().mapToDouble(ChannelSegment::lengthMetres).toArray());
  }

  /**
   * {@return surveyed bed within reach of each segment over water, in hectares, in the order of the
   * segments}
   *
   * @param progress hears how far the work is
   */
  public double[] bedHectares(Progress progress) {
    return new BedExposure(survey, Map.of(), List.of(), parameters.channelReachMetres())
        .of(segments, barriers, progress).stream().mapToDouble(BedsInReach::hectares).toArray();
  }

  /**
   * {@return parts of every scar line by segment: by scar, then segment}
   *
   * @param progress hears how far the work is
   */
  public List<ScarShare> shares(Progress progress) {
    List<ScarAttribution.Attributed> attributed =
        new ScarAttribution(survey, segments, index, parameters).attribute(progress);
    List<ScarShare> shares = new ArrayList<>();
    for (int i = 0; i < attributed.size(); i++) {
      for (ScarAttribution.Part part : attributed.get(i).parts()) {
        shares.add(
            new ScarShare(
                survey.scars().get(i).id(),
                segments.get(part.segment()).id(),
                part.evidence().metres(),
                part.evidence().nearestMetres()));
      }
    }
    return shares;
  }

  /**
   * {@return position of the segment nearest to a point over water; -1 where none is within the
   * distance}
   *
   * @param point point on the analysis grid
   * @param metres ground distance
   */
  public int nearest(Coordinate point, double metres) {
    double reach = metres * survey.scale().lengthFactor(point.x, point.y);
    return Math.max(-1, index.within(new Envelope(point), reach).nearest(point).segment());
  }

  /**
   * {@return position of a segment by its id; -1 where there is none}
   *
   * @param segmentId id of the segment
   */
  public int position(String segmentId) {
    return IntStream.range(0, segments.size())
        .filter(i -> segments.get(i).id().equals(segmentId))
        .findFirst()
        .orElse(-1);
  }
}
