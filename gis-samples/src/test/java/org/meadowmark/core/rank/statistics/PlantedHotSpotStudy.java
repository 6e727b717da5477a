package org.meadowmark.core.rank.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.ChannelRanker;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.ScarShare;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;
import org.meadowmark.core.rank.network.SegmentNetwork;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.samples.Estuary;
import org.meadowmark.samples.EstuaryGenerator;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.PlantedHotSpot;
import org.meadowmark.samples.SampleScar;

/**
 * How well hot spots that were planted in invented estuaries are found, and how often one is found
 * where none was planted.
 *
 * <p>A segment is planted if at least half of it lies on a planted stretch. A segment next to one
 * is neither right nor wrong: scars of a planted stretch run beyond its ends.
 */
final class PlantedHotSpotStudy {
  private static final Parameters PARAMETERS = ParametersTable.bundled().defaults();
  private static final double ON_STRETCH_METRES = 1;
  private static final int BEDS = 400;

  /** Which segments are flagged. */
  interface Method extends Function<Arranged, boolean[]> {}

  /** A survey in the form that the statistics take, with the truth. */
  record Arranged(
      SegmentNetwork network, double[] hectares, ScarParts parts, double[] planted, int[] spot) {
    int size() {
      return hectares.length;
    }

    double[] metres() {
      return parts.metresBySegment(size());
    }
  }

  /** Figures over all surveys. */
  record Outcome(
      int surveys,
      int surveysWithFlags,
      long segments,
      long flagged,
      long flaggedPlanted,
      long flaggedBeside,
      long planted,
      long spots,
      long spotsFound) {
    double recall() {
      return (double) flaggedPlanted / planted;
    }

    double precision() {
      return (double) flaggedPlanted / flagged;
    }

    double precisionWithBeside() {
      return (double) (flaggedPlanted + flaggedBeside) / flagged;
    }

    double surveyShare() {
      return (double) surveysWithFlags / surveys;
    }

    double segmentShare() {
      return (double) flagged / segments;
    }

    Outcome plus(Outcome other) {
      return new Outcome(
          surveys + other.surveys,
          surveysWithFlags + other.surveysWithFlags,
          segments + other.segments,
          flagged + other.flagged,
          flaggedPlanted + other.flaggedPlanted,
          flaggedBeside + other.flaggedBeside,
          planted + other.planted,
          spots + other.spots,
          spotsFound + other.spotsFound);
    }
  }

  private PlantedHotSpotStudy() {}

  /** The method of the toolkit with its default parameters. */
  static Method toolkit(PermutationScheme scheme) {
    HotSpotSettings settings = settings();
    return survey ->
        hot(
            new HotSpotFinder(settings, scheme)
                .find(survey.parts, survey.hectares, survey.network));
  }

  private static boolean[] hot(List<SegmentStatistics> statistics) {
    boolean[] hot = new boolean[statistics.size()];
    for (int i = 0; i < hot.length; i++) {
      hot[i] = statistics.get(i).hotSpot();
    }
    return hot;
  }

  /** Gi* of the rates as they are, with pseudo p-values as they are. */
  static Method plain(PermutationScheme scheme) {
    HotSpotSettings settings = settings();
    return survey -> {
      int[] taking =
          IntStream.range(0, survey.size())
              .filter(i -> survey.hectares[i] >= settings.minimumExposureHectares())
              .toArray();
      int[] place = new int[survey.size()];
      Arrays.fill(place, -1);
      for (int i = 0; i < taking.length; i++) {
        place[taking[i]] = i;
      }
      double[] metres = survey.metres();
      double[] rates =
          Arrays.stream(taking).mapToDouble(i -> metres[i] / survey.hectares[i]).toArray();
      int[][] all = NetworkNeighbours.within(survey.network, settings.neighbourMetres());
      int[][] near =
          Arrays.stream(taking)
              .mapToObj(i -> Arrays.stream(all[i]).map(j -> place[j]).filter(j -> j >= 0).toArray())
              .toArray(int[][]::new);
      double[] p =
          new NetworkHotSpots(rates, near)
              .test(scheme, settings.permutations(), settings.seed()).stream()
                  .mapToDouble(score -> score.p().orElse(1))
                  .toArray();
      double[] adjusted = FalseDiscovery.adjusted(p);
      boolean[] hot = new boolean[survey.size()];
      for (int i = 0; i < taking.length; i++) {
        hot[taking[i]] = adjusted[i] <= settings.falseDiscoveryRate();
      }
      return hot;
    };
  }

