package org.meadowmark.core.project;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.referencing.CRS;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.check.Samples;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.SurveyInputException;

class CrsCatalogTest {
  private static final CrsCatalog CATALOG = new CrsCatalog();
  private static final FeatureRef LAYER = FeatureRef.layer("beds.shp", "beds");

  static final String ESRI_FLORIDA_WEST =
      "PROJCS[\"NAD_1983_HARN_StatePlane_Florida_West_FIPS_0902_Feet\","
          + "GEOGCS[\"GCS_North_American_1983_HARN\",DATUM[\"D_North_American_1983_HARN\","
          + "SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],PRIMEM[\"Greenwich\",0.0],"
          + "UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
          + "PARAMETER[\"False_Easting\",656166.6666666665],PARAMETER[\"False_Northing\",0.0],"
          + "PARAMETER[\"Central_Meridian\",-82.0],PARAMETER[\"Scale_Factor\",0.9999411764705882],"
          + "PARAMETER[\"Latitude_Of_Origin\",24.33333333333333],"
          + "UNIT[\"Foot_US\",0.3048006096012192]]";
  private static final String ESRI_UTM17 =
      "PROJCS[\"WGS_1984_UTM_Zone_17N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\","
          + "SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],"
          + "UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
          + "PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],"
          + "PARAMETER[\"Central_Meridian\",-81.0],PARAMETER[\"Scale_Factor\",0.9996],"
          + "PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]";
  private static final String ESRI_WGS84 =
      "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\","
          + "SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],"
          + "UNIT[\"Degree\",0.0174532925199433]]";
  private static final String LATITUDE_FIRST_WGS84 =
      "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],"
          + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433],"
          + "AXIS[\"Latitude\",NORTH],AXIS[\"Longitude\",EAST]]";
  private static final String WKT2_FLORIDA_WEST_END =
      "PROJCRS[\"NAD83(HARN) / Florida West (ftUS)\",BASEGEOGCRS[\"NAD83(HARN)\","
          + "ID[\"EPSG\",4152]],CONVERSION[\"SPCS83 Florida West zone\"],CS[Cartesian,2],"
          + "ID[\"EPSG\",2882]]";

  private static ResolvedCrs resolve(CrsText text) {
    return CATALOG.resolve(text, LayerRole.BEDS, LAYER);
  }

  private static double[] toUtm17(CrsText text, double first, double second) throws Exception {
    ResolvedCrs crs = resolve(text);
    ProjectedCRS utm = AnalysisGrid.ofCode("EPSG:32617", CATALOG).crs();
    GeometryProjector projector =
        new GeometryProjector(CRS.findMathTransform(crs.crs(), utm, true), crs.northFirst());
    Coordinate projected =
        projector.project(Samples.wkt("POINT (" + first + " " + second + ")")).getCoordinate();
    return new double[] {projected.x, projected.y};
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "EPSG:4326",
        " epsg:4326 ",
        "urn:ogc:def:crs:EPSG::4326",
        "urn:ogc:def:crs:EPSG:6.9:4326",
        "http://www.opengis.net/def/crs/EPSG/0/4326",
        "OGC:CRS84",
        "urn:ogc:def:crs:OGC:1.3:CRS84",
        "EPSG:4979"
      })
  void codesAreLongitudeFirstUnlessSaidOtherwise(String code) throws Exception {
    // Easting and northing of 27.9° N 82.6° W on zone 17, by cs2cs of PROJ 9.1.1.
    assertThat(toUtm17(CrsText.ofCode(code), -82.6, 27.9))
        .containsExactly(new double[] {EASTING, NORTHING}, within(0.001));
  }

  @Test
  void axisOrderOfTheDefinitionIsLatitudeFirst() throws Exception {
    CrsText asDefined = CrsText.ofCode("EPSG:4326").withAxisOrder(AxisOrder.AS_DEFINED);
    assertThat(toUtm17(asDefined, 27.9, -82.6))
        .containsExactly(toUtm17(CrsText.ofCode("EPSG:4326"), -82.6, 27.9), within(1e-9));
  }

  @Test
  void definitionThatIsEastFirstIsNotSwapped() {
    assertThat(
            resolve(CrsText.ofCode("EPSG:2882").withAxisOrder(AxisOrder.AS_DEFINED)).northFirst())
        .isFalse();
    assertThat(
            resolve(CrsText.ofCode("EPSG:3035").withAxisOrder(AxisOrder.AS_DEFINED)).northFirst())
        .isTrue();
    assertThat(
            resolve(CrsText.ofCode("OGC:CRS84").withAxisOrder(AxisOrder.AS_DEFINED)).northFirst())
        .isFalse();
  }

  @Test
  void textThatStatesItsAxesFollowsTheConventionOfFilesUnlessSaidOtherwise() throws Exception {
    CrsText text = CrsText.ofWkt(LATITUDE_FIRST_WGS84);
    double[] expected = {EASTING, NORTHING};
    assertThat(toUtm17(text, -82.6, 27.9)).containsExactly(expected, within(0.001));
    assertThat(toUtm17(text.withAxisOrder(AxisOrder.AS_DEFINED), 27.9, -82.6))
        .containsExactly(expected, within(0.001));
  }

  @Test
  void textWithoutAxesTakesTheOrderOfItsEpsgDefinition() {
    CrsText text = CrsText.ofWkt(ESRI_WGS84);
    assertThat(resolve(text).northFirst()).isFalse();
    assertThat(resolve(text.withAxisOrder(AxisOrder.AS_DEFINED)).northFirst()).isTrue();
  }

  @Test
  void namesOfEsriAreFoundInEpsg() {
    assertThat(resolve(CrsText.ofWkt(ESRI_UTM17)).label()).isEqualTo("EPSG:32617");
    assertThat(resolve(CrsText.ofWkt(ESRI_WGS84)).label()).isEqualTo("EPSG:4326");
    assertThat(resolve(CrsText.ofWkt(WKT2_FLORIDA_WEST_END)).label()).isEqualTo("EPSG:2882");
  }

  /** A layer with a .prj and one with a code must not be shifted against each other. */
  @Test
  void esriTextAndCodeGiveTheSamePlace() throws Exception {
    double[] byText = toUtm17(CrsText.ofWkt(ESRI_FLORIDA_WEST), 500_000, 1_300_000);
    double[] byCode = toUtm17(CrsText.ofCode("EPSG:2882"), 500_000, 1_300_000);
    assertThat(byText).containsExactly(byCode, within(0.002));
  }

  @ParameterizedTest
  @CsvSource({"EPSG:999999", "FOO:1", "garbage", "EPSG:5703", "EPSG:4978"})
  void unknownCodeNamesFileAndOption(String code) {
    assertThatThrownBy(() -> resolve(CrsText.ofCode(code)))
        .isInstanceOf(SurveyInputException.class)
        .hasMessage(
            "beds.shp: beds: the coordinate reference system '"
                + code
                + "' is not known; state one that EPSG lists with crs = \"EPSG:n\" for the layer"
                + " in the survey file or --crs beds=EPSG:n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "PROJCS[\"half", "LOCAL_CS[\"here\",UNIT[\"m\",1]]"})
  void textThatCannotBeUnderstoodIsRefused(String text) {
    assertThatThrownBy(() -> resolve(CrsText.ofWkt(text)))
        .isInstanceOf(SurveyInputException.class)
        .hasMessageNotContaining("\n");
  }

  private static final double EASTING = 342_527.3875;
  private static final double NORTHING = 3_087_153.9647;
}
