package org.meadowmark.core.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.densify.Densifier;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.check.Samples;

class GeodesicGroundScaleTest {
  private static final CrsCatalog CATALOG = new CrsCatalog();

  /** A square, a thin strip, a star and an L with a bend, of some hundred metres. */
  private static final List<String> POLYGONS =
      List.of(
          "POLYGON ((0 0, 400 0, 400 400, 0 400, 0 0))",
          "POLYGON ((0 0, 900 300, 900 310, 0 10, 0 0))",
          "POLYGON ((0 0, 200 60, 400 0, 340 200, 400 400, 200 340, 0 400, 60 200, 0 0))",
          "POLYGON ((0 0, 700 0, 700 50, 50 50, 50 600, 0 600, 0 0))");

  private static final List<String> LINES =
      List.of(
          "LINESTRING (0 0, 500 0)",
          "LINESTRING (0 0, 0 500)",
          "LINESTRING (0 0, 300 100, 250 400)");

  private static MathTransform toDegrees(AnalysisGrid grid) throws Exception {
    return CRS.findMathTransform(grid.crs(), DefaultGeographicCRS.WGS84, true);
  }

  private static Coordinate place(AnalysisGrid grid, double longitude, double latitude)
      throws Exception {
    double[] at = {longitude, latitude};
    toDegrees(grid).inverse().transform(at, 0, at, 0, 1);
    return new Coordinate(at[0], at[1]);
  }

  private static double[] degrees(AnalysisGrid grid, Geometry geometry) throws Exception {
    Coordinate[] points = Densifier.densify(geometry, 20).getCoordinates();
    double[] ordinates = new double[2 * points.length];
    for (int i = 0; i < points.length; i++) {
      ordinates[2 * i] = points[i].x;
      ordinates[2 * i + 1] = points[i].y;
    }
    toDegrees(grid).transform(ordinates, 0, ordinates, 0, points.length);
    return ordinates;
  }

  private static double groundArea(double[] degrees) {
    PolygonArea area = new PolygonArea(Geodesic.WGS84, false);
    for (int i = 0; i < degrees.length - 2; i += 2) {
      area.AddPoint(degrees[i + 1], degrees[i]);
    }
    return Math.abs(area.Compute(false, true).area);
  }

  private static double groundLength(double[] degrees) {
    PolygonArea line = new PolygonArea(Geodesic.WGS84, true);
    for (int i = 0; i < degrees.length; i += 2) {
      line.AddPoint(degrees[i + 1], degrees[i]);
    }
    return line.Compute().perimeter;
  }

  private static Geometry moved(String wkt, Coordinate to) {
    return AffineTransformation.translationInstance(to.x, to.y).transform(Samples.wkt(wkt));
  }

  /**
   * Grid measures divided by the factor agree with GeographicLib within 0.01 %; without it they are
   * off by up to 0.08 % in area on the central meridian of a UTM zone and 0.20 % at its edge on the
   * equator.
   */
  @ParameterizedTest
  @CsvSource({
    "EPSG:32617, -81, 0.5",
    "EPSG:32617, -81, 27.9",
    "EPSG:32617, -83.99, 0.5",
    "EPSG:32617, -83.99, 27.9",
    "EPSG:32617, -78.01, 27.9",
    "EPSG:32719, -70, -35",
    "EPSG:32719, -71.99, -35",
    "EPSG:32631, 3, 60",
    "EPSG:32631, 5.99, 60",
    "EPSG:32633, 12.01, 70",
    "EPSG:32756, 153, -27",
    "EPSG:32760, 179.99, -16"
  })
  void correctedMeasuresAgreeWithGeographicLib(String code, double longitude, double latitude)
      throws Exception {
    AnalysisGrid grid = AnalysisGrid.ofCode(code, CATALOG);
    GeodesicGroundScale scale = new GeodesicGroundScale(grid);
    Coordinate origin = place(grid, longitude, latitude);
    for (String wkt : POLYGONS) {
      Geometry polygon = moved(wkt, origin);
      Coordinate centre = polygon.getCentroid().getCoordinate();
      double ground = groundArea(degrees(grid, polygon));
      double corrected = polygon.getArea() / scale.areaFactor(centre.x, centre.y);
      assertThat(corrected).isCloseTo(ground, within(1e-6 * ground));
      assertThat(Math.abs(polygon.getArea() / ground - 1)).isLessThan(0.0021);
    }
    for (String wkt : LINES) {
      Geometry line = moved(wkt, origin);
      Coordinate centre = line.getCentroid().getCoordinate();
      double ground = groundLength(degrees(grid, line));
      double corrected = line.getLength() / scale.lengthFactor(centre.x, centre.y);
      assertThat(corrected).isCloseTo(ground, within(1e-6 * ground));
    }
  }

