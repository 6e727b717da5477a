package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DegreesMinutesTest {
  @Test
  void anglesAreInDegreesAndMinutes() {
    assertThat(DegreesMinutes.latitude(27.75205, 3)).isEqualTo("27°\u00A045.123′\u00A0N");
    assertThat(DegreesMinutes.latitude(-5.5, 0)).isEqualTo("05°\u00A030′\u00A0S");
    assertThat(DegreesMinutes.longitude(-82.634, 3)).isEqualTo("082°\u00A038.040′\u00A0W");
    assertThat(DegreesMinutes.longitude(7, 1)).isEqualTo("007°\u00A000.0′\u00A0E");
    assertThat(DegreesMinutes.angle(-0.99)).isEqualTo("0°\u00A059′");
    assertThat(DegreesMinutes.angle(1.0001)).isEqualTo("1°\u00A000′");
  }

  @Test
  void roundingCarriesOver() {
    assertThat(DegreesMinutes.latitude(29.99999999, 3)).isEqualTo("30°\u00A000.000′\u00A0N");
    assertThat(DegreesMinutes.angle(0.9999)).isEqualTo("1°\u00A000′");
  }

  @Test
  void bearingsHaveThreeDigitsBelow360() {
    assertThat(DegreesMinutes.bearing(7.4)).isEqualTo("007°");
    assertThat(DegreesMinutes.bearing(359.6)).isEqualTo("000°");
    assertThat(DegreesMinutes.bearing(-90)).isEqualTo("270°");
  }
}
