package org.meadowmark.core.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.check.CheckedLayer;
import org.meadowmark.core.check.CheckedSurvey;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.check.LayerCounts;
import org.meadowmark.core.check.Samples;
import org.meadowmark.core.check.Sounding;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.Parameters;

class SurveyProjectorTest {
  /** A square of 400 m on UTM zone 17, projected to other systems by cs2cs of PROJ 9.1.1. */
  private static final String SQUARE_UTM =
      "POLYGON ((350000 3080000, 350400 3080000, 350400 3080400, 350000 3080400, 350000 3080000))";

  private static final String SQUARE_DEGREES =
      "POLYGON ((-82.5231937382 27.8363012096, -82.5191330531 27.8363459705, -82.5191833434"
          + " 27.8399557000, -82.5232441629 27.8399109323, -82.5231937382 27.8363012096))";
  private static final String SQUARE_DEGREES_LATITUDE_FIRST =
      "POLYGON ((27.8363012096 -82.5231937382, 27.8363459705 -82.5191330531, 27.8399557000"
          + " -82.5191833434, 27.8399109323 -82.5232441629, 27.8363012096 -82.5231937382))";
  private static final String SQUARE_SURVEY_FEET =
      "POLYGON ((487082.607059 1273549.181340, 488395.023402 1273559.880383, 488384.323719"
          + " 1274872.297360, 487071.907381 1274861.597041, 487082.607059 1273549.181340))";
  private static final String SQUARE_ALBERS =
      "POLYGON ((545167.034893 426485.458572, 545566.113082 426495.215913, 545556.356138"
          + " 426896.000253, 545157.277953 426886.242317, 545167.034893 426485.458572))";

  private static final CrsText DEGREES = CrsText.ofCode("EPSG:4326");

  private final FindingLog log = new FindingLog();

  private static CheckedLayer<Bed> beds(CrsText crs, String... wkts) {
    List<Bed> beds =
        IntStream.range(0, wkts.length)
            .mapToObj(
                i ->
                    new Bed(
                        Integer.toString(i + 1),
                        new FeatureRef("beds", "b", Integer.toString(i + 1)),
                        Samples.wkt(wkts[i]),
                        "",
                        ""))
            .toList();
    return new CheckedLayer<>(crs, beds, count(LayerRole.BEDS, "beds", "b", beds.size()));
  }

  private static CheckedLayer<Scar> scars(String layer, CrsText crs, String... wkts) {
    List<Scar> scars = new ArrayList<>();
    for (String wkt : wkts) {
      String id = Integer.toString(scars.size() + 1);
      FeatureRef ref = new FeatureRef("scars", layer, id);
      scars.add(
          new Scar(id, ref, Samples.wkt(wkt), "hull", 1, WidthSource.MEASURED, Optional.empty()));
    }
    return new CheckedLayer<>(crs, scars, count(LayerRole.SCARS, "scars", layer, scars.size()));
  }

  private static LayerCount count(LayerRole role, String file, String layer, int n) {
    return new LayerCount(role, file, layer, "", n, n, 0, 0);
  }

  private static CheckedSurvey survey(
      List<CheckedLayer<Scar>> scars, List<CheckedLayer<Bed>> beds) {
    return new CheckedSurvey(scars, beds, List.of(), List.of(), List.of(), List.of(), List.of());
  }

  private MetricSurvey project(CheckedSurvey survey) {
    return project(survey, Samples.parameters());
  }

  private MetricSurvey project(CheckedSurvey survey, Parameters parameters) {
    return new SurveyProjector(new CrsCatalog(), parameters, log, Progress.NONE)
        .project(survey, List.of());
  }

  private double groundArea(MetricSurvey survey) {
    Geometry bed = survey.beds().get(0).geometry();
    Coordinate centre = bed.getCentroid().getCoordinate();
    return bed.getArea() / survey.scale().areaFactor(centre.x, centre.y);
  }

  private List<FindingCode> codes() {
    return log.sorted().stream().map(Finding::code).toList();
  }

