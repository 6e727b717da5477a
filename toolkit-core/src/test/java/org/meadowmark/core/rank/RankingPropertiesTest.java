package org.meadowmark.core.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.rank.score.SegmentScore;
import org.meadowmark.core.survey.ScoreTerm;

/** What must hold for any survey: nothing made or lost, and no matter how it was drawn. */
class RankingPropertiesTest {
  /** A seeded survey with two channels that cross, land, partly known depth and two causes. */
  private static TestSurvey survey(int seed) {
    Random random = new Random(seed);
    TestSurvey survey =
        new TestSurvey()
            .ranking("score_draws", 50, "permutations", 19)
            .reach(150)
            .channel("1", "A", "LINESTRING (0 0, 300 80, 620 -40, 1000 30)")
            .channel("2", "B", "LINESTRING (250 -200, 420 400, 700 500)")
            .bed("b1", box(0, -200, 500, 600))
            .bed("b2", box(500, -200, 1000, 600))
            .barrier(box(500, 150, 560, 320))
            .depth(
                (x, y) -> x < 700 ? OptionalDouble.of(Math.abs(y) / 200) : OptionalDouble.empty());
    for (int i = 0; i < 60; i++) {
      double x = 20 + random.nextDouble() * 960;
      double y = random.nextDouble() * 760 - 180;
      double angle = random.nextDouble() * 2 * Math.PI;
      double length = 1 + random.nextDouble() * 120;
      String line =
          String.format(
              Locale.ROOT,
              "LINESTRING (%f %f, %f %f, %f %f)",
              x,
              y,
              x + length * Math.cos(angle),
              y + length * Math.sin(angle),
              x + length * Math.cos(angle) + 20,
              y + length * Math.sin(angle) - 7);
      String id = String.format(Locale.ROOT, "s%03d", i);
      if (i % 3 == 0) {
        survey.defaultScar(id, line, 0.4);
      } else {
        survey.scar(id, line, 0.2 + random.nextDouble());
      }
    }
    return survey;
  }

  @Property(tries = 25)
  void scarLengthIsNeitherMadeNorLost(@ForAll @IntRange(max = 1_000_000) int seed) {
    ChannelRanking ranking = survey(seed).rank();
    double all = ranking.scarLengthMetres();
    double rest = ranking.outOfReachMetres() + ranking.blockedMetres();
    double shares = ranking.shares().stream().mapToDouble(ScarShare::lengthMetres).sum();
    double segments =
        ranking.segments().stream().mapToDouble(RankedSegment::scarLengthMetres).sum();
    double causes =
        ranking.segments().stream()
            .flatMap(segment -> segment.scarLengthMetresByCause().values().stream())
            .mapToDouble(Double::doubleValue)
            .sum();
    assertThat(ranking.attributedMetres() + rest).isCloseTo(all, within(1e-9 * all));
    assertThat(shares + rest).isCloseTo(all, within(1e-9 * all));
    assertThat(segments + rest).isCloseTo(all, within(1e-9 * all));
    assertThat(causes + rest).isCloseTo(all, within(1e-9 * all));
    assertThat(ranking.segments())
        .allSatisfy(
            segment ->
                segment
                    .scarLengthMetresByCause()
                    .keySet()
                    .forEach(
                        cause ->
                            assertThat(segment.causeShare(cause).orElseThrow())
                                .isBetween(0.0, 1.0)));
  }

  @Property(tries = 25)
  void everyTermAndShareLiesBetweenNoughtAndOne(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<RankedSegment> ranked =
        survey(seed).rank().segments().stream().filter(s -> s.rank().isPresent()).toList();
    double last = 1;
    double inTopTen = 0;
    for (RankedSegment segment : ranked) {
      SegmentScore score = segment.score().orElseThrow();
      assertThat(score.score()).isBetween(0.0, last);
      last = score.score();
      assertThat(score.terms().values()).allSatisfy(term -> assertThat(term).isBetween(0.0, 1.0));
      assertThat(score.topTenShare().orElseThrow()).isBetween(0.0, 1.0);
      inTopTen += score.topTenShare().orElseThrow();
    }
    assertThat(inTopTen).isCloseTo(Math.min(10, ranked.size()), within(1e-9));
  }

  @Property(tries = 10, seed = "20")
  void directionAndOrderOfTheInputDoNotMatter(@ForAll @IntRange(max = 1_000_000) int seed) {
    List<String> expected = rows(survey(seed).rank());
    TestSurvey channels = survey(seed);
    channels.channels().replaceAll(c -> c.withGeometry(c.geometry().reverse()));
    assertThat(rows(channels.rank())).isEqualTo(expected);

    TestSurvey scars = survey(seed);
    scars.scars().replaceAll(s -> s.withGeometry(s.geometry().reverse()));
    assertThat(rows(scars.rank())).isEqualTo(expected);

    TestSurvey shuffled = survey(seed);
    Collections.shuffle(shuffled.channels(), new Random(seed));
    Collections.shuffle(shuffled.scars(), new Random(seed));
    Collections.shuffle(shuffled.beds(), new Random(seed));
    assertThat(rows(shuffled.rank())).isEqualTo(expected);
  }

  /** Rows as text, rounded as far below the digits of the tables as sums may differ. */
  private static List<String> rows(ChannelRanking ranking) {
    List<String> rows = new ArrayList<>();
    for (RankedSegment segment : ranking.segments()) {
      List<Object> cells = new ArrayList<>();
      cells.add(segment.rank());
      cells.add(segment.segment().id());
      cells.add(segment.scarCount());
      cells.add(rounded(segment.scarLengthMetres()));
      new TreeMap<>(segment.scarLengthMetresByCause())
          .forEach((cause, metres) -> cells.add(cause + rounded(metres)));
      cells.add(rounded(segment.exposureHectares()));
      segment.evidence().edge().ifPresent(edge -> cells.add(rounded(edge.lengthShare())));
      segment
          .evidence()
          .lie()
          .ifPresent(
              lie -> {
                cells.add(rounded(lie.meanAngleDegrees()));
                cells.add(rounded(lie.insideBendShare()));
              });
      segment.evidence().depth().ifPresent(depth -> cells.add(rounded(depth.shallowShare())));
      cells.add(segment.evidence().pattern());
      cells.add(segment.evidence().dataGaps());
      segment
          .score()
          .ifPresent(
              score -> {
                cells.add(rounded(score.score()));
                cells.add(score.topTenShare());
                cells.add(score.highForWantOfData());
                for (ScoreTerm term : ScoreTerm.values()) {
                  cells.add(
                      score.term(term).isPresent() ? rounded(score.term(term).getAsDouble()) : "");
                }
              });
      rows.add(cells.toString());
    }
    return rows;
  }

  private static String rounded(double value) {
    return String.format(Locale.ROOT, "%.4f", value);
  }
}
