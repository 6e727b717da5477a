package org.meadowmark.core.rank;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.evidence.BedsInReach;
import org.meadowmark.core.rank.evidence.KnownEvidence;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;
import org.meadowmark.core.rank.evidence.SegmentTally;
import org.meadowmark.core.rank.network.SegmentNetwork;
import org.meadowmark.core.rank.score.SegmentScore;
import org.meadowmark.core.rank.score.SegmentScorer;
import org.meadowmark.core.rank.statistics.HotSpotFinder;
import org.meadowmark.core.rank.statistics.HotSpotSettings;
import org.meadowmark.core.rank.statistics.ScarParts;
import org.meadowmark.core.rank.statistics.SegmentStatistics;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.RankingParameters;

/**
 * Ranks channel segments by a score of their evidence: metres of scar line nearest to the segment,
 * per hectare of surveyed bed within reach of it, hot spots along the channel, and what else speaks
 * for boats from the channel.
 *
 * <p>Scars mapped as polygons have no length and are counted apart. A segment with less bed in
 * reach than the minimum exposure gets no rate and no rank, and says so.
 *
 * <p>Time n log n in scars, segments and beds, plus permutations and draws times segments.
 */
public final class ChannelRanker {
  private final MetricSurvey survey;
  private final MeasuredEvidence measured;
  private final Parameters parameters;
  private final ReferenceTables tables;
  private final List<String> classes;
  private final Progress progress;
  private final GeometryFactory factory = new GeometryFactory();

  /**
   * Creates a ranker.
   *
   * @param survey checked survey on a metric grid
   * @param measured what was measured of beds and scars
   * @param parameters choices that change results
   * @param tables severity classes, and how widths of each cause vary
   * @param progress hears how far the work is
   */
  public ChannelRanker(
      MetricSurvey survey,
      MeasuredEvidence measured,
      Parameters parameters,
      ReferenceTables tables,
      Progress progress) {
    this.survey = survey;
    this.measured = measured;
    this.parameters = parameters;
    this.tables = tables;
    this.classes = tables.severityClasses().stream().map(SeverityClass::key).toList();
    this.progress = progress;
  }

  /**
   * {@return segments in the order of their score, with every metre of scar accounted for} Without
   * channels there are no segments, and every metre of scar is out of reach.
   */
  public ChannelRanking rank() {
    progress.begin("Cutting channels", -1);
    List<ChannelSegment> segments =
        new ChannelSegmenter(survey.scale(), parameters.segmentLengthMetres(), factory)
            .cut(survey.channels());
    progress.end();

    progress.begin("Attributing scars", survey.scars().size());
    Barriers barriers = new Barriers(survey.barriers(), factory);
    List<ScarAttribution.Attributed> attributed =
        new ScarAttribution(survey, segments, new NearestSegments(segments, barriers), parameters)
            .attribute(progress);
    progress.end();

    progress.begin("Measuring bed in reach", segments.size());
    List<BedsInReach> beds =
        new BedExposure(survey, measured.severityByBed(), classes, parameters.channelReachMetres())
            .of(segments, barriers, progress);
    progress.end();

    progress.begin("Testing for hot spots", -1);
    List<SegmentStatistics> statistics = statistics(segments, attributed, beds);
    progress.end();

    progress.begin("Scoring segments", -1);
    List<RankedSegment> ranked =
        score(describe(segments, tally(segments, attributed), beds, statistics));
    progress.end();
    return collect(segments, attributed, ranked);
  }

  private SegmentTally[] tally(
      List<ChannelSegment> segments, List<ScarAttribution.Attributed> attributed) {
    SegmentTally[] tallies = new SegmentTally[segments.size()];
    Arrays.setAll(tallies, i -> new SegmentTally());
    for (int i = 0; i < attributed.size(); i++) {
      Scar scar = survey.scars().get(i);
      ScarCause cause = tables.causes().get(scar.cause());
      double variation = cause == null ? 0 : cause.widthVariation();
      double gain =
          measured
              .gainHectaresByScar()
              .map(gains -> gains.getOrDefault(scar.id(), 0.0))
              .orElse(0.0);
      for (ScarAttribution.Part part : attributed.get(i).parts()) {
        double share = part.evidence().metres() / attributed.get(i).lengthMetres();
        tallies[part.segment()].add(
            scar, variation, part.evidence(), gain * share, parameters.ranking());
        SegmentTally tally = tallies[part.segment()];
        measured
            .earlier()
            .ifPresent(
                earlier ->
                    tally.addNew(
                        part.evidence().metres()
                            * earlier.newShareByScar().getOrDefault(scar.id(), 0.0),
                        earlier.cutAgain().contains(scar.id())));
      }
    }
    return tallies;
  }