  @Test
  void sameSquareInFeetMetresAndDegreesHasTheSameArea() {
    for (CheckedLayer<Bed> layer :
        List.of(
            beds(CrsText.ofCode("EPSG:32617"), SQUARE_UTM),
            beds(DEGREES, SQUARE_DEGREES),
            beds(DEGREES.withAxisOrder(AxisOrder.AS_DEFINED), SQUARE_DEGREES_LATITUDE_FIRST),
            beds(CrsText.ofCode("EPSG:2882"), SQUARE_SURVEY_FEET),
            beds(CrsText.ofWkt(CrsCatalogTest.ESRI_FLORIDA_WEST), SQUARE_SURVEY_FEET),
            beds(CrsText.ofCode("EPSG:3086"), SQUARE_ALBERS))) {
      MetricSurvey survey = project(survey(List.of(), List.of(layer)));
      assertThat(survey.gridLabel()).isEqualTo("EPSG:32617");
      assertThat(survey.beds().get(0).geometry().getArea())
          .as(layer.crs().label())
          .isCloseTo(160_000, within(160_000 * 1e-6));
      assertThat(log.size()).isZero();
    }
  }

  @Test
  void groundAreaDoesNotDependOnTheAnalysisGrid() {
    CheckedLayer<Bed> layer = beds(CrsText.ofCode("EPSG:2882"), SQUARE_SURVEY_FEET);
    double onUtm = groundArea(project(survey(List.of(), List.of(layer))));
    for (String code : List.of("EPSG:2882", "EPSG:3086", "EPSG:32616", "EPSG:3857")) {
      MetricSurvey survey =
          project(
              survey(List.of(), List.of(layer)),
              Samples.parameters(Optional.of(code), true, OptionalDouble.empty()));
      assertThat(groundArea(survey)).as(code).isCloseTo(onUtm, within(1e-6 * onUtm));
    }
    // The grid's own area is off by more: that is what the correction is for.
    assertThat(Math.abs(160_000 / onUtm - 1)).isGreaterThan(1e-4);
  }

  @Test
  void groundScaleCanBeSwitchedOff() {
    Parameters parameters = Samples.parameters(Optional.empty(), false, OptionalDouble.empty());
    CheckedLayer<Bed> layer = beds(DEGREES, SQUARE_DEGREES);
    assertThat(project(survey(List.of(), List.of(layer)), parameters).scale())
        .isSameAs(GroundScale.NONE);
  }

  @Test
  void coordinatesHaveTwoDimensions() {
    CheckedLayer<Bed> layer =
        beds(DEGREES, "POLYGON Z ((-82.5 27.8 5, -82.4 27.8 5, -82.4 27.9 5, -82.5 27.8 5))");
    Coordinate first =
        project(survey(List.of(), List.of(layer))).beds().get(0).geometry().getCoordinate();
    assertThat(first.getZ()).isNaN();
  }

  @Test
  void layersOfOneRoleAreMergedWithUniqueIdsInOrder() {
    String line = "LINESTRING (350000 3080000, 350400 3080000)";
    CrsText utm = CrsText.ofCode("EPSG:32617");
    MetricSurvey survey =
        project(
            survey(
                List.of(scars("spring", utm, line, line), scars("autumn", utm, line)),
                List.of(beds(utm, SQUARE_UTM))));
    assertThat(survey.scars()).extracting(Scar::id).containsExactly("1", "2", "autumn/1");
    assertThat(codes()).containsExactly(FindingCode.DUPLICATE_ID);
  }

  @Test
  void differentSystemsAreNoted() {
    project(
        survey(
            List.of(scars("s", DEGREES, "LINESTRING (-82.523 27.837, -82.521 27.837)")),
            List.of(beds(CrsText.ofCode("EPSG:2882"), SQUARE_SURVEY_FEET))));
    assertThat(codes()).containsExactly(FindingCode.CRS_MISMATCH);
    assertThat(log.sorted().get(0).action()).contains("a metre or more");
    assertThat(log.sorted().get(0).problem())
        .isEqualTo("the layer is in EPSG:4326, the layer of beds in EPSG:2882");
  }

