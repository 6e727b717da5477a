package org.meadowmark.core.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.check.CheckedLayer;
import org.meadowmark.core.check.CheckedSurvey;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.check.LayerChecker;
import org.meadowmark.core.check.LayoutChecker;
import org.meadowmark.core.check.Samples;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.read.geopackage.GeoPackageReader;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LengthUnit;

/**
 * Areas of the 2,839 open seagrass polygons of Tampa Bay, 1999 (doi:10.5281/zenodo.5507336), which
 * are in US survey feet. Skipped where the file is not beside the project in {@code shared/data}.
 */
class OpenBedsAreaTest {
  /** An acre is 10 chains of 66 feet by one, here of US survey feet. */
  private static final double ACRE_SQUARE_METRES = Math.pow(660 * 1200.0 / 3937, 2) / 10;

  private final FindingLog log = new FindingLog();

  private MetricSurvey survey(Optional<String> analysisCrs) {
    Path file =
        Path.of(System.getProperty("meadowmark.root", "."))
            .resolve("../shared/data/tampa-bay-seagrass-1999.gpkg");
    assumeTrue(Files.exists(file), "open data not there");
    LayerSource plain = LayerSource.of(LayerRole.BEDS, file);
    LayerSource source =
        new LayerSource(
            plain.role(),
            plain.file(),
            plain.fileLabel(),
            plain.layer(),
            plain.crs(),
            plain.axisOrder(),
            Map.of(Field.TEXTURE, "FLUCCSCODE"),
            Map.of(Field.TEXTURE, Map.of("9113", "patchy", "9116", "continuous")),
            LengthUnit.METRE,
            plain.geometryColumns());
    LayerChecker<Bed> checker = LayerChecker.beds(source, Samples.tables(), log);
    new GeoPackageReader().read(source, checker);
    CheckedLayer<Bed> beds = checker.checked();
    CheckedSurvey survey =
        new CheckedSurvey(
            List.of(), List.of(beds), List.of(), List.of(), List.of(), List.of(), List.of());
    MetricSurvey projected =
        new SurveyProjector(
                new CrsCatalog(),
                Samples.parameters(analysisCrs, true, OptionalDouble.empty()),
                log,
                Progress.NONE)
            .project(survey, List.of());
    return new LayoutChecker(0.1, log, Progress.NONE).check(projected);
  }

  /** The planar totals in the data's own projection, as the data's description states them. */
  @Test
  void totalsOnTheirOwnGridAreTheStatedOnes() {
    MetricSurvey survey = survey(Optional.of("EPSG:2882"));
    assertThat(survey.beds()).hasSize(2839);
    assertThat(acres(survey, "patchy")).isCloseTo(10_202.59, within(0.01));
    assertThat(acres(survey, "continuous")).isCloseTo(14_637.62, within(0.01));
  }

  /** Ground areas on UTM against geodesic areas of every polygon by GeographicLib. */
  @Test
  void groundAreasAgreeWithGeographicLib() throws Exception {
    MetricSurvey survey = survey(Optional.empty());
    assertThat(survey.gridLabel()).isEqualTo("EPSG:32617");
    MathTransform toDegrees =
        CRS.findMathTransform(CRS.decode("EPSG:32617", true), DefaultGeographicCRS.WGS84, true);
    for (Bed bed : survey.beds()) {
      Coordinate centre = bed.geometry().getCentroid().getCoordinate();
      double corrected = bed.geometry().getArea() / survey.scale().areaFactor(centre.x, centre.y);
      double geodesic = geodesicArea(bed.geometry(), toDegrees);
      assertThat(corrected).as(bed.id()).isCloseTo(geodesic, within(1e-4 * geodesic));
    }
  }

  private static double acres(MetricSurvey survey, String texture) {
    return survey.beds().stream()
            .filter(bed -> bed.texture().equals(texture))
            .mapToDouble(bed -> bed.geometry().getArea())
            .sum()
        / ACRE_SQUARE_METRES;
  }

  private static double geodesicArea(Geometry geometry, MathTransform toDegrees) throws Exception {
    double area = 0;
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) geometry.getGeometryN(i);
      area += ringArea(polygon.getExteriorRing(), toDegrees);
      for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
        area -= ringArea(polygon.getInteriorRingN(hole), toDegrees);
      }
    }
    return area;
  }

  private static double ringArea(LinearRing ring, MathTransform toDegrees) throws Exception {
    PolygonArea area = new PolygonArea(Geodesic.WGS84, false);
    for (int i = 0; i < ring.getNumPoints() - 1; i++) {
      double[] at = {ring.getCoordinateN(i).x, ring.getCoordinateN(i).y};
      toDegrees.transform(at, 0, at, 0, 1);
      area.AddPoint(at[1], at[0]);
    }
    return Math.abs(area.Compute(false, true).area);
  }
}
