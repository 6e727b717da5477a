package org.meadowmark.core.rank.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class NullCalibrationTest {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  /** P-values of scores that are spread wider than they should be. */
  private static double[] spread(double times) {
    return new Random(6)
        .doubles(20_000)
        .map(u -> NORMAL.survivalProbability(times * NORMAL.inverseCumulativeProbability(u)))
        .toArray();
  }

  @Test
  void findsHowMuchTooWideTheScoresAre() {
    assertThat(NullCalibration.inflation(spread(1.3))).isCloseTo(1.3, within(0.03));
    assertThat(NullCalibration.inflation(spread(1))).isCloseTo(1, within(0.03));
    double[] calibrated = NullCalibration.calibrated(spread(1.3));
    double small = Arrays.stream(calibrated).filter(p -> p <= 0.01).count() / 20_000.0;
    assertThat(small).isCloseTo(0.01, within(0.003));
  }

  @Test
  void makesNoValueSmaller() {
    double[] narrow = spread(0.7);
    assertThat(NullCalibration.inflation(narrow)).isEqualTo(1);
    assertThat(NullCalibration.calibrated(narrow)).containsExactly(narrow);
    double[] wide = spread(1.3);
    double[] calibrated = NullCalibration.calibrated(wide);
    assertThat(IntStream.range(0, wide.length).filter(i -> wide[i] < 0.5))
        .allMatch(i -> calibrated[i] >= wide[i]);
  }

  @Test
  void aTwentiethOfHotSpotsHardlyChangesIt() {
    double[] p = spread(1.2);
    Arrays.fill(p, 0, 1_000, 1e-5);
    assertThat(NullCalibration.inflation(p)).isCloseTo(1.2, within(0.1));
  }

  @Test
  void copesWithNothingAndWithOnes() {
    assertThat(NullCalibration.calibrated(new double[0])).isEmpty();
    assertThat(NullCalibration.calibrated(new double[] {1, 1, 1})).containsExactly(1, 1, 1);
  }
}