  @Test
  void systemsOnOneDatumNeedNoShift() {
    project(
        survey(
            List.of(scars("s", DEGREES, "LINESTRING (-82.523 27.837, -82.521 27.837)")),
            List.of(beds(CrsText.ofCode("EPSG:32617"), SQUARE_UTM))));
    assertThat(log.sorted())
        .extracting(Finding::action)
        .containsExactly("all layers are brought to the analysis grid");
  }

  @Test
  void swappedLayerIsRefusedWithTheOption() {
    CheckedSurvey swapped =
        survey(
            List.of(scars("s", DEGREES, "LINESTRING (27.837 -82.523, 27.837 -82.521)")),
            List.of(beds(CrsText.ofCode("EPSG:2882"), SQUARE_SURVEY_FEET)));
    assertThatThrownBy(() -> project(swapped))
        .isInstanceOf(SurveyInputException.class)
        .hasMessage(
            "scars: s: the layer lies apart from the other layers, but on them if latitude and"
                + " longitude are swapped; set axis_order = \"as-defined\" for the layer in the"
                + " survey file or --axis-order scars=as-defined, or correct the file");
  }

  @Test
  void bedsAreBlamedWhenAProjectedLayerAgreesWithTheirSwap() {
    CheckedSurvey swapped =
        survey(
            List.of(
                scars(
                    "s",
                    CrsText.ofCode("EPSG:32617"),
                    "LINESTRING (350000 3080000, 350400 3080000)")),
            List.of(beds(DEGREES, SQUARE_DEGREES_LATITUDE_FIRST)));
    assertThatThrownBy(() -> project(swapped))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageStartingWith("beds: b: the layer lies apart");
  }

  @Test
  void latitudesBeyondThePoleAreRefused() {
    CheckedLayer<Bed> swapped =
        beds(DEGREES, "POLYGON ((-35 150, -35 150.1, -35.1 150.1, -35 150))");
    assertThatThrownBy(() -> project(survey(List.of(), List.of(swapped))))
        .isInstanceOf(SurveyInputException.class)
        .hasMessage(
            "beds: b: latitudes are beyond 90°, so latitude and longitude seem swapped; set"
                + " axis_order = \"as-defined\" for the layer in the survey file or --axis-order"
                + " beds=as-defined, or correct the file");
    CheckedLayer<Bed> set =
        beds(
            DEGREES.withAxisOrder(AxisOrder.AS_DEFINED),
            "POLYGON ((-35 150, -35 150.1, -35.1 150.1, -35 150))");
    assertThat(project(survey(List.of(), List.of(set))).gridLabel()).isEqualTo("EPSG:32756");
  }

  @Test
  void metresGivenAsDegreesAreRefused() {
    assertThatThrownBy(() -> project(survey(List.of(), List.of(beds(DEGREES, SQUARE_UTM)))))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("the coordinates are not degrees")
        .hasMessageContaining("--crs beds=EPSG:n");
  }

  @Test
  void layerFarOutsideItsSystemIsRefused() {
    assertThatThrownBy(
            () ->
                project(survey(List.of(), List.of(beds(CrsText.ofCode("EPSG:27700"), SQUARE_UTM)))))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("1 of 1 features lie far outside the area of use of EPSG:27700");
  }

  @Test
  void strayFeatureIsLeftOutAndCounted() {
    CheckedSurvey survey =
        survey(
            List.of(),
            List.of(
                beds(
                    DEGREES,
                    SQUARE_DEGREES,
                    SQUARE_DEGREES,
                    "POLYGON ((0 0, 0.1 0, 0.1 0.1, 0 0))")));
    MetricSurvey projected = project(survey);
    assertThat(projected.gridLabel()).isEqualTo("EPSG:32617");
    assertThat(projected.beds()).extracting(Bed::id).containsExactly("1", "2");
    Finding finding = log.sorted().get(0);
    assertThat(finding.code()).isEqualTo(FindingCode.OUTSIDE_CRS_DOMAIN);
    assertThat(finding.treatment()).isEqualTo(Treatment.SKIPPED);
    assertThat(LayerCounts.of(survey, projected, log))
        .singleElement()
        .extracting("read", "used", "repaired", "skipped")
        .containsExactly(3L, 2L, 0L, 1L);
  }

