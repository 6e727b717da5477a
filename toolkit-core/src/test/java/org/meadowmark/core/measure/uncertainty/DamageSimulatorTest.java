package org.meadowmark.core.measure.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.apache.commons.statistics.descriptive.Mean;
import org.apache.commons.statistics.descriptive.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.uncertainty.DrawnArea.Errors;
import org.meadowmark.core.survey.PositionalAccuracy;

class DamageSimulatorTest {
  private static UncertainScar line(String id, String wkt, double width, double variation) {
    return new UncertainScar(id, TestSurvey.wkt(wkt), width, 1, variation, Optional.empty());
  }

  private static Optional<PositionalAccuracy> rmse(double metres) {
    return metres > 0 ? Optional.of(PositionalAccuracy.ofRadialRmse(metres)) : Optional.empty();
  }

  private static double[] draws(
      List<UncertainScar> scars, Geometry grass, ErrorModel model, Errors errors) {
    DrawnArea drawn =
        new DamageSimulator(scars, model).draw(grass, 1, BruteForce.measured(scars, grass));
    return IntStream.range(0, model.draws()).mapToDouble(d -> drawn.area(errors, d)).toArray();
  }

  private static double mean(double[] values) {
    return Mean.of(values).getAsDouble();
  }

  private static double deviation(double[] values) {
    return StandardDeviation.of(values).getAsDouble();
  }

  /**
   * Against outlining, uniting and overlaying everything again with the same errors. Bounds are
   * below twice the largest difference measured on these surveys; see "Uncertainty of damage" in
   * docs/method.md.
   */
  @ParameterizedTest
  @CsvSource({
    "winding, 1, 0",
    "winding, 2, 0.5",
    "winding, 3, 1",
    "winding, 4, 3",
    "dense, 1, 0",
    "dense, 2, 1",
    "bundles, 1, 0",
    "bundles, 2, 0.5",
    "bundles, 3, 1",
    "bundles, 4, 3"
  })
  void agreesWithBruteForce(String kind, long seed, double rmseMetres) {
    RandomSurvey survey =
        switch (kind) {
          case "winding" -> RandomSurvey.winding(seed, 40, 30);
          case "dense" -> RandomSurvey.winding(seed, 150, 25);
          default -> RandomSurvey.bundles(seed, 3, 8, 25);
        };
    boolean told = Boolean.getBoolean("meadowmark.print-accuracy");
    int draws = (kind.equals("dense") ? 20 : 50) * (told ? 2 : 1);
    ErrorModel model = new ErrorModel(draws, seed, rmse(rmseMetres));
    double measured = BruteForce.measured(survey.scars(), survey.grass());
    Map<List<Boolean>, double[]> exactly = new HashMap<>();
    StringBuilder found = new StringBuilder();
    for (Errors errors : Errors.values()) {
      double[] fast = draws(survey.scars(), survey.grass(), model, errors);
      boolean width = errors != Errors.POSITION;
      boolean shift = errors != Errors.WIDTH && rmseMetres > 0;
      double[] exact =
          exactly.computeIfAbsent(
              List.of(width, shift),
              varied -> BruteForce.areas(survey.scars(), survey.grass(), model, width, shift));
      double squares = 0;
      for (int i = 0; i < fast.length; i++) {
        squares += (fast[i] - exact[i]) * (fast[i] - exact[i]);
      }
      double difference = Math.sqrt(squares / fast.length) / measured;
      double offset = (mean(fast) - mean(exact)) / measured;
      double spread = deviation(exact) > 0 ? deviation(fast) / deviation(exact) - 1 : 0;
      found.append(
          String.format(
              Locale.ROOT,
              "%s %d %.1f %s: rms %.4f offset %.4f spread %.4f%n",
              kind,
              seed,
              rmseMetres,
              errors,
              difference,
              offset,
              spread));
      assertThat(difference).as(found.toString()).isLessThan(0.03);
      assertThat(offset).as(found.toString()).isCloseTo(0, within(0.025));
      assertThat(spread).as(found.toString()).isCloseTo(0, within(0.1));
    }
    if (told) {
      System.out.print(found);
    }
  }

