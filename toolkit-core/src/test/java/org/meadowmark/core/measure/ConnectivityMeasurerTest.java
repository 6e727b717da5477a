package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.TestSurvey;

/** Connectivity as a part of a measurement; the formulas have tests of their own. */
class ConnectivityMeasurerTest {
  private static final Offset<Double> NEAR = within(1e-9);

  private static Fragmentation.Crossing at(Measurement measured, double metres) {
    return measured.whole().fragmentation().crossings().stream()
        .filter(crossing -> crossing.distanceMetres() == metres)
        .findFirst()
        .orElseThrow();
  }

  /** Hand values: two patches of 1 ha, p = 0.5, landscape 2 ha: PC 0.75; linked: IIC 0.75. */
  @Test
  void twoHectaresTenMetresApart() {
    Measurement measured =
        new TestSurvey().bed("a", box(0, 0, 100, 100)).bed("b", box(110, 0, 210, 100)).measure();
    Connectedness ten = at(measured, 10).after().orElseThrow();
    assertThat(ten.probability()).isCloseTo(0.75, NEAR);
    assertThat(ten.integralIndex().getAsDouble()).isCloseTo(0.75, NEAR);
    assertThat(ten.equivalentAreaHectares()).isCloseTo(Math.sqrt(3), NEAR);
    Connectedness five = at(measured, 5).after().orElseThrow();
    assertThat(five.integralIndex().getAsDouble()).isCloseTo(0.5, NEAR);
    assertThat(five.probability()).isCloseTo((2 + 2 * 0.25) / 4, NEAR);
    assertThat(at(measured, 10).before()).isEqualTo(at(measured, 10).after());
  }

  /** By hand: a and b hectares at p across the gap are worth √(a² + b² + 2abp), joined a + b. */
  @Test
  void fillingAScarJoinsWhatItParts() {
    Measurement measured =
        new TestSurvey()
            .bed("b", box(0, 0, 100, 100))
            .scar("cut", "LINESTRING (-5 40, 105 40)", 2)
            .scar("short", "LINESTRING (10 70, 60 70)", 0.4)
            .measure();
    double a = 0.39;
    double b = 0.59 - 50 * 0.4 / 10_000;
    double p = Math.pow(0.5, 2.0 / 10);
    double apart = Math.sqrt(a * a + b * b + 2 * a * b * p);
    assertThat(at(measured, 10).after().orElseThrow().equivalentAreaHectares())
        .isCloseTo(apart, NEAR);
    ConnectivityDetail detail = measured.connectivity().orElseThrow();
    assertThat(detail.scars()).hasSize(1);
    ScarFilling filling = detail.scars().get(0);
    assertThat(filling.scarId()).isEqualTo("cut");
    assertThat(filling.gapCount()).isEqualTo(1);
    assertThat(filling.groupsSeparated()).isEqualTo(1);
    assertThat(filling.equivalentAreaGainHectares()).isCloseTo(a + b - apart, NEAR);
    PatchWorth smaller = detail.patches().get(0);
    assertThat(smaller.lossPercent())
        .isCloseTo(100 * (apart * apart - b * b) / (apart * apart), within(1e-6));
    assertThat(smaller.connectorPercent()).isCloseTo(0, NEAR);
  }

  @Test
  void scarWiderThanTheCrossingDistanceKeepsGroupsApart() {
    Measurement measured =
        new TestSurvey()
            .bed("b", box(0, 0, 100, 100))
            .scar("cut", "LINESTRING (-5 40, 105 40)", 12)
            .measure();
    assertThat(measured.connectivity().orElseThrow().scars().get(0).groupsSeparated()).isEqualTo(2);
    assertThat(at(measured, 10).groupsAfter()).isEqualTo(2);
  }

  @Test
  void noGrassHasNoConnectivity() {
    Measurement measured = new TestSurvey().measure();
    assertThat(at(measured, 10).before()).isEmpty();
    assertThat(measured.connectivity()).isEmpty();
  }
}
