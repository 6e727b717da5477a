package org.meadowmark.core.rank.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.LineString;
import org.meadowmark.core.TestSurvey;

class ChannelTurnsTest {
  private static double[] turns(String... lines) {
    return ChannelTurns.degrees(
        Stream.of(lines).map(line -> (LineString) TestSurvey.wkt(line)).toList());
  }

  @Test
  void aStraightChannelDoesNotTurn() {
    assertThat(turns("LINESTRING (0 0, 10 0)", "LINESTRING (10 0, 20 0)"))
        .containsExactly(new double[] {0, 0}, within(1e-9));
  }

  /**
   * Regular polygon of 36 sides: the way from the middle of a side to the far end of the next
   * leaves the side by atan(sin 10° / (½ + cos 10°)), and so does the way before.
   */
  @Test
  void aCircleTurnsAllTheSameAndLeftIsPositive() {
    LineString[] sides = new LineString[36];
    for (int i = 0; i < 36; i++) {
      double a = Math.toRadians(10 * i);
      double b = Math.toRadians(10 * (i + 1));
      sides[i] =
          (LineString)
              TestSurvey.wkt(
                  "LINESTRING (%s %s, %s %s)"
                      .formatted(
                          i == 0 ? 1 : round(Math.cos(a)),
                          i == 0 ? 0 : round(Math.sin(a)),
                          i == 35 ? 1 : round(Math.cos(b)),
                          i == 35 ? 0 : round(Math.sin(b))));
    }
    double[] turns = ChannelTurns.degrees(List.of(sides));
    double tenDegrees = Math.toRadians(10);
    double expected =
        2 * Math.toDegrees(Math.atan2(Math.sin(tenDegrees), 0.5 + Math.cos(tenDegrees)));
    for (double turn : turns) {
      assertThat(turn).isCloseTo(expected, within(1e-6));
    }
  }

  private static double round(double value) {
    return Math.rint(value * 1e12) / 1e12;
  }

  @Test
  void aReversedLineTurnsTheOtherWay() {
    assertThat(turns("LINESTRING (0 0, 10 0, 10 10)")[0]).isCloseTo(90, within(1e-9));
    assertThat(turns("LINESTRING (10 10, 10 0, 0 0)")[0]).isCloseTo(-90, within(1e-9));
  }

  /** At a junction of three the way on is not known, so only the segment itself counts. */
  @Test
  void junctionsAreNotLookedBeyond() {
    assertThat(
            turns("LINESTRING (0 0, 10 0)", "LINESTRING (10 0, 10 10)", "LINESTRING (10 0, 20 0)")[
                0])
        .isCloseTo(0, within(1e-9));
    assertThat(turns("LINESTRING (0 0, 10 0)", "LINESTRING (10 0, 10 10)")[0])
        .isCloseTo(Math.toDegrees(Math.atan2(10, 5)), within(1e-9));
  }
}