  @Test
  void layerWhollyOutOfReachIsRefused() {
    CheckedSurvey survey =
        survey(
            List.of(
                scars(
                    "s",
                    CrsText.ofCode("EPSG:32621"),
                    "LINESTRING (350000 3080000, 350400 3080000)")),
            List.of(beds(CrsText.ofCode("EPSG:32617"), SQUARE_UTM)));
    assertThatThrownBy(() -> project(survey))
        .isInstanceOf(SurveyInputException.class)
        .hasMessage(
            "scars: s: the whole layer lies out of reach of the analysis grid EPSG:32617; check"
                + " its reference system (EPSG:32621) and the one to measure in (analysis_crs)");
  }

  @ParameterizedTest
  @ValueSource(strings = {"EPSG:2193", "EPSG:2263", "EPSG:32621"})
  void gridElsewhereIsRefusedWhateverItsUnit(String code) {
    CheckedSurvey survey = survey(List.of(), List.of(beds(DEGREES, SQUARE_DEGREES)));
    Parameters parameters = Samples.parameters(Optional.of(code), true, OptionalDouble.empty());
    assertThatThrownBy(() -> project(survey, parameters))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("the whole layer lies out of reach of the analysis grid " + code);
  }

  @Test
  void layerApartFromAllOthersIsAWarning() {
    project(
        survey(
            List.of(scars("s", DEGREES, "LINESTRING (-80.1 25.7, -80.2 25.7)")),
            List.of(beds(DEGREES, SQUARE_DEGREES))));
    assertThat(codes()).containsOnly(FindingCode.CRS_MISMATCH);
    assertThat(log.sorted().get(0).problem())
        .isEqualTo("the layer lies apart from all other layers");
  }

  @Test
  void surveyWithoutAnyFeatureIsRefused() {
    assertThatThrownBy(() -> project(survey(List.of(), List.of(beds(DEGREES)))))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("no layer has a usable feature");
  }

  /** The stray of an edge that is straight in the file: L²·tan φ / (8R). */
  @Test
  void edgeStraysAsDocumented() throws Exception {
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:32617", new CrsCatalog());
    GeometryProjector projector =
        new LayerProjector(grid, log, Progress.NONE)
            .projectorFrom(
                new CrsCatalog().resolve(DEGREES, LayerRole.BEDS, FeatureRef.layer("", "")));
    // A kilometre along the parallel of 28° N, across the central meridian.
    double half = Math.toDegrees(500 / (6_378_137 * Math.cos(Math.toRadians(28))));
    Coordinate[] points =
        projector
            .project(
                Samples.wkt(
                    "LINESTRING (" + (-81 - half) + " 28, -81 28, " + (-81 + half) + " 28)"))
            .getCoordinates();
    double stray = Math.abs(points[1].y - (points[0].y + points[2].y) / 2);
    assertThat(stray).isCloseTo(1e6 * Math.tan(Math.toRadians(28)) / (8 * 6.371e6), within(0.0005));
  }

  @Test
  void soundingsGiveTheDepthOfTheNearestWithinReach() {
    CrsText utm = CrsText.ofCode("EPSG:32617");
    List<Sounding> points =
        List.of(
            new Sounding(
                "1", new FeatureRef("d", "d", "1"), Samples.wkt("POINT (350000 3080000)"), 1.5),
            new Sounding(
                "2", new FeatureRef("d", "d", "2"), Samples.wkt("POINT (350050 3080000)"), 2.5));
    CheckedSurvey survey =
        new CheckedSurvey(
            List.of(),
            List.of(beds(utm, SQUARE_UTM)),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(new CheckedLayer<>(utm, points, count(LayerRole.DEPTH, "d", "d", 2))));
    MetricSurvey projected = project(survey);
    assertThat(projected.depth().depthMetres(350_010, 3_080_000)).hasValue(1.5);
    assertThat(projected.depth().depthMetres(350_030, 3_080_000)).hasValue(2.5);
    assertThat(projected.depth().depthMetres(350_149, 3_080_000)).hasValue(2.5);
    assertThat(projected.depth().depthMetres(350_151, 3_080_000)).isEmpty();
  }