  /**
   * One straight scar inside a bed: its area is L·w times a lognormal factor, so the p quantile of
   * the area is L·w·exp(s·z − s²/2). The share of draws below it has a binomial standard error.
   */
  @Test
  void oneScarHasTheQuantilesOfTheLognormal() {
    int count = 10_000;
    List<UncertainScar> scars = List.of(line("s", "LINESTRING (10 10, 70 90)", 0.4, 0.3));
    double[] areas =
        draws(
            scars,
            TestSurvey.wkt(TestSurvey.box(0, 0, 100, 100)),
            new ErrorModel(count, 3, Optional.empty()),
            Errors.ALL);
    double s = Math.sqrt(Math.log(1 + 0.3 * 0.3));
    double[][] normal = {{0.05, -1.644854}, {0.5, 0}, {0.95, 1.644854}};
    for (double[] point : normal) {
      double quantile = 40 * Math.exp(s * point[1] - s * s / 2);
      double below = IntStream.range(0, count).filter(i -> areas[i] < quantile).count();
      assertThat(below / count)
          .isCloseTo(point[0], within(4 * Math.sqrt(point[0] * (1 - point[0]) / count)));
    }
    assertThat(mean(areas)).isCloseTo(40, within(4 * 40 * 0.3 / Math.sqrt(count)));
  }

