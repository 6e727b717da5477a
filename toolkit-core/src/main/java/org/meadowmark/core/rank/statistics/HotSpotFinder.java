package org.meadowmark.core.rank.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Quantile;
import org.meadowmark.core.rank.network.SegmentNetwork;

/**
 * Segments that are scarred more, together with their neighbours along the channel, than chance
 * explains.
 *
 * <p>Steps, each chosen on planted hot spots; {@code docs/hot-spots.md} has the measured figures:
 *
 * <ol>
 *   <li>Metres and hectares → {@link EmpiricalBayes shrunken rates}: a segment with little bed in
 *       reach has a wild rate. Source of standing rates on their own exposure before looking for
 *       clusters: Assunção &amp; Reis (1999), <i>A new proposal to adjust Moran's I for population
 *       density</i>, Statistics in Medicine 18:2147–2162 (from memory).
 *   <li>The logarithm of 1 + rate / mean rate: rates are so skewed that one segment would make any
 *       sum that has it. The logarithm makes variances alike for counts that vary more than by
 *       chance: Anscombe (1948), Biometrika 35:246–254 (from memory).
 *   <li>{@link NetworkHotSpots Gi* and pseudo p-values}, drawn from segments that are not far out
 *       themselves: hot spots that are drawn at random into other places hide each other. Far out
 *       is an interval that lies wholly above the upper outer fence, third quartile + 3
 *       interquartile ranges, of the logarithms: Tukey (1977), <i>Exploratory Data Analysis</i>
 *       (from memory).
 *   <li>{@link NullCalibration Calibration}, since segments side by side are alike even where
 *       nothing is hot.
 *   <li>{@link FalseDiscovery Adjustment} for the number of segments. Hot is what is at or below
 *       the false discovery rate and has a rate above the mean, so that a segment is not called hot
 *       for its neighbours alone.
 * </ol>
 *
 * <p><b>Limits.</b> A hot spot is hot compared with the other segments of the survey: where a large
 * share of segments is hot, none stands out. Few segments, less than some fifty, leave little to
 * draw from.
 */
public final class HotSpotFinder {
  /** What a reader must know about the highest Gi*. */
  public static final String CAUTION = NetworkHotSpots.CAUTION;

  private static final String TOO_LITTLE_BED = "too little bed in reach";
  private static final String NO_CONTRAST = "rates differ no more than chance makes them differ";
  private static final String ALL_ARE_NEIGHBOURS = "all segments are neighbours of each other";
  private static final String TOO_FEW_NEIGHBOURS =
      "too few segments to draw from, or no neighbour along the channel";
  private static final double OUTER_FENCE = 3;

  private final HotSpotSettings settings;
  private final PermutationScheme scheme;

  /**
   * Creates a finder that draws whole stretches, see {@link PermutationScheme#TOTAL}.
   *
   * @param settings neighbourhood, draws, false discovery rate, least exposures
   */
  public HotSpotFinder(HotSpotSettings settings) {
    this(settings, PermutationScheme.TOTAL);
  }

  /**
   * Creates a finder with a choice of what is drawn.
   *
   * @param settings neighbourhood, draws, false discovery rate, least exposures
   * @param scheme what is drawn at random
   */
  public HotSpotFinder(HotSpotSettings settings, PermutationScheme scheme) {
    this.settings = settings;
    this.scheme = scheme;
  }

  /**
   * Tests every segment.
   *
   * @param parts metres of scar by segment
   * @param exposureHectares surveyed bed in reach of each segment
   * @param network how the segments hang together
   * @return rate and test of each segment, in the order of the network; where there is none, the
   *     reason
   * @throws IllegalArgumentException if exposures and segments differ in number, or a part names a
   *     segment that is not there
   */
  public List<SegmentStatistics> find(
      ScarParts parts, double[] exposureHectares, SegmentNetwork network) {
    int size = network.size();
    if (exposureHectares.length != size) {
      throw new IllegalArgumentException("exposures and segments differ in number");
    }
    double[] metres = parts.metresBySegment(size);
    EmpiricalBayes bayes = new EmpiricalBayes(EmpiricalBayes.eventSize(parts.metres()).orElse(1));
    List<SegmentStatistics> statistics = new ArrayList<>(Collections.nCopies(size, unrated()));
    int[] rated = withExposure(exposureHectares, settings.minimumExposureHectares());
    List<ShrunkenRate> allRates = rates(bayes, metres, exposureHectares, rated);
    for (int i = 0; i < rated.length; i++) {
      statistics.set(rated[i], untested(allRates.get(i), TOO_LITTLE_BED));
    }
    int[] tested =
        withExposure(
            exposureHectares,
            Math.max(settings.minimumExposureHectares(), settings.minimumTestedHectares()));
    List<ShrunkenRate> rates = rates(bayes, metres, exposureHectares, tested);
    double mean = mean(metres, exposureHectares, tested);
    List<NetworkHotSpots.Score> scores = scores(rates, mean, neighbours(network, tested));
    OptionalDouble[] adjusted = adjusted(scores);
    for (int i = 0; i < tested.length; i++) {
      ShrunkenRate rate = statistics.get(tested[i]).rate();
      boolean isAboveMean = rates.get(i).estimate().getAsDouble() > mean;
      statistics.set(
          tested[i],
          describe(rate, rates.get(i).collapsed(), scores.get(i), adjusted[i], isAboveMean));
    }
    return List.copyOf(statistics);
  }

