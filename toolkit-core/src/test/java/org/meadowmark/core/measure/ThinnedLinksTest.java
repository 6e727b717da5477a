package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.connectivity.CrossingModel;
import org.meadowmark.core.measure.connectivity.HabitatGraph;
import org.meadowmark.core.measure.connectivity.ProbabilisticConnectivity;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MapArea;

/** What is left of the links between very many pieces gives the distances that all of them give. */
class ThinnedLinksTest {
  private static final double REACH = 50;
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Sample SAMPLE = new Sample(20, 1);

  private static PieceGraph graph(List<Polygon> pieces, Barriers barriers, int mostPieces) {
    return new PieceGraph.Maker(GroundScale.NONE, REACH, barriers, mostPieces, SAMPLE)
        .graph(pieces);
  }

  /** Pieces of all sizes, most of them close together, one of them long and thin. */
  private static List<Polygon> pieces(long seed, int count) {
    Random random = new Random(seed);
    List<Polygon> pieces = new ArrayList<>();
    pieces.add((Polygon) TestSurvey.wkt("POLYGON ((0 -3, 300 -3, 300 -2, 150 -1, 0 -2, 0 -3))"));
    int side = (int) Math.ceil(Math.sqrt(count));
    for (int i = 0; i < count; i++) {
      double x = 7 * (i % side) + random.nextDouble();
      double y = 7 * (i / side) + random.nextDouble() + (i / side > side / 2 ? 20 : 0);
      double size = 2 + 4.5 * random.nextDouble();
      Geometry square = TestSurvey.wkt(TestSurvey.box(0, 0, size, size));
      Geometry turned =
          AffineTransformation.rotationInstance(random.nextDouble() / 3, size / 2, size / 2)
              .translate(x, y)
              .transform(square);
      pieces.add((Polygon) turned);
    }
    return pieces;
  }

