package org.meadowmark.core.plan.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.meadowmark.core.survey.PlantingPattern;

class UnitRowsTest {
  private final GeometryFactory factory = new GeometryFactory();

  @Test
  void aNarrowScarTakesOneRow() throws ParseException {
    UnitRows rows = new UnitRows(PlantingPattern.SQUARE, 1);
    Geometry line = new WKTReader().read("LINESTRING (0 0, 100 0)");
    assertThat(rows.count(line, 0.3)).isEqualTo(101);
    List<Coordinate> units = along(rows, line, 0.3);
    assertThat(units).hasSize(101);
    assertThat(units.get(0)).isEqualTo(new Coordinate(0, 0));
    assertThat(units.get(100)).isEqualTo(new Coordinate(100, 0));
  }

  @Test
  void aWidthOfZeroTakesOneRow() throws ParseException {
    Geometry line = new WKTReader().read("LINESTRING (0 0, 10 0)");
    assertThat(new UnitRows(PlantingPattern.SQUARE, 1).count(line, 0)).isEqualTo(11);
  }

  @Test
  void whatIsLeftOverLiesAtBothEndsAlike() throws ParseException {
    Geometry line = new WKTReader().read("LINESTRING (0 0, 2.5 0)");
    List<Coordinate> units = along(new UnitRows(PlantingPattern.SQUARE, 1), line, 0.3);
    assertThat(units.stream().map(c -> c.x)).containsExactly(0.25, 1.25, 2.25);
  }

  @Test
  void rowsStandInTheMiddlesOfTheirBands() throws ParseException {
    Geometry line = new WKTReader().read("LINESTRING (0 0, 10 0)");
    UnitRows rows = new UnitRows(PlantingPattern.SQUARE, 0.5);
    assertThat(rows.rows(0.74)).isEqualTo(1);
    assertThat(rows.rows(0.76)).isEqualTo(2);
    assertThat(along(rows, line, 1).stream().map(c -> c.y).distinct()).containsExactly(-0.25, 0.25);
  }

  @Test
  void countIsThatOfTheUnitsMade() {
    Random random = new Random(7);
    for (int k = 0; k < 300; k++) {
      List<Coordinate> points = new ArrayList<>(List.of(new Coordinate(0, 0)));
      for (int i = 0; i < 1 + random.nextInt(5); i++) {
        points.add(new Coordinate(30 * random.nextDouble(), 30 * random.nextDouble()));
      }
      Geometry line = factory.createLineString(points.toArray(Coordinate[]::new));
      PlantingPattern pattern = PlantingPattern.values()[k % 2];
      UnitRows rows = new UnitRows(pattern, 0.2 + random.nextDouble());
      double width = 3 * random.nextDouble();
      List<Coordinate> units = along(rows, line, width);
      assertThat(units).hasSize((int) rows.count(line, width));
      // JTS is the judge of the distance to the line
      assertThat(units)
          .allSatisfy(
              unit ->
                  assertThat(line.distance(factory.createPoint(unit)))
                      .isLessThanOrEqualTo(width / 2 + 1e-9));
    }
  }

  /**
   * Units an area approach 1/s² in squares and 2/(√3·s²) in hexagons: one unit a square of side s,
   * or a hexagon of that area (plane geometry).
   */
  @Test
  void unitsAnAreaApproachThoseOfTheGrid() throws ParseException {
    Geometry square = new WKTReader().read("POLYGON ((0 0, 200 0, 200 100, 0 100, 0 0))");
    assertThat(inside(new UnitRows(PlantingPattern.SQUARE, 0.5), square)).hasSize(80_000);
    double hexagonal = inside(new UnitRows(PlantingPattern.HEXAGONAL, 0.5), square).size();
    assertThat(hexagonal).isCloseTo(80_000 * 2 / Math.sqrt(3), within(300.0));

    Geometry circle = factory.createPoint(new Coordinate(3, 4)).buffer(50, 64);
    List<Coordinate> units = inside(new UnitRows(PlantingPattern.SQUARE, 0.5), circle);
    assertThat((double) units.size()).isCloseTo(circle.getArea() / 0.25, within(200.0));
    assertThat(units)
        .allSatisfy(
            unit -> assertThat(circle.distance(factory.createPoint(unit))).isLessThan(1e-9));
  }

  /** In a hexagonal pattern the nearest units of the next row are one spacing away too. */
  @Test
  void hexagonalNeighboursAreOneSpacingApart() throws ParseException {
    Geometry line = new WKTReader().read("LINESTRING (0 0, 10 0)");
    List<Coordinate> units = along(new UnitRows(PlantingPattern.HEXAGONAL, 1), line, Math.sqrt(3));
    assertThat(units).hasSize(21);
    assertThat(units.get(11).distance(units.get(0))).isCloseTo(1, within(1e-9));
    assertThat(units.get(11).distance(units.get(1))).isCloseTo(1, within(1e-9));
  }

  @Test
  void aPolygonSmallerThanTheSpacingTakesOneUnitInside() throws ParseException {
    Geometry small =
        new WKTReader().read("POLYGON ((0 0, 0.4 0, 0.4 0.4, 0.35 0.4, 0.35 0.05, 0 0.05, 0 0))");
    List<Coordinate> units = inside(new UnitRows(PlantingPattern.SQUARE, 2), small);
    assertThat(units).hasSize(1);
    assertThat(small.covers(factory.createPoint(units.get(0)))).isTrue();
  }

  private static List<Coordinate> along(UnitRows rows, Geometry line, double width) {
    List<Coordinate> units = new ArrayList<>();
    rows.along(line, width, (row, place) -> units.add(place));
    return units;
  }

  private static List<Coordinate> inside(UnitRows rows, Geometry polygon) {
    List<Coordinate> units = new ArrayList<>();
    rows.inside(polygon, (row, place) -> units.add(place));
    return units;
  }
}
