package org.meadowmark.core.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;
import org.meadowmark.core.rank.evidence.ScarLie;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.survey.ScoreTerm;

/** Evidence of segments whose values follow from the drawing by hand. */
class SegmentEvidenceTest {
  private static TestSurvey straight() {
    return new TestSurvey()
        .channel("1", "A", "LINESTRING (0 0, 200 0)")
        .bed("b", box(0, 5, 200, 105));
  }

  private static SegmentEvidence of(ChannelRanking ranking, String id) {
    return segment(ranking, id).evidence();
  }

  private static RankedSegment segment(ChannelRanking ranking, String id) {
    return ranking.segments().stream()
        .filter(segment -> segment.segment().id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    "10 12, 60 12, 0, 1, 0",
    "60 12, 10 12, 0, 1, 0",
    "50 20, 50 70, 90, 0, 1",
    "20 20, 60 60, 45, 0, 0",
    "20 20, 70 40, 21.80140948635181, 1, 0",
    "20 20, 40 70, 68.19859051364819, 0, 1"
  })
  void angleToTheChannel(String from, String to, double angle, double along, double across) {
    ScarLie lie =
        of(straight().scar("s", "LINESTRING (" + from + ", " + to + ")", 0.4).rank(), "a-0001")
            .lie()
            .orElseThrow();
    assertThat(lie.meanAngleDegrees()).isCloseTo(angle, within(1e-9));
    assertThat(lie.alongShare()).isEqualTo(along);
    assertThat(lie.acrossShare()).isEqualTo(across);
  }

  /** 30 m along and 10 m across: a mean of (30·0 + 10·90) / 40. */
  @Test
  void anglesAreWeightedByLength() {
    ScarLie lie =
        of(
                straight()
                    .scar("1", "LINESTRING (10 12, 40 12)", 0.4)
                    .scar("2", "LINESTRING (30 30, 30 40)", 0.4)
                    .rank(),
                "a-0001")
            .lie()
            .orElseThrow();
    assertThat(lie.meanAngleDegrees()).isCloseTo(22.5, within(1e-9));
    assertThat(lie.alongShare()).isCloseTo(0.75, within(1e-12));
    assertThat(lie.alongEdgeShare()).isCloseTo(0.75, within(1e-12));
    assertThat(lie.acrossShare()).isCloseTo(0.25, within(1e-12));
  }

  /** Half a width of 15 m and 5 m more: 20 m reach the edge, 20.1 m do not. */
  @Test
  void scarsReachTheEdgeWithinHalfTheWidthAndTheTolerance() {
    SegmentEvidence evidence =
        of(
            straight()
                .scar("1", "LINESTRING (20 20, 20 50)", 0.4)
                .scar("2", "LINESTRING (40 20.1, 40 30.1)", 0.4)
                .scar("3", "LINESTRING (60 90, 60 100)", 0.4)
                .rank(),
            "a-0001");
    assertThat(evidence.edge().orElseThrow().lengthShare()).isCloseTo(0.6, within(1e-12));
    assertThat(evidence.edge().orElseThrow().scarShare()).isCloseTo(1.0 / 3, within(1e-12));
    SegmentEvidence wider =
        of(
            straight()
                .ranking("channel_half_width_m", 16)
                .scar("1", "LINESTRING (20 20, 20 50)", 0.4)
                .scar("2", "LINESTRING (40 20.1, 40 30.1)", 0.4)
                .scar("3", "LINESTRING (60 90, 60 100)", 0.4)
                .rank(),
            "a-0001");
    assertThat(wider.edge().orElseThrow().lengthShare()).isCloseTo(0.8, within(1e-12));
  }

  /** A channel that turns left by 90° in one segment; the inside is the left side. */
  @ParameterizedTest
  @CsvSource({
    "30 8, 42 20, CORNER_CUTTING",
    "20 -10, 45 -10, ALONG_EDGE",
    "10 40, 10 60, NONE",
    "42 20, 30 8, CORNER_CUTTING"
  })
  void cornersAreCutOnTheInsideOfABend(String from, String to, ScarPattern pattern) {
    for (String channel : List.of("0 0, 50 0, 50 50", "50 50, 50 0, 0 0")) {
      ChannelRanking ranking =
          new TestSurvey()
              .ranking("near_parallel_deg", 50)
              .channel("1", "A", "LINESTRING (" + channel + ")")
              .bed("b", box(-100, -100, 100, 100))
              .scar("s", "LINESTRING (" + from + ", " + to + ")", 0.4)
              .rank();
      assertThat(of(ranking, "a-0001").pattern()).isEqualTo(pattern);
    }
  }