  private static HotSpotSettings settings() {
    return new HotSpotSettings(
        PARAMETERS.ranking().hotSpotNeighbourMetres(),
        PARAMETERS.ranking().permutations(),
        PARAMETERS.ranking().falseDiscoveryRate(),
        PARAMETERS.minimumExposureHectares(),
        PARAMETERS.ranking().hotSpotMinimumExposureHectares(),
        PARAMETERS.seed());
  }

  /**
   * Runs methods on estuaries of consecutive seeds, as they are in the first season.
   *
   * @param firstSeed first seed
   * @param seeds number of estuaries
   * @param scars scars in all seasons of an estuary
   * @param hotSpots number of planted hot spots, or 0
   */
  static Map<String, Outcome> run(
      long firstSeed, int seeds, int scars, int hotSpots, Map<String, Method> methods) {
    Map<String, Outcome> outcomes = new HashMap<>();
    for (long seed = firstSeed; seed < firstSeed + seeds; seed++) {
      EstuarySettings settings =
          EstuarySettings.SAMPLE
              .withSeed(seed)
              .withSize(scars, BEDS)
              .withHotSpots(hotSpots, EstuarySettings.SAMPLE.hotSpotElevation());
      Arranged survey = arrange(EstuaryGenerator.generate(settings));
      methods.forEach(
          (name, method) ->
              outcomes.merge(name, judge(survey, method.apply(survey)), Outcome::plus));
    }
    return outcomes;
  }

  private static Outcome judge(Arranged survey, boolean[] flagged) {
    long flags = 0;
    long right = 0;
    long beside = 0;
    Set<Integer> spots = new TreeSet<>();
    Set<Integer> found = new TreeSet<>();
    for (int i = 0; i < survey.size(); i++) {
      boolean isPlanted = isPlanted(survey, i);
      if (isPlanted) {
        spots.add(survey.spot[i]);
      }
      if (!flagged[i]) {
        continue;
      }
      flags++;
      if (isPlanted) {
        right++;
        found.add(survey.spot[i]);
      } else if (Arrays.stream(survey.network.neighbours(i)).anyMatch(j -> isPlanted(survey, j))) {
        beside++;
      }
    }
    long planted = IntStream.range(0, survey.size()).filter(i -> isPlanted(survey, i)).count();
    long tested =
        Arrays.stream(survey.hectares)
            .filter(h -> h >= PARAMETERS.ranking().hotSpotMinimumExposureHectares())
            .count();
    return new Outcome(
        1, flags > 0 ? 1 : 0, tested, flags, right, beside, planted, spots.size(), found.size());
  }

  private static boolean isPlanted(Arranged survey, int segment) {
    return survey.planted[segment] >= 0.5;
  }

  private static Arranged arrange(Estuary estuary) {
    List<Scar> scars =
        estuary
            .scars(0)
            .map(PlantedHotSpotStudy::scar)
            .sorted(Comparator.comparing(Scar::id, Ids.ORDER))
            .toList();
    MetricSurvey survey =
        new MetricSurvey(
            Estuary.CRS,
            "",
            scars,
            estuary.beds(),
            estuary.channels(),
            List.of(),
            estuary.surveyedArea(),
            estuary.land(),
            DepthField.UNKNOWN,
            GroundScale.NONE);
    ChannelRanking ranking =
        new ChannelRanker(
                survey,
                new MeasuredEvidence(Map.of(), Optional.empty()),
                PARAMETERS,
                ReferenceTablesReader.bundled(),
                Progress.NONE)
            .rank();
    List<RankedSegment> segments =
        ranking.segments().stream()
            .sorted(Comparator.comparing(s -> s.segment().id(), Ids.ORDER))
            .toList();
    SegmentNetwork network =
        SegmentNetwork.ofLines(
            segments.stream().map(s -> s.segment().geometry()).toList(),
            segments.stream().mapToDouble(s -> s.segment().lengthMetres()).toArray());
    double[] planted = new double[segments.size()];
    int[] spot = new int[segments.size()];
    for (PlantedHotSpot hotSpot : estuary.plantedHotSpots()) {
      Geometry around = hotSpot.stretch().buffer(ON_STRETCH_METRES);
      for (int i = 0; i < planted.length; i++) {
        Geometry line = segments.get(i).segment().geometry();
        double share =
            around.getEnvelopeInternal().intersects(line.getEnvelopeInternal())
                ? line.intersection(around).getLength() / line.getLength()
                : 0;
        if (share > planted[i]) {
          planted[i] = share;
          spot[i] = hotSpot.id();
        }
      }
    }
    return new Arranged(
        network,
        segments.stream().mapToDouble(RankedSegment::exposureHectares).toArray(),
        parts(ranking, scars, segments),
        planted,
        spot);
  }

