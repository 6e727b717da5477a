package org.meadowmark.core.rank.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.meadowmark.core.rank.network.SegmentNetwork;

/**
 * Segments whose surroundings are scarred more than chance explains: smoothed rates, Gi* along the
 * channel, pseudo p-values, and control of false alarms.
 */
public final class HotSpotFinder {
  /** What a reader must know about the highest Gi*. */
  public static final String CAUTION = NetworkHotSpots.CAUTION;

  private final HotSpotSettings settings;

  /** Creates a finder. */
  public HotSpotFinder(HotSpotSettings settings) {
    this.settings = settings;
  }

  /**
   * Tests every segment, in the order of the network.
   *
   * @param parts metres of scar by segment
   * @param exposureHectares surveyed bed in reach of each segment
   * @param network how the segments hang together
   * @throws IllegalArgumentException if exposures and segments differ in number, or a part names a
   *     segment that is not there
   */
  public List<SegmentStatistics> find(
      ScarParts parts, double[] exposureHectares, SegmentNetwork network) {
    int size = network.size();
    if (exposureHectares.length != size) {
      throw new IllegalArgumentException("exposures and segments differ in number");
    }
    int[] taking =
        IntStream.range(0, size)
            .filter(
                i ->
                    exposureHectares[i] > 0
                        && exposureHectares[i] >= settings.minimumExposureHectares())
            .toArray();
    double[] metres = parts.metresBySegment(size);
    double[] exposures = Arrays.stream(taking).mapToDouble(i -> exposureHectares[i]).toArray();
    double[] amounts = Arrays.stream(taking).mapToDouble(i -> metres[i]).toArray();
    double eventSize = EmpiricalBayes.eventSize(parts.metres()).orElse(1);
    List<ShrunkenRate> rates = new EmpiricalBayes(eventSize).towardsWhole(amounts, exposures);
    double[] values = values(parts, size, taking, exposures);
    List<NetworkHotSpots.Score> scores =
        new NetworkHotSpots(values, neighbours(network, taking))
            .test(settings.permutations(), settings.seed());
    return collect(size, taking, rates, scores);
  }

  private double[] values(ScarParts parts, int size, int[] taking, double[] exposures) {
    double[] metres = parts.metresBySegment(size);
    return IntStream.range(0, taking.length)
        .mapToDouble(i -> metres[taking[i]] / exposures[i])
        .toArray();
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

  private List<SegmentStatistics> collect(
      int size, int[] taking, List<ShrunkenRate> rates, List<NetworkHotSpots.Score> scores) {
    int[] tested =
        IntStream.range(0, taking.length).filter(i -> scores.get(i).p().isPresent()).toArray();
    double[] adjusted =
        FalseDiscovery.adjusted(
            Arrays.stream(tested).mapToDouble(i -> scores.get(i).p().getAsDouble()).toArray());
    OptionalDouble[] adjustedByPlace = new OptionalDouble[taking.length];
    Arrays.fill(adjustedByPlace, OptionalDouble.empty());
    for (int i = 0; i < tested.length; i++) {
      adjustedByPlace[tested[i]] = OptionalDouble.of(adjusted[i]);
    }
    SegmentStatistics none =
        new SegmentStatistics(
            ShrunkenRate.UNDEFINED,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            false,
            "too little bed in reach",
            "too little bed in reach");
    List<SegmentStatistics> statistics = new ArrayList<>(java.util.Collections.nCopies(size, none));
    for (int i = 0; i < taking.length; i++) {
      NetworkHotSpots.Score score = scores.get(i);
      OptionalDouble q = adjustedByPlace[i];
      statistics.set(
          taking[i],
          new SegmentStatistics(
              rates.get(i),
              score.z(),
              score.p(),
              q,
              q.isPresent() && q.getAsDouble() <= settings.falseDiscoveryRate(),
              "",
              score.z().isEmpty()
                  ? "all rates are equal"
                  : score.p().isEmpty() ? "no neighbour along the channel has a rate" : ""));
    }
    return statistics;
  }
}
