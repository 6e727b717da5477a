package org.meadowmark.core.hostile;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPOutputStream;

/** Files made to do harm, each with what must come of it. */
final class HostileCases {
  /**
   * A file made to do harm.
   *
   * @param reader what reads it
   * @param name what is in it
   * @param bytes the file
   * @param expected words of the refusal; empty where the rest of the file must be read
   */
  record Case(HostileReader reader, String name, byte[] bytes, String expected) {}

  private static final int ENTITY_LEVELS = 12;
  private static final String GPX_REST =
      "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\" creator=\"x\">"
          + "<wpt lat=\"1\" lon=\"2\"><name>&a;</name></wpt></gpx>";

  private final Path folder;
  private final List<Case> cases = new ArrayList<>();

  private HostileCases(Path folder) {
    this.folder = folder;
  }

  /**
   * All cases.
   *
   * @param folder folder for databases while they are made
   * @param seeds example files by reader
   */
  static List<Case> all(Path folder, Examples seeds) throws IOException, SQLException {
    HostileCases made = new HostileCases(folder);
    made.geoPackages();
    made.shapefiles(seeds);
    made.geoJson();
    made.csv();
    made.gpx();
    made.grids(seeds);
    made.texts();
    return made.cases;
  }

  private void add(HostileReader reader, String name, String text, String expected) {
    cases.add(new Case(reader, name, text.getBytes(UTF_8), expected));
  }

  private void add(HostileReader reader, String name, byte[] bytes, String expected) {
    cases.add(new Case(reader, name, bytes, expected));
  }

  private void geoPackages() throws SQLException, IOException {
    String contents = "INSERT INTO gpkg_contents VALUES ('v', 'features', 32617)";
    String column =
        "INSERT INTO gpkg_geometry_columns VALUES ('v', 'geom', 'GEOMETRY', 32617, 0, 0)";
    String rows = "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n";
    geoPackage(
        "a view with rows without end",
        "takes too long",
        contents,
        column,
        "CREATE VIEW v AS " + rows + ") SELECT i, NULL AS geom FROM n");
    geoPackage(
        "a view with a million rows",
        "more than the file has bytes",
        contents,
        column,
        "CREATE VIEW v AS " + rows + " LIMIT 1000000) SELECT i, NULL AS geom FROM n");
    geoPackage(
        "a view with a blob of a gigabyte",
        "too big",
        contents,
        column,
        "CREATE VIEW v AS SELECT 1 AS i, zeroblob(999999999) AS geom");
    geoPackage(
        "views that need each other",
        "circularly defined",
        contents,
        column,
        "CREATE VIEW w AS SELECT 1 AS i, NULL AS geom",
        "CREATE VIEW v AS SELECT * FROM w",
        "DROP VIEW w",
        "CREATE VIEW w AS SELECT * FROM v");
    geoPackage("a layer without its table", "does not exist", contents, column);
    geoPackage(
        "a view over the endless contents",
        "takes too long",
        column,
        "DROP TABLE gpkg_contents",
        "CREATE VIEW gpkg_contents AS "
            + rows
            + ") SELECT 'v' || i AS table_name, 'features' AS data_type, 1 AS srs_id FROM n");
    String wicked = "x\"; DROP TABLE gpkg_contents; --";
    String quoted = '"' + wicked.replace("\"", "\"\"") + '"';
    geoPackage(
        "names that are SQL",
        "",
        "INSERT INTO gpkg_contents VALUES ('" + wicked + "', 'features', 32617)",
        "INSERT INTO gpkg_geometry_columns VALUES ('"
            + wicked
            + "', '"
            + wicked
            + "', 'GEOMETRY', 32617, 0, 0)",
        "CREATE TABLE "
            + quoted
            + " (fid INTEGER PRIMARY KEY, "
            + quoted
            + " BLOB, \"a\"\"b'\" TEXT)");
    geoPackage(
        "a name with line breaks, control and direction characters",
        "is not readable|does not exist|has no",
        "INSERT INTO gpkg_contents VALUES ('a' || char(10, 27, 8238) || 'b', 'features', 32617)",
        "INSERT INTO gpkg_geometry_columns VALUES ('a' || char(10, 27, 8238) || 'b', 'g', 'GEOMETRY',"
            + " 32617, 0, 0)");
    geoPackage(
        "a trigger and a rewriting rule for reading",
        "",
        contents,
        column,
        "CREATE TABLE v (fid INTEGER PRIMARY KEY, geom BLOB)",
        "CREATE TRIGGER t AFTER INSERT ON v BEGIN DELETE FROM gpkg_contents; END");
    geometries("collections nested 5,000 deep", nestedCollections(5_000));
    geometries("a polygon of two thousand million rings", wkb(3, 0x7FFFFFFF));
    geometries("a line of four thousand million points", wkb(2, 0xFFFFFFFF));
    geometries("a geometry of a type that does not exist", wkb(77, 1));
  }

