package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.meadowmark.core.write.Tables.FULL;
import static org.meadowmark.core.write.Tables.NOTHING;
import static org.meadowmark.core.write.Tables.row;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.write.ResultTable.GeometryKind;
import org.meadowmark.core.write.ResultTable.Row;

class GeoPackageWriterTest {
  /** From epsg.org, definition of EPSG:32617 as well-known text 1. */
  private static final String UTM_17N =
      "PROJCS[\"WGS 84 / UTM zone 17N\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\","
          + "SPHEROID[\"WGS 84\",6378137,298.257223563,AUTHORITY[\"EPSG\",\"7030\"]],"
          + "AUTHORITY[\"EPSG\",\"6326\"]],PRIMEM[\"Greenwich\",0,AUTHORITY[\"EPSG\",\"8901\"]],"
          + "UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],"
          + "AUTHORITY[\"EPSG\",\"4326\"]],PROJECTION[\"Transverse_Mercator\"],"
          + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",-81],"
          + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],"
          + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1,AUTHORITY[\"EPSG\",\"9001\"]],"
          + "AXIS[\"Easting\",EAST],AXIS[\"Northing\",NORTH],AUTHORITY[\"EPSG\",\"32617\"]]";

  private static final Instant NOON = Instant.parse("2024-06-30T12:00:00Z");

  private static final ResultTable BEDS =
      Tables.of(
          "beds",
          GeometryKind.MULTIPOLYGON,
          row(
              FULL,
              "POLYGON ((340000 3060000, 340100 3060000, 340100 3060100, 340000 3060000),"
                  + " (340050 3060010, 340060 3060010, 340060 3060020, 340050 3060010))"),
          row(NOTHING),
          row(NOTHING, "MULTIPOLYGON EMPTY"),
          row(
              FULL,
              "MULTIPOLYGON (((340500 3060500, 340600 3060500, 340600 3060700, 340500 3060500)))"));
  private static final ResultTable SCARS =
      Tables.of(
          "scars",
          GeometryKind.GEOMETRY,
          row(FULL, "LINESTRING (340000 3060000, 340010 3060005)"),
          row(NOTHING, "POINT (340000.5 3060000.25)"));
  private static final ResultTable TOTALS =
      Tables.of("totals", GeometryKind.NONE, row(FULL), row(NOTHING));
  private static final ResultTable NO_ROWS = Tables.of("gaps", GeometryKind.LINESTRING);

  @TempDir Path folder;

  @Test
  void gdalReadsEveryLayerWithoutAWarning() throws Exception {
    Path file = write(BEDS, SCARS, TOTALS, NO_ROWS);
    Gdal.Run info = Gdal.run("ogrinfo", "-al", file.toString());
    assertThat(info.exitCode()).isZero();
    assertThat(info.warned()).as(info.output()).isFalse();
    assertThat(info.output())
        .contains("Layer name: beds", "Geometry: Multi Polygon", "Feature Count: 4")
        .contains("Extent: (340000.000000, 3060000.000000) - (340600.000000, 3060700.000000)")
        .contains("ID[\"EPSG\",32617]")
        .contains("DESCRIPTION=Rows of a test.")
        .contains(
            "area_m2 (Real) = 59.91",
            "surveyed (Date) = 2024/06/30",
            "scarred (Integer(Boolean)) = 1")
        .contains("name (String) = Étang")
        .contains("area_m2: Real (0.0)")
        .contains("Layer name: totals", "Layer name: gaps");
  }

  @Test
  void columnsAreDescribedWithTheirUnit() {
    Path file = write(TOTALS);
    assertThat(
            column(
                file,
                "SELECT description FROM gpkg_data_columns WHERE table_name = 'totals'"
                    + " ORDER BY rowid"))
        .containsExactly(
            "Name of the thing.", "How many. [1]", "How large. [m²]", "When.", "Whether.");
  }

  @Test
  void gdalFindsFeaturesThroughTheSpatialIndex() throws Exception {
    Path file = write(BEDS);
    Gdal.Run found =
        Gdal.run(
            "ogrinfo",
            "-q",
            "-spat",
            "340550",
            "3060550",
            "340551",
            "3060551",
            file.toString(),
            "beds");
    assertThat(found.output()).contains("OGRFeature(beds):4").doesNotContain("OGRFeature(beds):1");
  }

  @Test
  void gdalConvertsIntoAnotherFormatWithoutAWarning() throws Exception {
    Path file = write(BEDS);
    Path copy = folder.resolve("copy.fgb");
    Gdal.Run run =
        Gdal.run("ogr2ogr", "-f", "FlatGeobuf", copy.toString(), file.toString(), "beds");
    assertThat(run.output()).isEmpty();
    assertThat(copy).isNotEmptyFile();
  }

  /** The names that annex F.3 of the standard demands. */
  @Test
  void everyTriggerOfTheSpatialIndexIsThere() throws Exception {
    Path file = write(SCARS);
    assertThat(column(file, "SELECT name FROM sqlite_master WHERE type = 'trigger' ORDER BY name"))
        .containsExactly(
            "rtree_scars_geom_delete",
            "rtree_scars_geom_insert",
            "rtree_scars_geom_update1",
            "rtree_scars_geom_update2",
            "rtree_scars_geom_update3",
            "rtree_scars_geom_update4");
  }

  @Test
  void gdalEditsKeepTheIndexInStep() throws Exception {
    Path file = write(SCARS);
    Gdal.Run edit =
        Gdal.run(
            "ogrinfo",
            "-q",
            file.toString(),
            "-sql",
            "UPDATE scars SET geom = (SELECT geom FROM scars WHERE fid = 1) WHERE fid = 2");
    assertThat(edit.exitCode()).as(edit.output()).isZero();
    assertThat(column(file, "SELECT maxx FROM rtree_scars_geom ORDER BY id"))
        .containsExactly("340010.0", "340010.0");
    Gdal.run("ogrinfo", "-q", file.toString(), "-sql", "DELETE FROM scars WHERE fid = 1");
    assertThat(column(file, "SELECT id FROM rtree_scars_geom")).containsExactly("2");
  }

  @Test
  void headerCarriesEnvelopeAndEmptyFlag() throws Exception {
    Path file = write(BEDS);
    assertThat(column(file, "SELECT hex(substr(geom, 1, 8)) FROM beds ORDER BY fid"))
        .containsExactly("47500003697F0000", "", "47500011697F0000", "47500003697F0000");
    assertThat(column(file, "SELECT count(*) FROM rtree_beds_geom")).containsExactly("2");
  }

  @Test
  void requiredReferenceSystemsAreThereOnce() throws Exception {
    Path file = folder.resolve("wgs84.gpkg");
    GeoPackageWriter.write(file, false, "EPSG:4326", "GEOGCS[\"WGS 84\"]", List.of(TOTALS), NOON);
    assertThat(column(file, "SELECT srs_id FROM gpkg_spatial_ref_sys ORDER BY srs_id"))
        .containsExactly("-1", "0", "4326");
  }

  @Test
  void sqliteFindsNothingWrong() throws Exception {
    Path file = write(BEDS, SCARS, TOTALS);
    assertThat(column(file, "PRAGMA integrity_check")).containsExactly("ok");
    assertThat(column(file, "PRAGMA foreign_key_check")).isEmpty();
    assertThat(column(file, "SELECT rtreecheck('rtree_beds_geom')")).containsExactly("ok");
    assertThat(column(file, "PRAGMA application_id")).containsExactly("1196444487");
    assertThat(column(file, "PRAGMA user_version")).containsExactly("10300");
  }

  @Test
  void sameInputGivesTheSameBytes() throws IOException {
    Path first = folder.resolve("first.gpkg");
    Path second = folder.resolve("second.gpkg");
    for (Path file : List.of(first, second)) {
      GeoPackageWriter.write(
          file, false, "EPSG:32617", UTM_17N, List.of(many(3_000), TOTALS), NOON);
    }
    assertThat(first).hasSameBinaryContentAs(second);
  }

  @Test
  void refusesAnExistingFileAndNamesTheOption() throws IOException {
    Path file = Files.writeString(folder.resolve("there.gpkg"), "precious");
    assertThatThrownBy(
            () -> GeoPackageWriter.write(file, false, "EPSG:32617", UTM_17N, List.of(BEDS), NOON))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("there.gpkg")
        .hasMessageContaining("--overwrite");
    assertThat(file).hasContent("precious");
    GeoPackageWriter.write(file, true, "EPSG:32617", UTM_17N, List.of(BEDS), NOON);
    assertThat(column(file, "SELECT count(*) FROM beds")).containsExactly("4");
  }

  @Test
  void aFailureInTheRowsLeavesNothingBehind() throws IOException {
    Iterable<Row> failing =
        () ->
            new Iterator<>() {
              private int given;

              @Override
              public boolean hasNext() {
                return true;
              }

              @Override
              public Row next() {
                if (given++ == 1_500) {
                  throw new IllegalStateException("no more");
                }
                return row(NOTHING, "POINT (1 2)");
              }
            };
    ResultTable table = new ResultTable("broken", "", Tables.COLUMNS, GeometryKind.POINT, failing);
    Path file = folder.resolve("broken.gpkg");
    assertThatThrownBy(
            () -> GeoPackageWriter.write(file, false, "EPSG:32617", UTM_17N, List.of(table), NOON))
        .isInstanceOf(IllegalStateException.class);
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void missingFolderIsAnErrorThatSaysSo() {
    Path file = folder.resolve("absent").resolve("out.gpkg");
    assertThatThrownBy(
            () -> GeoPackageWriter.write(file, false, "EPSG:32617", UTM_17N, List.of(BEDS), NOON))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("folder does not exist");
  }

  @Test
  void namesThatNeedQuotingWork() throws Exception {
    ResultTable odd = Tables.of("odd \"name\" é", GeometryKind.POINT, row(FULL, "POINT (1 2)"));
    Path file = folder.resolve("wäre 100% da? #1.gpkg");
    GeoPackageWriter.write(file, false, "EPSG:32617", UTM_17N, List.of(odd), NOON);
    assertThat(file).isNotEmptyFile();
    assertThat(column(file, "SELECT name FROM \"odd \"\"name\"\" é\"")).containsExactly("Étang");
  }

  @Test
  void theFileSaysWhereItComesFrom() throws Exception {
    Path file = folder.resolve("about.gpkg");
    GeoPackageAbout about =
        new GeoPackageAbout(
            "Beds & <scars>",
            Optional.of(LocalDate.of(2024, 6, 30)),
            "Layers.",
            "EPSG:32617",
            "Meadowmark 0");
    GeoPackageWriter.write(
        file, false, "EPSG:32617", UTM_17N, List.of(BEDS), NOON, Optional.of(about));
    Gdal.Run info = Gdal.run("ogrinfo", "-al", "-so", file.toString());
    assertThat(info.warned()).as(info.output()).isFalse();
    assertThat(column(file, "SELECT timestamp FROM gpkg_metadata_reference"))
        .containsExactly("2024-06-30T12:00:00.000Z");
    assertThat(
            column(
                file,
                "SELECT table_name FROM gpkg_extensions WHERE extension_name = 'gpkg_metadata'"))
        .containsExactlyInAnyOrder("gpkg_metadata", "gpkg_metadata_reference");
    assertThat(column(file, "PRAGMA foreign_key_check")).isEmpty();
    assertThat(column(file, "SELECT metadata FROM gpkg_metadata").get(0))
        .contains("<dcterms:title>Beds &amp; &lt;scars&gt;</dcterms:title>")
        .contains("<dcterms:temporal>2024-06-30</dcterms:temporal>");
  }

  @Test
  void valuesThatBreakTheTablesDescriptionAreRefused() {
    Row wrongType = row(List.of("a", 1L, "59.91", "2024", true), "POINT (1 2)");
    Row wrongKind = row(FULL, "LINESTRING (0 0, 1 1)");
    Row notFinite = row(List.of("a", 1L, Double.NaN, FULL.get(3), true), "POINT (1 2)");
    for (Row wrong : List.of(wrongType, wrongKind, notFinite)) {
      ResultTable table = Tables.of("t", GeometryKind.POINT, wrong);
      assertThatThrownBy(() -> write(table)).isInstanceOf(IllegalArgumentException.class);
      assertThat(folder).isEmptyDirectory();
    }
  }

  private Path write(ResultTable... tables) {
    Path file = folder.resolve("out.gpkg");
    GeoPackageWriter.write(file, false, "EPSG:32617", UTM_17N, List.of(tables), NOON);
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    return file;
  }

  private static ResultTable many(int count) {
    GeometryFactory factory = new GeometryFactory();
    return new ResultTable(
        "many",
        "",
        Tables.COLUMNS,
        GeometryKind.POINT,
        IntStream.range(0, count)
            .mapToObj(i -> new Row(FULL, Optional.of(factory.createPoint(new Coordinate(i, -i)))))
            .toList());
  }

  private static List<String> column(Path file, String sql) {
    List<String> values = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file.toUri());
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        values.add(rows.getString(1));
      }
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
    return values;
  }
}
