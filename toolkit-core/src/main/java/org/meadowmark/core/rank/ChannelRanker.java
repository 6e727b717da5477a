package org.meadowmark.core.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.measure.PolygonTiles;
import org.meadowmark.core.measure.SurveyedArea;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.survey.Parameters;

/**
 * Ranks channel segments by damage rate: metres of scar line nearest to the segment, per hectare of
 * surveyed bed within reach of it.
 *
 * <p>Scars mapped as polygons have no length and are counted apart. A segment with less bed in
 * reach than the minimum exposure gets no rate, and says so.
 */
public final class ChannelRanker {
  private static final double SQUARE_METRES_PER_HECTARE = 10_000;

  private final MetricSurvey survey;
  private final Parameters parameters;
  private final Progress progress;
  private final GeometryFactory factory = new GeometryFactory();

  /**
   * Creates a ranker.
   *
   * @param survey checked survey on a metric grid
   * @param parameters choices that change results
   * @param progress hears how far the work is
   */
  public ChannelRanker(MetricSurvey survey, Parameters parameters, Progress progress) {
    this.survey = survey;
    this.parameters = parameters;
    this.progress = progress;
  }

  /** Cuts, attributes and ranks. Without channels every metre of scar is out of reach. */
  public ChannelRanking rank() {
    progress.begin("Cutting channels", -1);
    List<ChannelSegment> segments =
        new ChannelSegmenter(survey.scale(), parameters.segmentLengthMetres(), factory)
            .cut(survey.channels());
    progress.end();

    progress.begin("Attributing scars", survey.scars().size());
    ScarAttribution attribution =
        new ScarAttribution(
            survey,
            segments,
            parameters.channelReachMetres(),
            parameters.attributionStepMetres(),
            factory);
    List<ScarAttribution.Attributed> attributed = attribution.attribute(progress);
    progress.end();

    progress.begin("Measuring bed in reach", segments.size());
    double[] exposure = exposure(segments, attribution.barriers());
    progress.end();
    return collect(segments, attributed, exposure);
  }

  private double[] exposure(List<ChannelSegment> segments, Barriers barriers) {
    if (segments.isEmpty()) {
      return new double[0];
    }
    PolygonTiles beds = new PolygonTiles(surveyedBeds());
    return segments.parallelStream()
        .mapToDouble(
            segment -> {
              Coordinate centre = segment.geometry().getEnvelopeInternal().centre();
              double reach =
                  parameters.channelReachMetres() * survey.scale().lengthFactor(centre.x, centre.y);
              Geometry around =
                  barriers.reachable(
                      BufferOp.bufferOp(segment.geometry(), reach), segment.geometry());
              double area = around.isEmpty() ? 0 : beds.areaInside(around);
              progress.advance(1);
              return area
                  / survey.scale().areaFactor(centre.x, centre.y)
                  / SQUARE_METRES_PER_HECTARE;
            })
        .toArray();
  }

  private List<Geometry> surveyedBeds() {
    SurveyedArea surveyed = new SurveyedArea(survey.surveyedArea());
    return survey.beds().parallelStream().map(bed -> surveyed.part(bed.geometry())).toList();
  }

  private ChannelRanking collect(
      List<ChannelSegment> segments,
      List<ScarAttribution.Attributed> attributed,
      double[] exposure) {
    Map<String, Tally> tallies = new HashMap<>();
    List<ScarShare> shares = new ArrayList<>();
    double length = 0;
    double outOfReach = 0;
    double blocked = 0;
    double given = 0;
    int polygons = 0;
    for (int i = 0; i < attributed.size(); i++) {
      Scar scar = survey.scars().get(i);
      ScarAttribution.Attributed one = attributed.get(i);
      length += one.lengthMetres();
      outOfReach += one.outOfReachMetres();
      blocked += one.blockedMetres();
      polygons += scar.isLine() ? 0 : 1;
      for (ScarShare share : one.shares()) {
        shares.add(share);
        given += share.lengthMetres();
        tallies
            .computeIfAbsent(share.segmentId(), id -> new Tally())
            .add(scar.cause(), share.lengthMetres());
      }
    }
    List<RankedSegment> unranked = new ArrayList<>();
    for (int i = 0; i < segments.size(); i++) {
      Tally tally = tallies.getOrDefault(segments.get(i).id(), new Tally());
      unranked.add(describe(segments.get(i), tally, exposure[i]));
    }
    return new ChannelRanking(
        inOrder(unranked), shares, length, given, outOfReach, blocked, polygons);
  }

  private static final class Tally {
    int scars;
    double metres;
    final Map<String, Double> byCause = new TreeMap<>();

    void add(String cause, double length) {
      scars++;
      metres += length;
      byCause.merge(cause, length, Double::sum);
    }
  }

  private RankedSegment describe(ChannelSegment segment, Tally tally, double exposureHectares) {
    String leading =
        tally.byCause.entrySet().stream()
            .max(
                Map.Entry.<String, Double>comparingByValue()
                    .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
            .map(Map.Entry::getKey)
            .orElse("");
    boolean enough =
        exposureHectares > 0 && exposureHectares >= parameters.minimumExposureHectares();
    return new RankedSegment(
        OptionalInt.empty(),
        segment,
        tally.scars,
        tally.metres,
        tally.byCause,
        leading,
        exposureHectares,
        enough ? OptionalDouble.of(tally.metres / exposureHectares) : OptionalDouble.empty(),
        enough ? "" : exposureHectares > 0 ? "too little bed in reach" : "no bed in reach");
  }

  private static List<RankedSegment> inOrder(List<RankedSegment> segments) {
    List<RankedSegment> sorted = new ArrayList<>(segments);
    sorted.sort(
        Comparator.comparingDouble((RankedSegment s) -> -s.ratePerHectare().orElse(-1))
            .thenComparing(s -> s.segment().id(), Ids.ORDER));
    List<RankedSegment> ranked = new ArrayList<>();
    for (RankedSegment segment : sorted) {
      boolean rated = segment.ratePerHectare().isPresent();
      ranked.add(rated ? segment.withRank(ranked.size() + 1) : segment);
    }
    return ranked;
  }
}
