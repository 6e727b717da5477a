package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jgrapht.alg.shortestpath.DijkstraShortestPath;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MapArea;

/** Ways around barriers against Pythagoras, and against a fine grid and a general graph library. */
class OverWaterTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** A corner is passed with a clearance of 1 cm. */
  private static final double ROUNDING_A_CORNER = 0.05;

  private final Polygon west = square(0, 0, 10);
  private final Polygon east = square(20, 0, 10);

  @Test
  void withoutABarrierInBetweenTheWayIsStraight() {
    assertThat(crossing(50, "POLYGON ((0 20, 30 20, 30 30, 0 30, 0 20))")).containsExactly(10.0);
  }

  @Test
  void wallAcrossTheGapIsPassedAtItsEnd() {
    // The wall ends 3 m above the squares: (10,10) to (15,13) to (20,10).
    double expected = 2 * Math.hypot(5, 3);
    assertThat(crossing(50, "LINESTRING (15 -100, 15 13)"))
        .singleElement()
        .satisfies(way -> assertThat(way).isCloseTo(expected, within(ROUNDING_A_CORNER)));
  }

  @Test
  void thickWallIsPassedAroundBothCorners() {
    double expected = 2 * Math.hypot(4, 3) + 2;
    assertThat(crossing(50, "POLYGON ((14 -100, 16 -100, 16 13, 14 13, 14 -100))"))
        .singleElement()
        .satisfies(way -> assertThat(way).isCloseTo(expected, within(ROUNDING_A_CORNER)));
  }

  @Test
  void wallThatCannotBePassedWithinReachPartsThePieces() {
    assertThat(crossing(11.6, "LINESTRING (15 -100, 15 13)")).isEmpty();
    assertThat(crossing(50, "LINESTRING (15 -100, 15 100)")).isEmpty();
    assertThat(crossing(50, "POLYGON ((12 -90, 18 -90, 18 90, 12 90, 12 -90))")).isEmpty();
  }

  @Test
  void aGapInTheWallLetsAStraightWayThrough() {
    assertThat(crossing(50, "LINESTRING (15 -100, 15 4)", "LINESTRING (15 6, 15 100)"))
        .singleElement()
        .satisfies(way -> assertThat(way).isCloseTo(10, within(1e-9)));
  }

  @Test
  void grassThatTouchesTheShoreIsReachedAlongIt() {
    assertThat(crossing(50, "POLYGON ((-50 -20, 80 -20, 80 0, -50 0, -50 -20))"))
        .singleElement()
        .satisfies(way -> assertThat(way).isCloseTo(10, within(1e-9)));
  }

  @Test
  void groupsFollowTheWayOverWaterAndNearestPatchesTheStraightOne() {
    PieceGraph graph = graph(50, 0, "LINESTRING (15 -100, 15 13)");
    assertThat(graph.summary(10).count()).isEqualTo(2);
    assertThat(graph.summary(12).count()).isEqualTo(1);
    assertThat(graph.nearest()[0].metres()).isEqualTo(10);
  }

  @Test
  void turningTheMapChangesNothing() {
    double straight = graph(50, 0, "LINESTRING (15 -100, 15 13)").crossings().get(0).metres();
    double turned = graph(50, 1.1, "LINESTRING (15 -100, 15 13)").crossings().get(0).metres();
    assertThat(turned).isCloseTo(straight, within(1e-6));
  }

  /** A fine grid of eight neighbours overstates a way by at most 8.24 %: (√2−1)/sin 22.5° − 1. */
  @Test
  void agreesWithTheShortestPathsOfAGeneralLibraryOnAFineGrid() throws ParseException {
    Random random = new Random(5);
    for (int round = 0; round < 20; round++) {
      List<Geometry> blocks = new ArrayList<>();
      List<String> texts = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        double x = 11 + 6 * random.nextDouble();
        double y = -4 + 18 * random.nextDouble();
        Geometry block = square(x, y, 1 + 2 * random.nextDouble());
        blocks.add(block);
        texts.add(block.toText());
      }
      double onGrid = shortestOnGrid(FACTORY.buildGeometry(blocks));
      double way = crossing(50, texts.toArray(String[]::new)).get(0);
      assertThat(way).isBetween(onGrid / 1.0824 - 0.4, onGrid + 0.4);
    }
  }

  private double shortestOnGrid(Geometry blocks) {
    double step = 0.2;
    SimpleWeightedGraph<String, DefaultWeightedEdge> grid =
        new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
    int columns = 51;
    int rows = 301;
    boolean[][] free = new boolean[columns][rows];
    for (int c = 0; c < columns; c++) {
      for (int r = 0; r < rows; r++) {
        Coordinate at = new Coordinate(10 + c * step, -25 + r * step);
        free[c][r] = blocks.distance(FACTORY.createPoint(at)) > 0;
        if (free[c][r]) {
          grid.addVertex(c + " " + r);
        }
      }
    }
    grid.addVertex("west");
    grid.addVertex("east");
    int[][] steps = {{1, 0}, {0, 1}, {1, 1}, {1, -1}};
    for (int c = 0; c < columns; c++) {
      for (int r = 0; r < rows; r++) {
        for (int[] to : steps) {
          int c2 = c + to[0];
          int r2 = r + to[1];
          if (free[c][r] && c2 < columns && r2 >= 0 && r2 < rows && free[c2][r2]) {
            grid.setEdgeWeight(
                grid.addEdge(c + " " + r, c2 + " " + r2), step * Math.hypot(to[0], to[1]));
          }
        }
      }
    }
    for (int r = 125; r <= 175; r++) {
      if (free[0][r]) {
        grid.setEdgeWeight(grid.addEdge("west", "0 " + r), 1e-9);
      }
      if (free[columns - 1][r]) {
        grid.setEdgeWeight(grid.addEdge("east", (columns - 1) + " " + r), 1e-9);
      }
    }
    return new DijkstraShortestPath<>(grid).getPathWeight("west", "east");
  }

  private List<Double> crossing(double reach, String... barriers) {
    return graph(reach, 0, barriers).crossings().stream().map(PieceGraph.Link::metres).toList();
  }

  private PieceGraph graph(double reach, double angle, String... barriers) {
    AffineTransformation turn = AffineTransformation.rotationInstance(angle);
    List<MapArea> areas = new ArrayList<>();
    for (String text : barriers) {
      String id = "B" + areas.size();
      areas.add(
          new MapArea(id, new FeatureRef("test", "barriers", id), turn.transform(read(text)), id));
    }
    return new PieceGraph.Maker(
            GroundScale.NONE, reach, new Barriers(areas, FACTORY), 100_000, new Sample(2, 1))
        .graph(List.of((Polygon) turn.transform(west), (Polygon) turn.transform(east)));
  }

  private static Geometry read(String text) {
    try {
      return new WKTReader(FACTORY).read(text);
    } catch (ParseException e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static Polygon square(double x, double y, double side) {
    return (Polygon)
        read(
            String.format(
                java.util.Locale.ROOT,
                "POLYGON ((%1$s %2$s, %3$s %2$s, %3$s %4$s, %1$s %4$s, %1$s %2$s))",
                x,
                y,
                x + side,
                y + side));
  }
}