  /** n equal scars with errors of their own: relative spread 0.3/√n; with a shared error 0.3. */
  @ParameterizedTest
  @CsvSource({"1", "4", "25", "100"})
  void ownErrorsAverageOutSharedOnesDoNot(int count) {
    int draws = 4_000;
    List<UncertainScar> own = new ArrayList<>();
    List<UncertainScar> shared = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      String wkt = "LINESTRING (10 %s, 60 %s)".formatted(5 + 5 * i, 5 + 5 * i);
      own.add(line("s" + i, wkt, 0.4, 0.3));
      shared.add(
          new UncertainScar("s" + i, TestSurvey.wkt(wkt), 0.4, 1, 0.3, Optional.of("propeller")));
    }
    Geometry grass = TestSurvey.wkt(TestSurvey.box(0, 0, 100, 1000));
    ErrorModel model = new ErrorModel(draws, 1, Optional.empty());
    double area = 20.0 * count;
    double tolerance = 0.1;
    assertThat(deviation(draws(own, grass, model, Errors.ALL)) / area * Math.sqrt(count))
        .isCloseTo(0.3, within(0.3 * tolerance));
    assertThat(deviation(draws(shared, grass, model, Errors.ALL)) / area)
        .isCloseTo(0.3, within(0.3 * tolerance));
  }

  /**
   * A scar across a straight edge, shifted along itself by a normal error of deviation σ: the
   * length inside keeps its mean and has the standard deviation σ while both ends are far away.
   */
  @Test
  void scarAcrossAnEdge() {
    double[] areas =
        draws(
            List.of(line("s", "LINESTRING (-20 50, 20 50)", 0.5, 0)),
            TestSurvey.wkt(TestSurvey.box(0, 0, 100, 100)),
            new ErrorModel(2_000, 1, rmse(Math.sqrt(2))),
            Errors.ALL);
    double deviation = 0.5;
    assertThat(mean(areas)).isCloseTo(10, within(4 * deviation / Math.sqrt(2_000)));
    assertThat(deviation(areas)).isCloseTo(deviation, within(0.08 * deviation));
  }

  /**
   * A scar that ends at a distance d inside of a straight edge: a normal shift σ puts σ·φ(d/σ) −
   * d·(1 − Φ(d/σ)) of its length outside on average (unit normal loss function; σ = 1, d = 0.5:
   * 0.197797 from the tables of the normal distribution).
   */
  @Test
  void scarThatEndsBesideAnEdge() {
    int count = 5_000;
    double[] areas =
        draws(
            List.of(line("s", "LINESTRING (0.5 50, 30.5 50)", 0.5, 0)),
            TestSurvey.wkt(TestSurvey.box(0, 0, 100, 100)),
            new ErrorModel(count, 1, rmse(Math.sqrt(2))),
            Errors.ALL);
    double lost = 0.5 * 0.197797;
    assertThat(15 - mean(areas)).isCloseTo(lost, within(4 * 0.25 / Math.sqrt(count) + 0.01));
  }

  /** The same for a scar that lies along an edge at d: it is lost as a whole with Φ(−d/σ). */
  @Test
  void scarAlongAnEdge() {
    int count = 5_000;
    double[] areas =
        draws(
            List.of(line("s", "LINESTRING (30 1, 60 1)", 0.2, 0)),
            TestSurvey.wkt(TestSurvey.box(0, 0, 100, 100)),
            new ErrorModel(count, 1, rmse(Math.sqrt(2))),
            Errors.ALL);
    double inside = 0.841345;
    assertThat(mean(areas) / 6)
        .isCloseTo(inside, within(4 * Math.sqrt(inside * (1 - inside) / count) + 0.005));
  }

  @Test
  void nothingVariesWithoutErrors() {
    RandomSurvey survey = RandomSurvey.winding(1, 60, 25);
    List<UncertainScar> sure =
        survey.scars().stream()
            .map(
                s ->
                    new UncertainScar(
                        s.id(), s.geometry(), s.gridWidthMetres(), 1, 0, Optional.empty()))
            .toList();
    double measured = BruteForce.measured(sure, survey.grass());
    for (Errors errors : Errors.values()) {
      assertThat(draws(sure, survey.grass(), new ErrorModel(20, 1, rmse(0)), errors))
          .containsOnly(measured);
    }
  }

  @Test
  void aScarBesideTheBedMayLieInIt() {
    double[] areas =
        draws(
            List.of(line("s", "LINESTRING (-1 20, -1 80)", 0.4, 0.3)),
            TestSurvey.wkt(TestSurvey.box(0, 0, 100, 100)),
            new ErrorModel(500, 1, rmse(Math.sqrt(2))),
            Errors.ALL);
    double in = IntStream.range(0, 500).filter(i -> areas[i] > 0).count() / 500.0;
    assertThat(in).isBetween(0.1, 0.3);
  }

  @Test
  void theSeedDecides() {
    RandomSurvey survey = RandomSurvey.winding(3, 60, 25);
    double[] one =
        draws(survey.scars(), survey.grass(), new ErrorModel(40, 1, rmse(1)), Errors.ALL);
    assertThat(draws(survey.scars(), survey.grass(), new ErrorModel(40, 1, rmse(1)), Errors.ALL))
        .isEqualTo(one);
    assertThat(draws(survey.scars(), survey.grass(), new ErrorModel(40, 2, rmse(1)), Errors.ALL))
        .isNotEqualTo(one);
  }

  @ParameterizedTest
  @CsvSource({"1", "3", "8"})
  void threadsDoNotMatter(int threads) throws Exception {
    RandomSurvey survey = RandomSurvey.winding(3, 450, 60);
    ErrorModel model = new ErrorModel(20, 1, rmse(1));
    double[] expected = draws(survey.scars(), survey.grass(), model, Errors.ALL);
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      assertThat(pool.submit(() -> draws(survey.scars(), survey.grass(), model, Errors.ALL)).get())
          .isEqualTo(expected);
    } finally {
      pool.shutdown();
    }
  }

  /** A scar's errors go with its id: where it stands in the list changes rounding at most. */
  @Test
  void orderOfScarsDoesNotMatter() {
    RandomSurvey survey = RandomSurvey.winding(3, 250, 50);
    ErrorModel model = new ErrorModel(20, 1, rmse(1));
    double[] expected = draws(survey.scars(), survey.grass(), model, Errors.ALL);
    List<UncertainScar> shuffled = new ArrayList<>(survey.scars());
    Collections.shuffle(shuffled, new Random(1));
    double[] found = draws(shuffled, survey.grass(), model, Errors.ALL);
    for (int i = 0; i < found.length; i++) {
      assertThat(found[i]).isCloseTo(expected[i], within(1e-6));
    }
  }
}