  private static int[] withExposure(double[] exposureHectares, double least) {
    return IntStream.range(0, exposureHectares.length)
        .filter(i -> exposureHectares[i] > 0 && exposureHectares[i] >= least)
        .toArray();
  }

  private static List<ShrunkenRate> rates(
      EmpiricalBayes bayes, double[] metres, double[] exposureHectares, int[] segments) {
    return bayes.towardsWhole(
        Arrays.stream(segments).mapToDouble(i -> metres[i]).toArray(),
        Arrays.stream(segments).mapToDouble(i -> exposureHectares[i]).toArray());
  }

  private static double mean(double[] metres, double[] exposureHectares, int[] segments) {
    return Arrays.stream(segments).mapToDouble(i -> metres[i]).sum()
        / Arrays.stream(segments).mapToDouble(i -> exposureHectares[i]).sum();
  }

  private List<NetworkHotSpots.Score> scores(
      List<ShrunkenRate> rates, double mean, int[][] neighbours) {
    double[] values = logarithms(rates, ShrunkenRate::estimate, mean);
    return new NetworkHotSpots(values, neighbours, reference(rates, values, mean))
        .test(scheme, settings.permutations(), settings.seed());
  }

  private static double[] logarithms(
      List<ShrunkenRate> rates, Function<ShrunkenRate, OptionalDouble> part, double mean) {
    return rates.stream()
        .mapToDouble(rate -> mean > 0 ? Math.log1p(part.apply(rate).getAsDouble() / mean) : 0)
        .toArray();
  }

  /** Segments whose interval does not lie wholly above the outer fence. */
  private static int[] reference(List<ShrunkenRate> rates, double[] values, double mean) {
    if (rates.isEmpty()) {
      return new int[0];
    }
    double[] quartiles = Quantile.withDefaults().withCopy(true).evaluate(values, 0.25, 0.75);
    double fence = quartiles[1] + OUTER_FENCE * (quartiles[1] - quartiles[0]);
    double[] low = logarithms(rates, ShrunkenRate::low, mean);
    return IntStream.range(0, values.length).filter(i -> low[i] <= fence).toArray();
  }

  /** Neighbours among the segments that take part, by their positions among these. */
  private int[][] neighbours(SegmentNetwork network, int[] taking) {
    int[] place = new int[network.size()];
    Arrays.fill(place, -1);
    for (int i = 0; i < taking.length; i++) {
      place[taking[i]] = i;
    }
    int[][] all = NetworkNeighbours.within(network, settings.neighbourMetres());
    return Arrays.stream(taking)
        .mapToObj(i -> Arrays.stream(all[i]).map(j -> place[j]).filter(j -> j >= 0).toArray())
        .toArray(int[][]::new);
  }

  private static OptionalDouble[] adjusted(List<NetworkHotSpots.Score> scores) {
    int[] withP =
        IntStream.range(0, scores.size()).filter(i -> scores.get(i).p().isPresent()).toArray();
    double[] adjusted =
        FalseDiscovery.adjusted(
            NullCalibration.calibrated(
                Arrays.stream(withP).mapToDouble(i -> scores.get(i).p().getAsDouble()).toArray()));
    OptionalDouble[] all = new OptionalDouble[scores.size()];
    Arrays.fill(all, OptionalDouble.empty());
    for (int i = 0; i < withP.length; i++) {
      all[withP[i]] = OptionalDouble.of(adjusted[i]);
    }
    return all;
  }

  private static SegmentStatistics unrated() {
    return new SegmentStatistics(
        ShrunkenRate.UNDEFINED,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        false,
        TOO_LITTLE_BED,
        TOO_LITTLE_BED);
  }

  private static SegmentStatistics untested(ShrunkenRate rate, String remark) {
    return new SegmentStatistics(
        rate,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        false,
        "",
        remark);
  }

  private SegmentStatistics describe(
      ShrunkenRate rate,
      boolean noContrast,
      NetworkHotSpots.Score score,
      OptionalDouble adjusted,
      boolean isAboveMean) {
    if (score.z().isEmpty()) {
      return untested(rate, noContrast ? NO_CONTRAST : ALL_ARE_NEIGHBOURS);
    }
    boolean hot =
        isAboveMean
            && adjusted.isPresent()
            && adjusted.getAsDouble() <= settings.falseDiscoveryRate();
    String remark = score.p().isEmpty() ? TOO_FEW_NEIGHBOURS : "";
    return new SegmentStatistics(rate, score.z(), score.p(), adjusted, hot, "", remark);
  }
}
