package org.meadowmark.core.write;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * Writes a result table as a GeoJSON feature collection, one feature a line.
 *
 * <p>Coordinates are longitude and latitude on WGS 84, in degrees rounded to nine decimals (about a
 * tenth of a millimetre); outer rings run anticlockwise, holes clockwise. An empty geometry is
 * {@code null}.
 *
 * <p>Source: RFC 7946, <i>The GeoJSON Format</i> (2016).
 */
public final class GeoJsonTableWriter {
  private static final JsonFactory JSON =
      JsonFactory.builder().enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER).build();

  private GeoJsonTableWriter() {}

  /**
   * Writes a file.
   *
   * @param file where to; its folder must exist
   * @param overwrite whether an existing file is replaced
   * @param table the table, its geometries already longitude and latitude on WGS 84
   * @throws org.meadowmark.core.model.MeadowmarkException if the file exists and {@code overwrite}
   *     is false, or cannot be written
   * @throws IllegalArgumentException if the table breaks its own description or a coordinate is not
   *     a longitude and latitude
   */
  public static void write(Path file, boolean overwrite, ResultTable table) {
    TableRules.checkNames(table);
    AtomicFile.write(file, overwrite, temporary -> writeNew(temporary, table));
  }

  private static void writeNew(Path file, ResultTable table) throws IOException {
    try (OutputStream stream =
            new BufferedOutputStream(Files.newOutputStream(file, StandardOpenOption.CREATE_NEW));
        JsonGenerator json = JSON.createGenerator(stream, JsonEncoding.UTF8)) {
      json.writeStartObject();
      json.writeStringField("type", "FeatureCollection");
      json.writeStringField("name", table.name());
      json.writeArrayFieldStart("features");
      GeoJsonGeometry geometries = new GeoJsonGeometry(json);
      for (ResultTable.Row row : table.rows()) {
        json.writeRaw("\n");
        writeFeature(json, geometries, table, row);
      }
      json.writeRaw("\n");
      json.writeEndArray();
      json.writeEndObject();
      json.writeRaw("\n");
    }
  }

  private static void writeFeature(
      JsonGenerator json, GeoJsonGeometry geometries, ResultTable table, ResultTable.Row row)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("type", "Feature");
    json.writeObjectFieldStart("properties");
    List<Object> values = TableRules.values(table, row);
    for (int i = 0; i < values.size(); i++) {
      json.writeFieldName(table.columns().get(i).name());
      writeValue(json, values.get(i));
    }
    json.writeEndObject();
    json.writeFieldName("geometry");
    Geometry geometry = TableRules.geometry(table, row).orElse(null);
    if (geometry == null || geometry.isEmpty()) {
      json.writeNull();
    } else {
      geometries.write(geometry);
    }
    json.writeEndObject();
  }

  private static void writeValue(JsonGenerator json, Object value) throws IOException {
    if (value == null) {
      json.writeNull();
    } else if (value instanceof Double number) {
      json.writeNumber(number);
    } else if (value instanceof Boolean truth) {
      json.writeBoolean(truth);
    } else if (value instanceof Number number) {
      json.writeNumber(number.longValue());
    } else {
      json.writeString(value.toString());
    }
  }
}
