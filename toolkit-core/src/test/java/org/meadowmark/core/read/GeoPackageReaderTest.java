package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.core.read.Broken.assertRefused;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.io.WKBWriter;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.survey.LayerSource;

class GeoPackageReaderTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void copyFixture() throws IOException {
    file = folder.resolve("ten.gpkg");
    Files.copy(ReadLayer.fixture("ten-32617.gpkg"), file);
  }

  @Test
  void statesCountLayerAndReferenceSystem() {
    ReadLayer layer = ReadLayer.of(file);
    assertThat(layer.header().layer()).isEqualTo("ten");
    assertThat(layer.header().featureCount()).isEqualTo(10);
    assertThat(layer.header().crs().orElseThrow().code()).contains("EPSG:32617");
    assertThat(layer.header().crs().orElseThrow().wkt().orElseThrow()).startsWith("PROJCS[");
    assertThat(layer.features().get(0).ref().toString()).isEqualTo(file + ": ten: 1");
  }

  @Test
  void severalLayersAreListedAndOneCanBeNamed() {
    Path layers = ReadLayer.fixture("layers.gpkg");
    assertRefused(layers).isEqualTo("has 2 feature layers; name the layer, one of: areas, lines");
    assertThat(ReadLayer.of(layers, "lines").features()).hasSize(5);
    assertThat(ReadLayer.of(layers, "AREAS").header().layer()).isEqualTo("areas");
    assertRefused(named(layers, "scars"))
        .isEqualTo("has no feature layer 'scars'; use one of: areas, lines");
    assertRefused(named(layers, "notes")).contains("use one of: areas, lines");
  }

  @Test
  void readsMeasuresAndHeights() {
    Path layers = ReadLayer.fixture("layers.gpkg");
    ReadLayer lines = ReadLayer.of(layers, "lines");
    assertThat(lines.geometry(0).getCoordinates()[0].getZ()).isEqualTo(-1.5);
    assertThat(ReadLayer.of(layers, "areas").geometry(1).getArea()).isEqualTo(9_600);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -1})
  void undefinedSystemsAreNone(int srsId) throws SQLException {
    execute("UPDATE gpkg_geometry_columns SET srs_id = " + srsId);
    assertThat(ReadLayer.of(file).header().crs()).isEmpty();
    assertThat(ReadLayer.of(ReadLayer.fixture("no-crs.gpkg")).header().crs()).isEmpty();
  }

  @Test
  void aSystemWithoutAuthorityKeepsItsText() throws SQLException {
    execute(
        "INSERT INTO gpkg_spatial_ref_sys VALUES"
            + " ('own', 100001, 'NONE', 100001, 'LOCAL_CS[\"own\"]', NULL)");
    execute("UPDATE gpkg_geometry_columns SET srs_id = 100001");
    assertThat(ReadLayer.of(file).header().crs().orElseThrow().code()).isEmpty();
    assertThat(ReadLayer.of(file).header().crs().orElseThrow().wkt()).contains("LOCAL_CS[\"own\"]");
  }

  /** Indicator and envelope length of clause 2.1.3 of the standard. */
  @ParameterizedTest
  @CsvSource({"0,0", "1,32", "2,48", "3,48", "4,64"})
  void everyEnvelopeIsPassedOver(int indicator, int bytes) throws SQLException {
    setGeometry(header(1 | indicator << 1, ByteOrder.LITTLE_ENDIAN, bytes), "POINT (3 4)");
    assertThat(ReadLayer.of(file).wkt(0)).isEqualTo("POINT (3 4)");
  }

  @Test
  void bigEndianHeadersAndEmptyGeometriesAreRead() throws SQLException {
    setGeometry(header(0, ByteOrder.BIG_ENDIAN, 0), "LINESTRING (3 4, 5 6)");
    assertThat(ReadLayer.of(file).wkt(0)).isEqualTo("LINESTRING (3 4, 5 6)");
    setGeometry(header(0b10001, ByteOrder.LITTLE_ENDIAN, 0), "POLYGON EMPTY");
    assertThat(ReadLayer.of(file).geometry(0).isEmpty()).isTrue();
  }

  @Test
  void geometriesThatCannotBeReadAreFindings() throws SQLException {
    byte[][] bad = {
      "GP".getBytes(StandardCharsets.US_ASCII),
      header(1 | 5 << 1, ByteOrder.LITTLE_ENDIAN, 64),
      header(1 | 1 << 5, ByteOrder.LITTLE_ENDIAN, 0),
      header(1, ByteOrder.LITTLE_ENDIAN, 0),
      // A line that states two thousand million points and holds none.
      append(header(1, ByteOrder.LITTLE_ENDIAN, 0), 1, 2, 0, 0, 0, -1, -1, -1, 127),
      // A circular string, which is no simple feature.
      append(header(1, ByteOrder.LITTLE_ENDIAN, 0), 1, 8, 0, 0, 0, 0, 0, 0, 0),
    };
    for (byte[] bytes : bad) {
      setBytes(bytes);
      ReadLayer layer = ReadLayer.of(file);
      assertThat(layer.features()).hasSize(9);
      assertThat(layer.findings()).hasSize(1);
      assertThat(layer.findings().get(0).code()).isEqualTo(FindingCode.UNREADABLE_FEATURE);
      assertThat(layer.findings().get(0).treatment()).isEqualTo(Treatment.SKIPPED);
      assertThat(layer.findings().get(0).message())
          .startsWith(file + ": ten: 1: its geometry cannot be read")
          .doesNotContain("\n");
    }
  }

  @Test
  void valuesKeepTheirTypes() throws SQLException {
    execute("ALTER TABLE ten ADD COLUMN flag BOOLEAN");
    execute("ALTER TABLE ten ADD COLUMN stamp DATETIME");
    execute("ALTER TABLE ten ADD COLUMN photo BLOB");
    execute("ALTER TABLE ten ADD COLUMN big INTEGER");
    execute(
        "UPDATE ten SET flag = 1, stamp = '2024-06-30T23:59:59.000Z', photo = x'00',"
            + " big = 9007199254740993, seen = 'soon' WHERE fid = 1");
    assertThat(ReadLayer.of(file).attributes(0))
        .containsEntry("flag", true)
        .containsEntry("stamp", LocalDate.of(2024, 6, 30))
        .containsEntry("big", 9007199254740993L)
        .containsEntry("seen", "soon")
        .doesNotContainKey("photo");
  }

  @Test
  void readingLeavesTheFolderAsItIs() throws IOException, SQLException {
    ReadLayer.of(file);
    assertThat(file).hasSameBinaryContentAs(ReadLayer.fixture("ten-32617.gpkg"));
    execute("PRAGMA journal_mode = WAL");
    assertThat(ReadLayer.of(file).features()).hasSize(10);
    try (var left = Files.list(folder)) {
      assertThat(left).containsExactly(file);
    }
  }

  @Test
  void changesInALogBesideTheFileAreSeen() throws SQLException {
    execute("PRAGMA journal_mode = WAL");
    try (Connection connection = connect(file);
        var statement = connection.createStatement()) {
      statement.execute("DELETE FROM ten WHERE fid = 1");
      assertThat(ReadLayer.of(file).features()).hasSize(9);
    }
  }

  @Test
  void brokenFilesAreRefused() throws IOException, SQLException {
    Path text = Files.writeString(folder.resolve("text.gpkg"), "not a database, only words");
    assertRefused(text).contains("not a readable SQLite file");

    byte[] whole = Files.readAllBytes(file);
    for (int length : new int[] {50, 4_096, whole.length / 2, whole.length - 30_000}) {
      Path cut = Files.write(folder.resolve("cut.gpkg"), Arrays.copyOf(whole, length));
      assertRefused(cut).contains("get a whole copy");
    }

    Path other = folder.resolve("other.gpkg");
    Files.copy(file, other, StandardCopyOption.REPLACE_EXISTING);
    execute(other, "DROP TABLE gpkg_geometry_columns");
    assertRefused(other).contains("no GeoPackage");
    execute("DELETE FROM gpkg_contents");
    assertRefused(file).contains("has no feature layer");
  }

  private static LayerSource named(Path path, String layer) {
    LayerSource plain = LayerSource.of(LayerRole.SCARS, path);
    return new LayerSource(
        plain.role(),
        path,
        plain.fileLabel(),
        Optional.of(layer),
        plain.crs(),
        plain.axisOrder(),
        plain.attributes(),
        plain.valueNames(),
        plain.widthUnit(),
        plain.geometryColumns());
  }

  private static byte[] header(int flags, ByteOrder order, int envelopeBytes) {
    return ByteBuffer.allocate(8 + envelopeBytes)
        .order(order)
        .put((byte) 'G')
        .put((byte) 'P')
        .put((byte) 0)
        .put((byte) flags)
        .putInt(32617)
        .array();
  }

  private static byte[] append(byte[] start, int... bytes) {
    byte[] all = Arrays.copyOf(start, start.length + bytes.length);
    for (int i = 0; i < bytes.length; i++) {
      all[start.length + i] = (byte) bytes[i];
    }
    return all;
  }

  private void setGeometry(byte[] header, String wkt) throws SQLException {
    byte[] body = new WKBWriter().write(ReadLayer.parsed(wkt));
    byte[] all = Arrays.copyOf(header, header.length + body.length);
    System.arraycopy(body, 0, all, header.length, body.length);
    setBytes(all);
  }

  private void setBytes(byte[] bytes) throws SQLException {
    try (Connection connection = connect(file)) {
      // These triggers need functions that only a GIS brings.
      for (String trigger : new String[] {"update1", "update2", "update3", "update4"}) {
        try (var statement = connection.createStatement()) {
          statement.execute("DROP TRIGGER IF EXISTS rtree_ten_geom_" + trigger);
        }
      }
      try (PreparedStatement update =
          connection.prepareStatement("UPDATE ten SET geom = ? WHERE fid = 1")) {
        update.setBytes(1, bytes);
        update.executeUpdate();
      }
    }
  }

  private void execute(String sql) throws SQLException {
    execute(file, sql);
  }

  private static void execute(Path path, String sql) throws SQLException {
    try (Connection connection = connect(path);
        var statement = connection.createStatement()) {
      statement.execute("PRAGMA foreign_keys = OFF");
      for (String trigger : new String[] {"update1", "update2", "update3", "update4"}) {
        statement.execute("DROP TRIGGER IF EXISTS rtree_ten_geom_" + trigger);
      }
      statement.execute(sql);
    }
  }

  private static Connection connect(Path path) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + path.toUri());
  }
}
