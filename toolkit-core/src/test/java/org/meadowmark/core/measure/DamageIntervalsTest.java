package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.meadowmark.core.TestSurvey.box;
import static org.meadowmark.core.TestSurvey.wkt;

import java.util.concurrent.ForkJoinPool;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.uncertainty.DamageInterval;
import org.meadowmark.core.measure.uncertainty.DamageInterval.ClassShare;
import org.meadowmark.core.measure.uncertainty.DamageInterval.ErrorSource;
import org.meadowmark.core.model.GroundScale;

/** Intervals as part of a measurement. */
class DamageIntervalsTest {
  private static final Offset<Double> NEAR = within(1e-9);
  private static final String HECTARE = box(0, 0, 100, 100);

  private static TestSurvey twoBeds() {
    return new TestSurvey()
        .draws(300)
        .bed("1", HECTARE)
        .bed("2", box(100, 0, 200, 100))
        .scar("a", "LINESTRING (20 20, 80 20)", 8)
        .scar("b", "LINESTRING (20 60, 180 60)", 0.5)
        .defaultScar("c", "LINESTRING (120 80, 180 80)", 0.4);
  }

  private static DamageInterval whole(TestSurvey survey) {
    return survey.measure().whole().damage().interval().orElseThrow();
  }

  @Test
  void classSharesAddUpAndTheLikeliestIsTheLargest() {
    Measurement result = twoBeds().measure();
    DamageInterval bed = result.beds().get(0).damage().interval().orElseThrow();
    assertThat(bed.classes().stream().mapToDouble(ClassShare::drawShare).sum()).isCloseTo(1, NEAR);
    // 510 m² of a hectare: just above the limit of moderate, so that many draws are light.
    assertThat(bed.drawShare("light")).isBetween(0.3, 0.7);
    assertThat(bed.drawShare("moderate")).isBetween(0.3, 0.7);
    assertThat(bed.drawShare(bed.likeliestClass())).isGreaterThanOrEqualTo(0.5);
    assertThat(bed.areaSquareMetres().low()).isLessThan(bed.areaSquareMetres().median());
    assertThat(bed.areaSquareMetres().high()).isGreaterThan(bed.areaSquareMetres().median());
    assertThat(bed.share().high()).isCloseTo(bed.areaSquareMetres().high() / 10_000, NEAR);
  }

  @Test
  void widthAloneIsTheErrorWherePositionIsNotStated() {
    DamageInterval interval = whole(twoBeds());
    assertThat(interval.positionDrawn()).isFalse();
    assertThat(interval.widthVarianceShare()).isEmpty();
    assertThat(interval.largerError()).contains(ErrorSource.WIDTH);
    assertThat(whole(twoBeds().positionRmse(0.5)).widthVarianceShare().getAsDouble())
        .isGreaterThan(0.9);
  }

  /** A short polygon on the edge has no width to err, only a place. */
  @Test
  void positionIsTheLargerErrorOfAPolygonOnAnEdge() {
    DamageInterval interval =
        whole(
            new TestSurvey()
                .draws(200)
                .positionRmse(1)
                .bed("b", HECTARE)
                .scar("hole", wkt(box(-2, 40, 2, 44)), 0, "anchor"));
    assertThat(interval.largerError()).contains(ErrorSource.POSITION);
    assertThat(interval.widthVarianceShare()).hasValue(0);
    assertThat(interval.areaSquareMetres().median()).isCloseTo(8, within(0.6));
    // 5 and 95 % quantiles: 8 m² less and more 1.645 standard deviations of 4 m · 0.707 m.
    assertThat(interval.areaSquareMetres().low()).isCloseTo(8 - 4.65, within(1.2));
    assertThat(interval.areaSquareMetres().high()).isCloseTo(8 + 4.65, within(1.2));
  }

  @Test
  void polygonInsideABedIsSure() {
    DamageInterval interval =
        whole(
            new TestSurvey()
                .draws(50)
                .positionRmse(1)
                .bed("b", HECTARE)
                .scar("hole", wkt(box(40, 40, 44, 44)), 0, "anchor"));
    assertThat(interval.areaSquareMetres().low()).isCloseTo(16, NEAR);
    assertThat(interval.areaSquareMetres().high()).isCloseTo(16, NEAR);
    assertThat(interval.largerError()).isEmpty();
  }

  @Test
  void unknownStaysUnknownAndNoDrawsGiveNoInterval() {
    Measurement result =
        new TestSurvey()
            .draws(20)
            .bed("1", HECTARE)
            .bed("2", box(1000, 0, 1100, 100))
            .scar("s", "LINESTRING (10 10, 90 10)", 0.4)
            .surveyed(box(-10, -10, 200, 200))
            .measure();
    assertThat(result.beds().get(0).damage().interval()).isPresent();
    assertThat(result.beds().get(1).damage().interval()).isEmpty();
    assertThat(twoBeds().draws(0).measure().whole().damage().interval()).isEmpty();
  }

  /** An unscarred bed out of reach of every scar is sure to be unscarred. */
  @Test
  void bedWithoutScarsIsSure() {
    DamageInterval interval =
        twoBeds()
            .bed("3", box(1000, 0, 1100, 100))
            .measure()
            .beds()
            .get(2)
            .damage()
            .interval()
            .orElseThrow();
    assertThat(interval.areaSquareMetres().high()).isZero();
    assertThat(interval.likeliestClass()).isEqualTo("none");
    assertThat(interval.drawShare("none")).isEqualTo(1);
  }

  /** Parts of a survey vary together: an area that holds all of it has the whole's interval. */
  @Test
  void anAreaAroundEverythingHasTheIntervalOfTheWhole() {
    Measurement result = twoBeds().area("all", box(-10, -10, 300, 300)).measure();
    assertThat(result.areas().get(0).damage().interval())
        .isEqualTo(result.whole().damage().interval());
    Measurement halves = twoBeds().area("half", box(-10, -10, 50, 300)).positionRmse(0.5).measure();
    DamageInterval half = halves.areas().get(0).damage().interval().orElseThrow();
    assertThat(half.areaSquareMetres().median()).isCloseTo(30 * 8 + 30 * 0.5, within(20.0));
  }

  /** A grid one per cent too long gives the same ground figures. */
  @Test
  void intervalsAreOnTheGround() {
    GroundScale longer =
        new GroundScale() {
          @Override
          public double lengthFactor(double x, double y) {
            return 1.01;
          }

          @Override
          public double areaFactor(double x, double y) {
            return 1.01 * 1.01;
          }
        };
    TestSurvey stretched =
        twoBeds()
            .positionRmse(0.5)
            .scale(longer)
            .map(g -> AffineTransformation.scaleInstance(1.01, 1.01).transform(g));
    DamageInterval plain = whole(twoBeds().positionRmse(0.5));
    DamageInterval ground = whole(stretched);
    assertThat(ground.areaSquareMetres().low())
        .isCloseTo(plain.areaSquareMetres().low(), within(0.05));
    assertThat(ground.areaSquareMetres().high())
        .isCloseTo(plain.areaSquareMetres().high(), within(0.05));
  }

  @Test
  void threadsDoNotMatter() throws Exception {
    DamageInterval expected = whole(twoBeds().positionRmse(1));
    ForkJoinPool pool = new ForkJoinPool(3);
    try {
      assertThat(pool.submit(() -> whole(twoBeds().positionRmse(1))).get()).isEqualTo(expected);
    } finally {
      pool.shutdown();
    }
    assertThat(whole(twoBeds().positionRmse(1).seed(2))).isNotEqualTo(expected);
  }
}
