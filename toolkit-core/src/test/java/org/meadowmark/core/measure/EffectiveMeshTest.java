package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Formulas of Jaeger (2000) and of Moser and others (2007), worked by hand. */
class EffectiveMeshTest {
  private static final Percentage ROUNDING = Percentage.withPercentage(1e-9);

  /** Patches 50, 30, 20: arithmetic from the formulas. */
  @ParameterizedTest
  @CsvSource({"100, 38, 0.62, 2.631579", "200, 19, 0.905, 10.526316"})
  void threePatchesInTwoTotals(double total, double size, double division, double splitting) {
    EffectiveMesh mesh = EffectiveMesh.of(new double[] {50, 30, 20}, total);
    assertThat(mesh.squareMetres().getAsDouble()).isCloseTo(size, ROUNDING);
    assertThat(mesh.division().getAsDouble()).isCloseTo(division, ROUNDING);
    assertThat(mesh.splittingIndex().getAsDouble()).isCloseTo(splitting, within(5e-7));
    assertThat(mesh.boundaryCorrectedSquareMetres()).isEqualTo(mesh.squareMetres());
  }

  /** Inside (6, 4) of whole patches (10, 4) in a total of 10: (6·10 + 4·4)/10. */
  @Test
  void partsCountWithTheirWholePatches() {
    EffectiveMesh mesh = EffectiveMesh.of(new double[] {6, 4}, new double[] {10, 4}, 10);
    assertThat(mesh.boundaryCorrectedSquareMetres().getAsDouble()).isCloseTo(7.6, ROUNDING);
    assertThat(mesh.squareMetres().getAsDouble()).isCloseTo(5.2, ROUNDING);
  }

  @Test
  void nothingLeftIsWhollyDividedAndNothingAtAllIsUndefined() {
    EffectiveMesh gone = EffectiveMesh.of(new double[0], 100);
    assertThat(gone.division()).hasValue(1);
    assertThat(gone.squareMetres()).hasValue(0);
    assertThat(gone.splittingIndex()).isEmpty();
    EffectiveMesh nothing = EffectiveMesh.of(new double[0], 0);
    assertThat(nothing.division()).isEmpty();
    assertThat(nothing.squareMetres()).isEmpty();
  }

  @Test
  void everyPartNeedsItsPatch() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EffectiveMesh.of(new double[1], new double[2], 1));
  }

  /** n equal patches that fill the total: D = 1 − 1/n, S = n, m = A/n. */
  @Property
  void equalPatches(
      @ForAll @IntRange(min = 1, max = 500) int n,
      @ForAll @DoubleRange(min = 0.01, max = 1e6) double area) {
    double[] areas = new double[n];
    Arrays.fill(areas, area);
    EffectiveMesh mesh = EffectiveMesh.of(areas, n * area);
    assertThat(mesh.division().getAsDouble()).isCloseTo(1 - 1.0 / n, within(1e-12));
    assertThat(mesh.splittingIndex().getAsDouble()).isCloseTo(n, ROUNDING);
    assertThat(mesh.squareMetres().getAsDouble()).isCloseTo(area, ROUNDING);
  }

  /** m = A·(1 − D) = A/S; splitting a patch lowers m, and so does loss. */
  @Property
  void identities(
      @ForAll @Size(min = 1, max = 60) List<@DoubleRange(min = 0.01, max = 1e5) Double> some,
      @ForAll @DoubleRange(min = 1, max = 20) double bareShare) {
    double[] areas = some.stream().mapToDouble(Double::doubleValue).toArray();
    double total = Arrays.stream(areas).sum() * bareShare;
    EffectiveMesh mesh = EffectiveMesh.of(areas, total);
    double size = mesh.squareMetres().getAsDouble();
    assertThat(total * (1 - mesh.division().getAsDouble())).isCloseTo(size, within(1e-9 * total));
    assertThat(total / mesh.splittingIndex().getAsDouble()).isCloseTo(size, ROUNDING);
    assertThat(size).isLessThanOrEqualTo(Arrays.stream(areas).max().getAsDouble() * (1 + 1e-12));

    double[] halved = Arrays.copyOf(areas, areas.length + 1);
    halved[0] /= 2;
    halved[areas.length] = halved[0];
    assertThat(EffectiveMesh.of(halved, total).squareMetres().getAsDouble()).isLessThan(size);
    double[] smaller = areas.clone();
    smaller[0] *= 0.9;
    assertThat(EffectiveMesh.of(smaller, total).squareMetres().getAsDouble()).isLessThan(size);
  }
}