  private void geometries(String name, byte[] geometry) throws SQLException, IOException {
    add(
        HostileReader.GEOPACKAGE,
        name,
        geoPackageWith(
            geometry,
            "INSERT INTO gpkg_contents VALUES ('v', 'features', 32617)",
            "INSERT INTO gpkg_geometry_columns VALUES ('v', 'geom', 'GEOMETRY', 32617, 0, 0)",
            "CREATE TABLE v (fid INTEGER PRIMARY KEY, geom BLOB)"),
        "");
  }

  private void geoPackage(String name, String expected, String... statements)
      throws SQLException, IOException {
    add(HostileReader.GEOPACKAGE, name, geoPackageWith(null, statements), expected);
  }

  private byte[] geoPackageWith(byte[] geometry, String... statements)
      throws SQLException, IOException {
    Path file = folder.resolve("made.gpkg");
    Files.deleteIfExists(file);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA page_size = 512");
      statement.execute(
          "CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY,"
              + " organization TEXT, organization_coordsys_id INTEGER, definition TEXT)");
      statement.execute(
          "CREATE TABLE gpkg_contents (table_name TEXT, data_type TEXT, srs_id INTEGER)");
      statement.execute(
          "CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT,"
              + " geometry_type_name TEXT, srs_id INTEGER, z INTEGER, m INTEGER)");
      for (String sql : statements) {
        statement.execute(sql);
      }
      if (geometry != null) {
        try (PreparedStatement insert =
            connection.prepareStatement("INSERT INTO v (geom) VALUES (?)")) {
          insert.setBytes(1, geometry);
          insert.execute();
        }
      }
    }
    return Files.readAllBytes(file);
  }

  private static byte[] wkb(int type, int count) {
    return ByteBuffer.allocate(8 + 9 + 64)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(new byte[] {'G', 'P', 0, 1})
        .putInt(32617)
        .put((byte) 1)
        .putInt(type)
        .putInt(count)
        .array();
  }

  private static byte[] nestedCollections(int levels) {
    ByteBuffer nested = ByteBuffer.allocate(8 + 9 * levels).order(ByteOrder.LITTLE_ENDIAN);
    nested.put(new byte[] {'G', 'P', 0, 1}).putInt(32617);
    for (int i = 0; i < levels; i++) {
      nested.put((byte) 1).putInt(7).putInt(i == levels - 1 ? 0 : 1);
    }
    return nested.array();
  }

  private void shapefiles(Examples seeds) {
    List<byte[]> parts =
        HostileReader.parts(seeds.named(HostileReader.SHAPEFILE, "seed-areas-32617.parts"));
    byte[] index = parts.get(1);
    byte[] circular = index.clone();
    int headerBytes = 100;
    int largest = headerBytes;
    for (int record = headerBytes; record + 8 <= index.length; record += 8) {
      ByteBuffer entries = ByteBuffer.wrap(index);
      largest = entries.getInt(record + 4) > entries.getInt(largest + 4) ? record : largest;
    }
    for (int record = headerBytes; record + 8 <= index.length; record += 8) {
      System.arraycopy(index, largest, circular, record, 8);
    }
    add(
        HostileReader.SHAPEFILE,
        "an index that leads to one record again and again",
        HostileReader.joined(List.of(parts.get(0), circular, parts.get(2))),
        "more records than");
    byte[] table = parts.get(2).clone();
    ByteBuffer.wrap(table).order(ByteOrder.LITTLE_ENDIAN).putInt(4, 1_000_000_000);
    add(
        HostileReader.SHAPEFILE,
        "a table of a thousand million records",
        HostileReader.joined(List.of(parts.get(0), parts.get(1), table)),
        "cut short");
    byte[] shapes = parts.get(0).clone();
    ByteBuffer.wrap(shapes).order(ByteOrder.LITTLE_ENDIAN).putInt(108 + 40, Integer.MAX_VALUE);
    add(
        HostileReader.SHAPEFILE,
        "a shape of two thousand million points",
        HostileReader.joined(List.of(shapes, parts.get(1), parts.get(2))),
        "");
    byte[] deepPrj = "PROJCS[".repeat(10_000).getBytes(UTF_8);
    add(
        HostileReader.SHAPEFILE,
        "a reference system nested 10,000 deep",
        HostileReader.joined(List.of(parts.get(0), parts.get(1), parts.get(2), deepPrj)),
        "");
    add(
        HostileReader.SHAPEFILE,
        "a character set that is a path",
        HostileReader.joined(
            List.of(
                parts.get(0),
                parts.get(1),
                parts.get(2),
                new byte[0],
                "../../etc".getBytes(UTF_8))),
        "unknown character set");
  }

  private void geoJson() {
    add(HostileReader.GEOJSON, "lists nested 50,000 deep", "[".repeat(50_000), "no object|nesting");
    add(
        HostileReader.GEOJSON,
        "an object nested 50,000 deep",
        "{\"a\":".repeat(50_000),
        "nesting|nested");
    StringBuilder nested =
        new StringBuilder("{\"type\":\"Feature\",\"properties\":{},\"geometry\":");
    nested.append("{\"type\":\"GeometryCollection\",\"geometries\":[".repeat(400));
    nested.append("]}".repeat(400)).append('}');
    add(HostileReader.GEOJSON, "collections nested 400 deep", nested.toString(), "");
    add(
        HostileReader.GEOJSON,
        "a number with an exponent of nine digits",
        "{\"type\":\"Point\",\"coordinates\":[1e999999999,1e-999999999]}",
        "");
    add(
        HostileReader.GEOJSON,
        "a property with an exponent of nine digits",
        "{\"type\":\"Feature\",\"properties\":{\"width_m\":1e999999999,\"id\":1e-999999999},"
            + "\"geometry\":null}",
        "");
    add(
        HostileReader.GEOJSON,
        "a property that is a whole number of 900 digits",
        "{\"type\":\"Feature\",\"properties\":{\"width_m\":"
            + "9".repeat(900)
            + "},\"geometry\":null}",
        "");
    add(
        HostileReader.GEOJSON,
        "a number of 100,000 digits",
        "{\"type\":\"Point\",\"coordinates\":[" + "9".repeat(100_000) + ",1]}",
        "exceeds the maximum|Number");
    add(
        HostileReader.GEOJSON,
        "names and ids that move the cursor",
        "{\"type\":\"Feature\",\"id\":\"\\u001b[2J\\u202e\",\"properties\":{\"name\":\"a\\nb\\u001b]0;x\\u0007\","
            + "\"id\":\"\\u001b[31m\\n\"},\"geometry\":{\"type\":\"Point\",\"coordinates\":[]}}",
        "");
    add(
        HostileReader.GEOJSON,
        "a million properties in one kilobyte of them repeated",
        "{\"type\":\"Feature\",\"properties\":{"
            + "\"a\":1,".repeat(100_000)
            + "\"b\":1},\"geometry\":null}",
        "");
  }

  private void csv() {
    add(
        HostileReader.CSV,
        "well-known text nested 20,000 deep",
        "wkt\n\"" + "GEOMETRYCOLLECTION(".repeat(20_000) + "\"\n",
        "");
    add(
        HostileReader.CSV,
        "well-known text nested 200 deep and whole",
        "wkt\n\"" + "GEOMETRYCOLLECTION(".repeat(200) + "POINT (1 2)" + ")".repeat(200) + "\"\n",
        "");
    add(
        HostileReader.CSV,
        "a width of a million digits",
        "id,width_m,wkt\n1," + "9".repeat(1_000_000) + ",\"LINESTRING (0 0, 9 9)\"\n",
        "");
    add(
        HostileReader.CSV,
        "a width with an exponent of nine digits",
        "id,width_m,wkt\n1,1e999999999,\"LINESTRING (0 0, 9 9)\"\n2,1e-999999999,\"LINESTRING (0 0, 9 9)\"\n",
        "");
    add(HostileReader.CSV, "a name of 200,000 characters", longName(), "");
    add(
        HostileReader.CSV,
        "20,000 columns",
        ",x".repeat(1) + ",a".repeat(20_000) + "\n",
        "two columns|no column");
    add(
        HostileReader.CSV,
        "coordinates as large as numbers can be",
        "id,wkt\n1,\"POLYGON ((-1e308 -1e308, 1e308 -1e308, 1e308 1e308, -1e308 -1e308))\"\n"
            + "2,\"LINESTRING (-1e308 0, 1e308 1e-308)\"\n",
        "");
    add(
        HostileReader.CSV,
        "a quotation mark that is never closed",
        "id,wkt\n1,\"" + "a\n".repeat(50_000),
        "cannot be read on|quotation");
  }

  private static String longName() {
    return "id,name,wkt\n1,"
        + "n".repeat(200_000)
        + ",\"LINESTRING (500000 3000000, 500009 3000009)\"\n";
  }

  private void gpx() {
    StringBuilder entities = new StringBuilder("<!DOCTYPE gpx [<!ENTITY a0 \"ha\">");
    for (int level = 1; level < ENTITY_LEVELS; level++) {
      entities.append(
          "<!ENTITY a%d \"%s\">".formatted(level, "&a%d;".formatted(level - 1).repeat(10)));
    }
    entities.append("<!ENTITY a \"&a%d;\">]>".formatted(ENTITY_LEVELS - 1));
    add(HostileReader.GPX, "entities that swell", entities + GPX_REST, "DOCTYPE");
    add(
        HostileReader.GPX,
        "an entity from a file",
        "<!DOCTYPE gpx [<!ENTITY a SYSTEM \"file:///etc/passwd\">]>" + GPX_REST,
        "DOCTYPE");
    add(
        HostileReader.GPX,
        "a document type from elsewhere",
        "<!DOCTYPE gpx SYSTEM \"http://127.0.0.1:9/x.dtd\">" + GPX_REST.replace("&a;", "a"),
        "DOCTYPE");
    add(
        HostileReader.GPX,
        "a document type in another character set",
        ("\uFEFF<?xml version=\"1.0\" encoding=\"UTF-16\"?><!DOCTYPE gpx [<!ENTITY a SYSTEM \"file:///etc/passwd\">]>"
                + GPX_REST)
            .getBytes(java.nio.charset.StandardCharsets.UTF_16LE),
        "DOCTYPE|not of a known format|no valid");
    add(
        HostileReader.GPX,
        "an inclusion",
        GPX_REST.replace(
            "&a;",
            "<xi:include xmlns:xi=\"http://www.w3.org/2001/XInclude\" href=\"file:///etc/passwd\"/>"),
        "no valid GPX|no valid XML");
    add(
        HostileReader.GPX,
        "extensions nested 20,000 deep",
        GPX_REST
            .replace(
                "<wpt",
                "<extensions>" + "<a>".repeat(20_000) + "</a>".repeat(20_000) + "</extensions><wpt")
            .replace("&a;", "a"),
        "nested|no valid");
    add(
        HostileReader.GPX,
        "elements nested 20,000 deep",
        "<gpx version=\"1.1\">" + "<trk>".repeat(20_000),
        "nested");
    add(
        HostileReader.GPX,
        "a place that is no number",
        GPX_REST.replace("lat=\"1\"", "lat=\"NaN\"").replace("&a;", "a"),
        "");
    add(
        HostileReader.GPX,
        "an unknown character set",
        "<?xml version=\"1.0\" encoding=\"x-none\"?>" + GPX_REST,
        "unknown encoding");
  }

  private void grids(Examples seeds) throws IOException {
    String rest = "xllcorner 0\nyllcorner 0\ncellsize 1\nNODATA_value -9999\n1 2\n";
    add(
        HostileReader.ASCII_GRID,
        "four million million million cells",
        "ncols 2147483647\nnrows 2147483647\n" + rest,
        "more cells than");
    add(
        HostileReader.ASCII_GRID,
        "columns only",
        "ncols 1000000000\nnrows 1\n" + rest,
        "more cells than");
    add(HostileReader.ASCII_GRID, "no cells", "ncols 0\nnrows 0\n" + rest, "no cells");
    add(
        HostileReader.ASCII_GRID,
        "a number of columns below 0",
        "ncols -5\nnrows 2\n" + rest,
        "do not state");
    add(
        HostileReader.ASCII_GRID,
        "cells without a size",
        "ncols 2\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 0\n1 2\n",
        "cannot be read");
    add(
        HostileReader.ASCII_GRID,
        "cells of endless size",
        "ncols 2\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1e308\n1 2\n",
        "");
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
      gzip.write("ncols 2000\nnrows 2000\n".getBytes(UTF_8));
      gzip.write(new byte[10_000_000]);
    }
    add(
        HostileReader.ASCII_GRID,
        "a packed file of ten megabytes of nothing",
        packed.toByteArray(),
        "do not state");

    byte[] tiff = seeds.named(HostileReader.GEOTIFF, "seed-deflate.tif");
    add(
        HostileReader.GEOTIFF,
        "a picture far larger than the file",
        tag(tag(tiff, 256, 4, 1, 1_000_000), 257, 4, 1, 1_000_000),
        "cannot hold");
    add(
        HostileReader.GEOTIFF,
        "a tag of two thousand million values",
        tag(tiff, 33550, 12, 0x7FFFFFFF, 200),
        "beyond its end");
    add(
        HostileReader.GEOTIFF,
        "a strip that lies beyond the end",
        tag(tiff, 273, 4, 1, 0x7FFFFFF0),
        "beyond its end");
    add(
        HostileReader.GEOTIFF,
        "a strip of four gigabytes",
        tag(tiff, 279, 4, 1, 0xFFFFFFF0),
        "beyond its end");
    add(
        HostileReader.GEOTIFF,
        "a directory that is its own next one",
        nextDirectory(tiff),
        "circle");
    add(HostileReader.GEOTIFF, "a directory inside itself", tag(tiff, 339, 13, 1, 8), "circle");
    add(
        HostileReader.GEOTIFF,
        "a thousand samples of a thousand bits",
        tag(tag(tiff, 277, 3, 1, 65_535), 258, 3, 1, 65_535),
        "cannot hold");
    add(
        HostileReader.GEOTIFF,
        "a picture without cells",
        tag(tag(tiff, 256, 4, 1, 0), 257, 4, 1, 0),
        "no cells|cannot be read");
  }

  /** Overwrites a tag of a little-endian TIFF file, found by its number. */
  private static byte[] tag(byte[] tiff, int number, int type, int count, int value) {
    ByteBuffer copy = ByteBuffer.wrap(tiff.clone()).order(ByteOrder.LITTLE_ENDIAN);
    int tags = copy.getShort(8);
    for (int i = 0; i < tags; i++) {
      int at = 10 + 12 * i;
      if (Short.toUnsignedInt(copy.getShort(at)) == number) {
        if (type == 13) {
          copy.putShort(at, (short) 330);
        }
        copy.putShort(at + 2, (short) type).putInt(at + 4, count).putInt(at + 8, value);
        return copy.array();
      }
    }
    throw new IllegalArgumentException("no tag " + number);
  }

  private static byte[] nextDirectory(byte[] tiff) {
    ByteBuffer copy = ByteBuffer.wrap(tiff.clone()).order(ByteOrder.LITTLE_ENDIAN);
    return copy.putInt(10 + 12 * copy.getShort(8), 8).array();
  }

  private void texts() {
    add(
        HostileReader.SURVEY,
        "arrays nested 50,000 deep",
        "a = " + "[".repeat(50_000),
        "not TOML|nest");
    add(
        HostileReader.SURVEY,
        "tables nested 50,000 deep",
        "a = " + "{a = ".repeat(50_000),
        "not TOML|nest");
    add(
        HostileReader.SURVEY,
        "a key of 50,000 parts",
        "a" + ".a".repeat(50_000) + " = 1",
        "not TOML|nest|unknown key");
    add(
        HostileReader.SURVEY,
        "a header of 50,000 parts",
        "[a" + ".a".repeat(50_000) + "]\nb = 1",
        "not TOML|nest|unknown key");
    add(
        HostileReader.SURVEY,
        "a number with an exponent of nine digits",
        "[survey]\neffort_hours = 1e999999999\n",
        "above 0|not TOML|number");
    add(
        HostileReader.SURVEY,
        "a whole number of 100,000 digits",
        "[parameters]\nseed = " + "9".repeat(100_000),
        "not TOML|number|seed");
    add(HostileReader.SURVEY, "a survey of two megabytes", "#".repeat(2_000_000), "longer than");
    add(
        HostileReader.SURVEY,
        "a key that moves the cursor",
        "\"\\u001b[2J\\n\" = 1",
        "unknown key");
    add(
        HostileReader.SURVEY,
        "a file name with a null character",
        "[layers.scars]\nfile = \"a\\u0000b\"\n",
        "no path");
    add(HostileReader.CRS, "a text nested 40,000 deep", "PROJCS[".repeat(14_000), "not known");
    add(
        HostileReader.CRS,
        "a text of a megabyte",
        "PROJCS[\"" + "x".repeat(1_000_000) + "\"]",
        "not known");
    add(
        HostileReader.CRS,
        "a name that is SQL",
        "GEOGCS[\"x'; DROP SCHEMA PUBLIC CASCADE; --\",DATUM[\"d\",SPHEROID[\"s\",6378137,298]],PRIMEM[\"Greenwich\",0],UNIT[\"Degree\",0.0174532925199433]]",
        "");
    add(
        HostileReader.CRS,
        "an earth without size",
        "GEOGCS[\"x\",DATUM[\"d\",SPHEROID[\"s\",0,0]],PRIMEM[\"Greenwich\",0],UNIT[\"Degree\",0]]",
        "not known|");
    add(
        HostileReader.CRS,
        "a place on the network",
        "http://127.0.0.1:9/def/crs/EPSG/0/4326",
        "not known");
    add(HostileReader.CRS, "a file", "file:///etc/passwd", "not known");
    add(
        HostileReader.MARKERS,
        "a position that is empty, and a date beyond all",
        "wkt,date\nPOINT EMPTY,2025-09-01\n\"POINT (1 2)\",9999-99-99\n",
        "");
    add(
        HostileReader.MARKERS,
        "positions that are no numbers",
        "x,y,date\nNaN,1,2025-09-01\n1e308,-1e308,2025-09-01\nInfinity,0,2025-09-01\n",
        "");
    add(
        HostileReader.MARKERS,
        "markers as whole areas and nested collections",
        "wkt,date\n\"GEOMETRYCOLLECTION (GEOMETRYCOLLECTION EMPTY)\",2025-09-01\n\"POLYGON ((0 0, 1 0, 1 1, 0 0))\",2025-09-01\n",
        "");
    add(
        HostileReader.DEPTH_POINTS,
        "depths that are no depths",
        "x,y,depth_m\n500010,3000010,1e308\n500020,3000010,NaN\n500030,3000010,"
            + "9".repeat(100_000)
            + "\n",
        "");
    add(
        HostileReader.TABLES,
        "a row of 100,000 cells",
        "key,scientific_name,common_name,source\n" + "a,".repeat(100_000) + "\n",
        "values");
    add(
        HostileReader.TABLES,
        "bytes that are no text",
        new byte[] {(byte) 0xC3, 0x28},
        "not UTF-8");
  }

  static UncheckedIOException unchecked(IOException e) {
    return new UncheckedIOException(e);
  }
}