  @Test
  void scarsAcrossTheChannelAreAShortCut() {
    assertThat(
            of(straight().scar("s", "LINESTRING (50 30, 50 90)", 0.4).rank(), "a-0001").pattern())
        .isEqualTo(ScarPattern.SHORT_CUT);
  }

  /** Depth y/100 m: shallower than 0.6 m up to y = 60; known up to y = 80 only. */
  @Test
  void depthAtScarsAgainstTheDraft() {
    TestSurvey survey =
        straight()
            .depth((x, y) -> y <= 80 ? OptionalDouble.of(y / 100) : OptionalDouble.empty())
            .scar("1", "LINESTRING (20 40, 20 100)", 0.4)
            .scar("2", "LINESTRING (30 30, 60 30)", 0.4);
    SegmentEvidence evidence = of(survey.rank(), "a-0001");
    // 60 m of which 40 known, 20 of these shallow; and 30 m at 0.3 m.
    assertThat(evidence.depth().orElseThrow().knownShare()).isCloseTo(70.0 / 90, within(1e-9));
    assertThat(evidence.depth().orElseThrow().shallowShare()).isCloseTo(50.0 / 70, within(1e-9));
    // Mean depths 0.6 m over 40 m and 0.3 m over 30 m.
    assertThat(evidence.depth().orElseThrow().medianMetres()).isCloseTo(0.6, within(1e-9));
    assertThat(evidence.dataGaps()).contains("depth known for 78 % of scar length");
  }

  @Test
  void whatIsMissingIsSaidAndHasNoValue() {
    RankedSegment segment =
        segment(straight().scar("1", "LINESTRING (20 40, 20 100)", 0.4).rank(), "a-0001");
    assertThat(segment.evidence().depth()).isEmpty();
    assertThat(segment.evidence().reScarredShare()).isEmpty();
    assertThat(segment.evidence().dataGaps())
        .contains("no depth layer", "one season: re-scarring unknown", "channel width assumed")
        .anyMatch(gap -> gap.startsWith("no hot-spot test: "));
    assertThat(segment.score().orElseThrow().term(ScoreTerm.SHALLOW)).isEmpty();
    assertThat(segment.score().orElseThrow().term(ScoreTerm.RE_SCARRING)).isEmpty();

    SegmentEvidence dry =
        of(
            straight()
                .depth((x, y) -> OptionalDouble.empty())
                .scar("1", "LINESTRING (20 40, 20 100)", 0.4)
                .rank(),
            "a-0001");
    assertThat(dry.depth()).isEmpty();
    assertThat(dry.dataGaps()).contains("no depth known at its scars");

    TestSurvey survey = straight().reach(50).channel("2", "Far", "LINESTRING (0 900, 90 900)");
    ChannelRanking ranking =
        new ChannelRanker(
                survey.build(),
                new MeasuredEvidence(Map.of(), Optional.empty()),
                survey.parameters(),
                TestSurvey.tables(),
                Progress.NONE)
            .rank();
    assertThat(of(ranking, "far-0001").dataGaps()).contains("no bed in reach");
    assertThat(of(ranking, "far-0001").meanSeverity()).isEmpty();
    assertThat(of(ranking, "a-0001").connectivityGainHectares()).isEmpty();
    assertThat(of(ranking, "a-0001").dataGaps())
        .contains(
            "severity of the bed in reach unknown",
            "connectivity of each scar not worked out (connectivity_detail_patches)");
    assertThat(of(ranking, "a-0001").lie()).isEmpty();
    assertThat(of(ranking, "a-0001").edge()).isEmpty();
  }