  private static final String ASCII_GRID =
      "ncols 3\nnrows 2\nxllcorner 350000\nyllcorner 3080000\ncellsize 10\nNODATA_value -9999\n"
          + "1 2 3\n4 -9999 6\n";

  private MetricSurvey withDepth(LayerSource source) {
    return new SurveyProjector(new CrsCatalog(), Samples.parameters(), log, Progress.NONE)
        .project(
            survey(List.of(), List.of(beds(CrsText.ofCode("EPSG:32617"), SQUARE_UTM))),
            List.of(source));
  }

  @Test
  void asciiGridGivesTheDepthOfTheCell(@TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("depth.asc"), ASCII_GRID);
    LayerSource source = LayerSource.of(LayerRole.DEPTH, file);
    assertThat(DepthGrid.isGrid(source)).isTrue();
    assertThatThrownBy(() -> withDepth(source))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("--crs depth=EPSG:n");
    Files.writeString(
        folder.resolve("depth.prj"), AnalysisGrid.ofCode("EPSG:32617", new CrsCatalog()).wkt());
    MetricSurvey survey = withDepth(source);
    assertThat(survey.depth().depthMetres(350_001, 3_080_019)).hasValue(1);
    assertThat(survey.depth().depthMetres(350_029, 3_080_011)).hasValue(3);
    assertThat(survey.depth().depthMetres(350_005, 3_080_005)).hasValue(4);
    assertThat(survey.depth().depthMetres(350_015, 3_080_005)).isEmpty();
    assertThat(survey.depth().depthMetres(350_031, 3_080_005)).isEmpty();
    assertThat(survey.depth().depthMetres(349_999, 3_080_005)).isEmpty();
  }

  /** A GeoTIFF made by GDAL 3.6.2 with the same values, on zone 17 from 500000 3000000. */
  @Test
  void geoTiffGivesTheDepthOfTheCell() throws Exception {
    Path file = Path.of(getClass().getResource("depth-utm17.tif").toURI());
    MetricSurvey survey = withDepth(LayerSource.of(LayerRole.DEPTH, file));
    assertThat(survey.depth().depthMetres(500_001, 3_000_019)).hasValue(1);
    assertThat(survey.depth().depthMetres(500_029, 3_000_001)).hasValue(6);
    assertThat(survey.depth().depthMetres(500_015, 3_000_005)).isEmpty();
    assertThat(survey.depth().depthMetres(499_999, 3_000_005)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "ncols 3\nnrows", "not a grid at all\n1 2 3\n"})
  void brokenGridIsRefusedInOneLine(String content, @TempDir Path folder) throws Exception {
    Path file = Files.writeString(folder.resolve("depth.asc"), content);
    assertThatThrownBy(() -> withDepth(LayerSource.of(LayerRole.DEPTH, file)))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("the depth grid cannot be read")
        .hasMessageNotContaining("\n");
    assertThatThrownBy(() -> withDepth(LayerSource.of(LayerRole.DEPTH, folder.resolve("none.tif"))))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageContaining("the file cannot be opened");
  }

  @Test
  void gridOfHeightsIsAWarning(@TempDir Path folder) throws Exception {
    Path file =
        Files.writeString(folder.resolve("depth.asc"), ASCII_GRID.replace("1 2 3", "-1 -2 -3"));
    Files.writeString(
        folder.resolve("depth.prj"), AnalysisGrid.ofCode("EPSG:32617", new CrsCatalog()).wkt());
    withDepth(LayerSource.of(LayerRole.DEPTH, file));
    assertThat(codes()).containsExactly(FindingCode.VALUE_UNREADABLE);
  }
}