  private static HabitatGraph habitat(List<Polygon> pieces, PieceGraph graph) {
    double[] areas = pieces.stream().mapToDouble(piece -> piece.getArea() / 1e4).toArray();
    Links links = graph.crossings();
    return HabitatGraph.ofDistances(areas, links.firsts(), links.seconds(), links.lengthsMetres());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void shortestWaysGroupsAndNearestAreThoseOfAllLinks(long seed) {
    List<Polygon> pieces = pieces(seed, 400);
    PieceGraph all = graph(pieces, Barriers.NONE, 1_000);
    PieceGraph few = graph(pieces, Barriers.NONE, 0);
    assertThat(all.isThinned()).isFalse();
    assertThat(few.isThinned()).isTrue();
    assertThat(few.crossings().size()).isLessThan(all.crossings().size() / 2);
    compare(pieces, all, few);
    for (int i = 0; i < pieces.size(); i++) {
      assertThat(few.nearest()[i]).isEqualTo(all.nearest()[i]);
    }
  }

  private static void compare(List<Polygon> pieces, PieceGraph all, PieceGraph few) {
    for (double metres : new double[] {0.5, 1, 2, 5, 10, 20, REACH}) {
      assertThat(few.groups(metres)).isEqualTo(all.groups(metres));
      CrossingModel model = CrossingModel.ofMedianMetres(metres);
      double exact = equivalentArea(pieces, all, model);
      assertThat(equivalentArea(pieces, few, model)).isCloseTo(exact, within(1e-9 * exact));
    }
  }

  private static double equivalentArea(
      List<Polygon> pieces, PieceGraph graph, CrossingModel model) {
    return ProbabilisticConnectivity.of(habitat(pieces, graph), model, 10)
        .index()
        .equivalentAreaHectares();
  }

  /** With a wall between them, the straight way over a third piece may be no way at all. */
  @Test
  void barriersAreHeeded() {
    List<Polygon> pieces = pieces(5, 100);
    Barriers wall =
        new Barriers(
            List.of(
                new MapArea(
                    "wall",
                    new FeatureRef("barriers", "barriers", "wall"),
                    TestSurvey.wkt("POLYGON ((-9 20.2, 62 20.2, 62 20.4, -9 20.4, -9 20.2))"),
                    "wall")),
            FACTORY);
    compare(pieces, graph(pieces, wall, 1_000), graph(pieces, wall, 0));
  }

  /** The estimate's mean over many draws is the exact sum, and its stated error is about right. */
  @Test
  void estimatesAreUnbiased() {
    List<Polygon> pieces = pieces(6, 400);
    HabitatGraph habitat = habitat(pieces, graph(pieces, Barriers.NONE, 1_000));
    List<CrossingModel> models =
        List.of(CrossingModel.ofMedianMetres(2), CrossingModel.ofMedianMetres(20));
    List<ProbabilisticConnectivity> exact = ProbabilisticConnectivity.sweep(habitat, models, 10);
    int rounds = 400;
    for (int m = 0; m < models.size(); m++) {
      double truth = exact.get(m).index().numeratorSquareHectares();
      double sum = 0;
      double squares = 0;
      double stated = 0;
      for (int seed = 0; seed < rounds; seed++) {
        var index =
            ProbabilisticConnectivity.estimate(habitat, models, 10, new Sample(20, seed))
                .get(m)
                .index();
        double error = index.numeratorSquareHectares() - truth;
        sum += error;
        squares += error * error;
        stated += Math.pow(index.numeratorStandardErrorSquareHectares(), 2);
      }
      double rootMeanSquare = Math.sqrt(squares / rounds);
      assertThat(Math.abs(sum / rounds)).isLessThan(4 * rootMeanSquare / Math.sqrt(rounds));
      // Successive differences may only overstate the error of a systematic sample by much.
      assertThat(Math.sqrt(stated / rounds)).isBetween(0.7 * rootMeanSquare, 4 * rootMeanSquare);
    }
  }

  /** Where every patch sees the same, one row says it all. */
  @Test
  void estimateOfEqualRowsIsExact() {
    int n = 12;
    double[] areas = new double[n];
    int[] first = new int[n];
    int[] second = new int[n];
    double[] metres = new double[n];
    for (int i = 0; i < n; i++) {
      areas[i] = 2;
      first[i] = i;
      second[i] = (i + 1) % n;
      metres[i] = 3;
    }
    HabitatGraph ring = HabitatGraph.ofDistances(areas, first, second, metres);
    List<CrossingModel> model = List.of(CrossingModel.ofMedianMetres(5));
    var exact = ProbabilisticConnectivity.sweep(ring, model, 24).get(0).index();
    var estimate =
        ProbabilisticConnectivity.estimate(ring, model, 24, new Sample(5, 9)).get(0).index();
    assertThat(estimate.numeratorSquareHectares())
        .isCloseTo(exact.numeratorSquareHectares(), within(1e-9));
    assertThat(estimate.numeratorStandardErrorSquareHectares()).isCloseTo(0, within(1e-9));
  }

  @Test
  void surveyWithTooManyPatchesStatesTheErrorAndLeavesOutTheIntegralIndex() {
    TestSurvey survey = new TestSurvey().bed("b", TestSurvey.box(0, 0, 60, 60));
    for (int i = 1; i < 12; i++) {
      survey.scar("x" + i, "LINESTRING (%d -1, %d 61)".formatted(5 * i, 5 * i), 0.4);
      survey.scar("y" + i, "LINESTRING (-1 %d, 61 %d)".formatted(5 * i, 5 * i), 0.4);
    }
    Connectedness exact = ten(survey);
    Connectedness estimate =
        ten(survey.ranking("connectivity_exact_patches", 100, "connectivity_sources", 30));
    assertThat(exact.integralIndex()).isPresent();
    assertThat(exact.equivalentAreaStandardErrorHectares()).isEmpty();
    assertThat(estimate.integralIndex()).isEmpty();
    double error = estimate.equivalentAreaStandardErrorHectares().getAsDouble();
    assertThat(error).isPositive();
    assertThat(estimate.equivalentAreaHectares())
        .isCloseTo(exact.equivalentAreaHectares(), within(4 * error));
  }

  private static Connectedness ten(TestSurvey survey) {
    Optional<Connectedness> found =
        survey.measure().whole().fragmentation().crossings().stream()
            .filter(crossing -> crossing.distanceMetres() == 10)
            .findFirst()
            .orElseThrow()
            .after();
    return found.orElseThrow();
  }

  /** Pieces that touch a corner of each other are links of length 0. */
  @Test
  void cornersTouch() {
    List<Polygon> pieces =
        List.of(
            (Polygon) TestSurvey.wkt(TestSurvey.box(0, 0, 1, 1)),
            (Polygon) TestSurvey.wkt(TestSurvey.box(1, 1, 2, 2)),
            FACTORY.createPolygon(
                new Coordinate[] {
                  new Coordinate(2, 2),
                  new Coordinate(3, 2),
                  new Coordinate(3, 3),
                  new Coordinate(2, 2)
                }));
    assertThat(graph(pieces, Barriers.NONE, 0).groups(0)).containsExactly(0, 0, 0);
  }
}