  private List<SegmentStatistics> statistics(
      List<ChannelSegment> segments,
      List<ScarAttribution.Attributed> attributed,
      List<BedsInReach> beds) {
    int count = attributed.stream().mapToInt(one -> one.parts().size()).sum();
    int[] scars = new int[count];
    int[] of = new int[count];
    double[] metres = new double[count];
    int next = 0;
    for (int i = 0; i < attributed.size(); i++) {
      for (ScarAttribution.Part part : attributed.get(i).parts()) {
        scars[next] = i;
        of[next] = part.segment();
        metres[next] = part.evidence().metres();
        next++;
      }
    }
    SegmentNetwork network =
        SegmentNetwork.ofLines(
            segments.stream().map(ChannelSegment::geometry).toList(),
            segments.stream().mapToDouble(ChannelSegment::lengthMetres).toArray());
    RankingParameters ranking = parameters.ranking();
    return new HotSpotFinder(
            new HotSpotSettings(
                ranking.hotSpotNeighbourMetres(),
                ranking.permutations(),
                ranking.falseDiscoveryRate(),
                parameters.minimumExposureHectares(),
                ranking.hotSpotMinimumExposureHectares(),
                parameters.seed()))
        .find(
            new ScarParts(scars, of, metres),
            beds.stream().mapToDouble(BedsInReach::hectares).toArray(),
            network);
  }

  private List<RankedSegment> describe(
      List<ChannelSegment> segments,
      SegmentTally[] tallies,
      List<BedsInReach> beds,
      List<SegmentStatistics> statistics) {
    KnownEvidence known =
        new KnownEvidence(
            survey.depth() != DepthField.UNKNOWN,
            measured.gainHectaresByScar().isPresent(),
            measured.earlier().isPresent());
    return IntStream.range(0, segments.size())
        .mapToObj(
            i -> {
              SegmentTally tally = tallies[i];
              double exposure = beds.get(i).hectares();
              boolean enough = exposure > 0 && exposure >= parameters.minimumExposureHectares();
              return new RankedSegment(
                  OptionalInt.empty(),
                  segments.get(i),
                  tally.scarCount(),
                  tally.metres(),
                  tally.metresByCause(),
                  tally.leadingCause(),
                  exposure,
                  enough ? OptionalDouble.of(tally.metres() / exposure) : OptionalDouble.empty(),
                  enough ? "" : exposure > 0 ? "too little bed in reach" : "no bed in reach",
                  tally.evidence(beds.get(i), classes, known, statistics.get(i), parameters),
                  statistics.get(i),
                  Optional.empty());
            })
        .sorted(Comparator.comparing(segment -> segment.segment().id(), Ids.ORDER))
        .toList();
  }

  /** Segments in order of score from segments in order of ids. */
  private List<RankedSegment> score(List<RankedSegment> segments) {
    List<RankedSegment> rated =
        segments.stream().filter(segment -> segment.ratePerHectare().isPresent()).toList();
    List<SegmentScore> scores =
        new SegmentScorer(parameters.ranking(), parameters.seed(), widthVariations())
            .score(
                rated.stream().map(segment -> segment.segment().id()).toList(),
                rated.stream().map(RankedSegment::evidence).toList(),
                rated.stream().map(RankedSegment::statistics).toList(),
                rated.stream().mapToDouble(RankedSegment::exposureHectares).toArray());
    List<Integer> order =
        IntStream.range(0, rated.size())
            .boxed()
            .sorted(Comparator.comparingDouble(i -> -scores.get(i).score()))
            .toList();
    List<RankedSegment> ranked = new ArrayList<>();
    for (int i : order) {
      ranked.add(rated.get(i).ranked(ranked.size() + 1, scores.get(i)));
    }
    segments.stream().filter(segment -> segment.ratePerHectare().isEmpty()).forEach(ranked::add);
    return ranked;
  }

  private Map<String, Double> widthVariations() {
    return tables.causes().values().stream()
        .collect(Collectors.toMap(ScarCause::key, ScarCause::widthVariation));
  }

  private ChannelRanking collect(
      List<ChannelSegment> segments,
      List<ScarAttribution.Attributed> attributed,
      List<RankedSegment> ranked) {
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
      for (ScarAttribution.Part part : one.parts()) {
        shares.add(
            new ScarShare(
                scar.id(),
                segments.get(part.segment()).id(),
                part.evidence().metres(),
                part.evidence().nearestMetres()));
        given += part.evidence().metres();
      }
    }
    return new ChannelRanking(ranked, shares, length, given, outOfReach, blocked, polygons);
  }
}