  private static ScarParts parts(
      ChannelRanking ranking, List<Scar> scars, List<RankedSegment> segments) {
    Map<String, Integer> scarPlaces = new HashMap<>();
    scars.forEach(scar -> scarPlaces.put(scar.id(), scarPlaces.size()));
    Map<String, Integer> segmentPlaces = new HashMap<>();
    segments.forEach(s -> segmentPlaces.put(s.segment().id(), segmentPlaces.size()));
    List<ScarShare> shares = ranking.shares();
    return new ScarParts(
        shares.stream().mapToInt(share -> scarPlaces.get(share.scarId())).toArray(),
        shares.stream().mapToInt(share -> segmentPlaces.get(share.segmentId())).toArray(),
        shares.stream().mapToDouble(ScarShare::lengthMetres).toArray());
  }

  private static Scar scar(SampleScar seen) {
    String id = Long.toString(seen.truthId());
    return new Scar(
        id,
        new FeatureRef("invented", "scars", id),
        seen.geometry(),
        seen.cause(),
        seen.widthMetres().orElse(0),
        seen.widthMetres().isPresent() ? Scar.WidthSource.MEASURED : Scar.WidthSource.OUTLINE,
        Optional.empty());
  }

  /** A row of the table of planted hot spots. */
  static String plantedRow(String name, int scars, Outcome o) {
    return String.format(
        Locale.ROOT,
        "| %s | %,d | %d | %.2f | %.2f | %.2f | %d of %d |",
        name,
        scars,
        o.surveys,
        o.recall(),
        o.precision(),
        o.precisionWithBeside(),
        o.spotsFound,
        o.spots);
  }

  /** A row of the table of false alarms. */
  static String noneRow(String name, int scars, Outcome o) {
    return String.format(
        Locale.ROOT,
        "| %s | %,d | %d of %d | %.1f %% | %d of %,d | %.3f %% |",
        name,
        scars,
        o.surveysWithFlags,
        o.surveys,
        100 * o.surveyShare(),
        o.flagged,
        o.segments,
        100 * o.segmentShare());
  }

  /** All rows of both tables; other numbers of scars on two fifths of the seeds. */
  static List<String> tables(long firstSeed, int seeds) {
    Map<String, Method> all = new LinkedHashMap<>();
    all.put("toolkit", toolkit(PermutationScheme.TOTAL));
    all.put("toolkit, own value kept", toolkit(PermutationScheme.CONDITIONAL));
    all.put("rates, own value kept", plain(PermutationScheme.CONDITIONAL));
    all.put("rates, all drawn", plain(PermutationScheme.TOTAL));
    Map<String, Method> own = Map.of("toolkit", toolkit(PermutationScheme.TOTAL));
    int fewer = Math.max(1, seeds * 2 / 5);
    int usual = EstuarySettings.SAMPLE.scars();
    int planted = EstuarySettings.SAMPLE.plantedHotSpots();
    List<String> rows = new ArrayList<>();
    Map<String, Outcome> usualPlanted = run(firstSeed, seeds, usual, planted, all);
    all.keySet().forEach(name -> rows.add(plantedRow(name, usual, usualPlanted.get(name))));
    for (int scars : new int[] {800, 12_000}) {
      Outcome outcome = run(firstSeed, fewer, scars, planted, own).get("toolkit");
      rows.add(plantedRow("toolkit", scars, outcome));
    }
    rows.add("");
    Map<String, Outcome> usualNone = run(firstSeed, seeds, usual, 0, all);
    all.keySet().forEach(name -> rows.add(noneRow(name, usual, usualNone.get(name))));
    for (int scars : new int[] {200, 800, 12_000}) {
      rows.add(noneRow("toolkit", scars, run(firstSeed, fewer, scars, 0, own).get("toolkit")));
    }
    return rows;
  }
}
