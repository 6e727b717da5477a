package org.meadowmark.core.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Arithmetic of FGDC-STD-007.3-1998 (NSSDA). */
class PositionalAccuracyTest {
  private static final Offset<Double> SIX_DECIMALS = within(5e-7);

  /** Check value: five errors, computed twice from the formulas of the standard. */
  @Test
  void errorsAtCheckPoints() {
    PositionalAccuracy accuracy =
        PositionalAccuracy.ofCheckPoints(
            new double[] {0.3, -0.4, 0.1, -0.2, 0.5}, new double[] {0.4, 0.3, -0.2, 0.1, -0.5});
    assertThat(accuracy.rmseXMetres()).isCloseTo(0.331662, SIX_DECIMALS);
    assertThat(accuracy.rmseYMetres()).isCloseTo(0.331662, SIX_DECIMALS);
    assertThat(accuracy.radialRmseMetres()).isCloseTo(0.469042, SIX_DECIMALS);
    assertThat(accuracy.accuracy95Metres()).isCloseTo(0.811817, SIX_DECIMALS);
  }

  @Test
  void unequalAxesWhileTheyDifferLittle() {
    assertThat(new PositionalAccuracy(0.6, 1).accuracy95Metres())
        .isCloseTo(2.4477 * 0.8, SIX_DECIMALS);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PositionalAccuracy(0.59, 1).accuracy95Metres());
  }

  /** With RMSE_x = RMSE_y both formulas are the same but for the rounding of the multipliers. */
  @Test
  void theRadialErrorIsSharedByTheAxes() {
    PositionalAccuracy accuracy = PositionalAccuracy.ofRadialRmse(2);
    assertThat(accuracy.radialRmseMetres()).isCloseTo(2, within(1e-12));
    assertThat(accuracy.accuracy95Metres())
        .isCloseTo(2 * 1.7308, SIX_DECIMALS)
        .isCloseTo(2.4477 * accuracy.rmseXMetres(), within(1e-3));
  }

  @Test
  void refusesWhatIsNoError() {
    assertThatIllegalArgumentException().isThrownBy(() -> new PositionalAccuracy(-1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> new PositionalAccuracy(Double.NaN, 1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PositionalAccuracy.ofCheckPoints(new double[0], new double[0]));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PositionalAccuracy.ofCheckPoints(new double[1], new double[2]));
  }
}