  @Test
  void uncorrectedErrorIsWhatTheDocumentationSays() throws Exception {
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:32617", CATALOG);
    Geometry middle = moved(POLYGONS.get(0), place(grid, -81, 27.9));
    Geometry edge = moved(POLYGONS.get(0), place(grid, -83.99, 0.5));
    assertThat(middle.getArea() / groundArea(degrees(grid, middle)) - 1)
        .isCloseTo(-0.0008, within(0.00001));
    assertThat(edge.getArea() / groundArea(degrees(grid, edge)) - 1)
        .isCloseTo(0.0020, within(0.0001));
  }

  /**
   * Scale factor of the transverse Mercator projection: Snyder (1987), <i>Map Projections: A
   * Working Manual</i>, USGS Professional Paper 1395, equation 8-11, with k0 = 0.9996.
   */
  @ParameterizedTest
  @CsvSource({
    "-81, 0",
    "-81, 45",
    "-80, 10",
    "-79.5, 28",
    "-78, 28",
    "-84, 28",
    "-83, 60",
    "-84, 1"
  })
  void lengthFactorFollowsSnydersSeries(double longitude, double latitude) throws Exception {
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:32617", CATALOG);
    double f = 1 / 298.257223563;
    double eSquared = f * (2 - f);
    double primed = eSquared / (1 - eSquared);
    double phi = Math.toRadians(latitude);
    double t = Math.pow(Math.tan(phi), 2);
    double c = primed * Math.pow(Math.cos(phi), 2);
    double a = Math.toRadians(longitude + 81) * Math.cos(phi);
    double k =
        0.9996
            * (1
                + (1 + c) * a * a / 2
                + (5 - 4 * t + 42 * c + 13 * c * c - 28 * primed) * Math.pow(a, 4) / 24
                + (61 - 148 * t + 16 * t * t) * Math.pow(a, 6) / 720);
    Coordinate at = place(grid, longitude, latitude);
    GeodesicGroundScale scale = new GeodesicGroundScale(grid);
    assertThat(scale.lengthFactor(at.x, at.y)).isCloseTo(k, within(2e-7));
    assertThat(scale.areaFactor(at.x, at.y)).isCloseTo(k * k, within(4e-7));
  }

  /** An equal-area grid keeps areas: EPSG:3035, Lambert azimuthal equal area of Europe. */
  @Test
  void equalAreaGridHasAreaFactorOne() throws Exception {
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:3035", CATALOG);
    Coordinate at = place(grid, -9, 38);
    assertThat(new GeodesicGroundScale(grid).areaFactor(at.x, at.y)).isCloseTo(1, within(1e-7));
  }

  @Test
  void answerDoesNotDependOnOrderOrThreads() {
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:32617", CATALOG);
    GeodesicGroundScale forwards = new GeodesicGroundScale(grid);
    GeodesicGroundScale backwards = new GeodesicGroundScale(grid);
    double[] first =
        IntStream.range(0, 500)
            .parallel()
            .mapToDouble(i -> forwards.areaFactor(300_000 + 731 * i, 3_000_000 + 411 * i))
            .toArray();
    for (int i = 499; i >= 0; i--) {
      assertThat(backwards.areaFactor(300_000 + 731 * i, 3_000_000 + 411 * i)).isEqualTo(first[i]);
    }
  }
}