  /** 20 × 50 m of a light bed and 10 × 50 m of a severe one: (20·1 + 10·3) / 30 / 3. */
  @Test
  void severityOfTheBedInReach() {
    TestSurvey survey =
        new TestSurvey()
            .reach(50)
            .channel("1", "A", "LINESTRING (0 0, 100 0)")
            .bed("1", box(20, 0, 40, 50))
            .bed("2", box(60, 0, 70, 50));
    SegmentEvidence evidence =
        of(
            new ChannelRanker(
                    survey.build(),
                    new MeasuredEvidence(Map.of("1", "light", "2", "severe"), Optional.empty()),
                    survey.parameters(),
                    TestSurvey.tables(),
                    Progress.NONE)
                .rank(),
            "a-0001");
    assertThat(evidence.beds().hectaresByClass().get("light")).isCloseTo(0.1, within(1e-9));
    assertThat(evidence.beds().hectaresByClass().get("severe")).isCloseTo(0.05, within(1e-9));
    assertThat(evidence.worstSeverity()).isEqualTo("severe");
    assertThat(evidence.meanSeverity().orElseThrow()).isCloseTo(50.0 / 90, within(1e-9));
  }

  /** A scar of 80 m, 30 m on one segment and 50 m on the next. */
  @Test
  void connectivityIsSharedOutByLength() {
    TestSurvey survey = straight().scar("s", "LINESTRING (70 20, 150 20)", 0.4);
    ChannelRanking ranking =
        new ChannelRanker(
                survey.build(),
                new MeasuredEvidence(Map.of(), Optional.of(Map.of("s", 0.8))),
                survey.parameters(),
                TestSurvey.tables(),
                Progress.NONE)
            .rank();
    double first = of(ranking, "a-0001").connectivityGainHectares().orElseThrow();
    double second = of(ranking, "a-0002").connectivityGainHectares().orElseThrow();
    assertThat(first).isCloseTo(0.3, within(1e-4));
    assertThat(first + second).isCloseTo(0.8, within(1e-12));
  }

  /** 40 m measured at 0.5 m, 20 m at a default of 0.4 m; the measured one varies by 30 %. */
  @Test
  void scarredAreaKeepsMeasuredAndDefaultWidthsApart() {
    SegmentEvidence evidence =
        of(
            straight()
                .scar("1", "LINESTRING (20 20, 60 20)", 0.5)
                .defaultScar("2", "LINESTRING (20 30, 40 30)", 0.4)
                .rank(),
            "a-0001");
    assertThat(evidence.scarredArea().measuredSquareMetres()).isCloseTo(20, within(1e-9));
    assertThat(evidence.scarredArea().measuredDeviationSquareMetres()).isCloseTo(6, within(1e-9));
    assertThat(evidence.scarredArea().defaultSquareMetres().get("propeller"))
        .isCloseTo(8, within(1e-9));
    assertThat(evidence.scarredArea().squareMetres()).isCloseTo(28, within(1e-9));
  }

  /** A straight scar far longer than the reach gives the same as its pieces. */
  @Test
  void aLongScarIsWhatItsPiecesAre() {
    TestSurvey whole =
        new TestSurvey()
            .channel("1", "A", "LINESTRING (0 0, 3000 400, 6000 0)")
            .bed("b", box(0, 5, 6000, 205))
            .scar("s", "LINESTRING (10 30, 5990 30)", 0.4);
    TestSurvey pieces =
        new TestSurvey()
            .channel("1", "A", "LINESTRING (0 0, 3000 400, 6000 0)")
            .bed("b", box(0, 5, 6000, 205));
    for (int i = 0; i < 46; i++) {
      pieces.scar(
          "s" + i, "LINESTRING (" + (10 + 130 * i) + " 30, " + (10 + 130 * (i + 1)) + " 30)", 0.4);
    }
    ChannelRanking one = whole.rank();
    ChannelRanking many = pieces.rank();
    assertThat(one.outOfReachMetres()).isCloseTo(many.outOfReachMetres(), within(0.05));
    assertThat(one.outOfReachMetres()).isGreaterThan(100);
    for (RankedSegment segment : one.segments()) {
      assertThat(segment.scarLengthMetres())
          .isCloseTo(segment(many, segment.segment().id()).scarLengthMetres(), within(0.05));
    }
  }
}
