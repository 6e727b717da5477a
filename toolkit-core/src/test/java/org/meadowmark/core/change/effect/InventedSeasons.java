package org.meadowmark.core.change.effect;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.rank.network.SegmentNetwork;
import org.meadowmark.core.survey.ExposureBasis;

/**
 * Seasons on channel segments with a known effect of markers.
 *
 * <p>Segments lie in chains. Each has a rate of its own (gamma), each season a factor for all
 * (weather, fuel price), each segment and season a factor of its own (excess variation). Scars come
 * as a Poisson number with exponential lengths. Beside marks the rate after is multiplied by a
 * factor.
 */
final class InventedSeasons {
  static final double MEAN_SCAR_METRES = 20;

  /**
   * What to invent.
   *
   * @param segments segments in all, in chains of ten
   * @param stretches marked stretches, one in a chain
   * @param segmentsAStretch marked segments of each
   * @param seasonsBefore seasons before the markers
   * @param seasonsAfter seasons after
   * @param metresPerHectareYear mean rate
   * @param factor what the marks multiply the rate by
   * @param excess coefficient of variation of the segments' own factors
   */
  record Truth(
      int segments,
      int stretches,
      int segmentsAStretch,
      int seasonsBefore,
      int seasonsAfter,
      double metresPerHectareYear,
      double factor,
      double excess) {}

  private static final int CHAIN = 10;
  static final LocalDate START = LocalDate.of(2015, 6, 14);

  final List<Season> seasons = new ArrayList<>();
  final List<SegmentSeasons> segments = new ArrayList<>();
  final List<MarkedSegment> marks = new ArrayList<>();
  final SegmentNetwork network;
  final double eventMetres;

  InventedSeasons(Truth truth, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int count = truth.seasonsBefore() + truth.seasonsAfter();
    LocalDate day = START;
    double[] factors = new double[count];
    for (int season = 0; season < count; season++) {
      // Every second season is half a year longer, so that lengths have to be taken into account.
      LocalDate end = day.plusDays(season % 2 == 0 ? 365 : 548);
      seasons.add(new Season(day, end));
      day = end;
      factors[season] = Math.exp(0.3 * normal(random));
    }
    LocalDate placed = seasons.get(truth.seasonsBefore() - 1).end();
    Set<Integer> marked = new HashSet<>();
    for (int stretch = 0; stretch < truth.stretches(); stretch++) {
      for (int i = 0; i < truth.segmentsAStretch(); i++) {
        marked.add(stretch * 2 * CHAIN + 3 + i);
      }
    }
    double squares = 0;
    double sum = 0;
    List<int[]> pairs = new ArrayList<>();
    for (int i = 0; i < truth.segments(); i++) {
      if (i % CHAIN > 0) {
        pairs.add(new int[] {i - 1, i});
      }
      double rate = truth.metresPerHectareYear() * gamma(3, random) / 3;
      double hectares = 2 + 6 * random.nextDouble();
      List<Double> metres = new ArrayList<>();
      List<Double> exposures = new ArrayList<>();
      for (int season = 0; season < count; season++) {
        double own =
            Math.exp(truth.excess() * normal(random) - truth.excess() * truth.excess() / 2);
        double effect = marked.contains(i) && season >= truth.seasonsBefore() ? truth.factor() : 1;
        double expected =
            rate * hectares * seasons.get(season).years() * factors[season] * own * effect;
        int scars = poisson(expected / MEAN_SCAR_METRES, random);
        double total = 0;
        for (int scar = 0; scar < scars; scar++) {
          double length = -MEAN_SCAR_METRES * Math.log(1 - random.nextDouble());
          total += length;
          squares += length * length;
        }
        sum += total;
        metres.add(total);
        exposures.add(hectares);
      }
      String id = String.format(Locale.ROOT, "c%02d-%04d", i / CHAIN, i % CHAIN);
      segments.add(new SegmentSeasons(id, 100, metres, exposures));
      if (marked.contains(i)) {
        marks.add(new MarkedSegment(id, placed, "speed mark"));
      }
    }
    double[] lengths = new double[truth.segments()];
    Arrays.fill(lengths, 100);
    network = SegmentNetwork.ofPairs(pairs, lengths);
    eventMetres = sum > 0 ? squares / sum : 0;
  }

  MarkerEffect effect(EffectSettings settings) {
    return new MarkerEffectFinder(seasons, segments, network, eventMetres, settings).find(marks);
  }

  static EffectSettings settings() {
    return new EffectSettings(ExposureBasis.BED, 0.95, 999, 1, 3, 250, 1, 0.5, 0.8, 20);
  }

  private static double normal(SplittableRandom random) {
    return Math.sqrt(-2 * Math.log(1 - random.nextDouble()))
        * Math.cos(2 * Math.PI * random.nextDouble());
  }

  private static double gamma(int shape, SplittableRandom random) {
    double sum = 0;
    for (int i = 0; i < shape; i++) {
      sum -= Math.log(1 - random.nextDouble());
    }
    return sum;
  }

  private static int poisson(double mean, SplittableRandom random) {
    int count = 0;
    for (double at = -Math.log(1 - random.nextDouble());
        at <= mean;
        at -= Math.log(1 - random.nextDouble())) {
      count++;
    }
    return count;
  }
}
