package org.meadowmark.core.write.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;

/**
 * What the script of the page works with, as JSON that may stand inside a script element: no
 * character of it can end the element, open a comment or end a line of script.
 */
final class ReportData {
  private ReportData() {}

  /**
   * The data.
   *
   * @param map the map
   * @param phrases words of the script by key
   */
  static String json(ReportMap map, Map<String, String> phrases) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = JsonFactory.builder().build().createGenerator(text)) {
      json.setCharacterEscapes(new ScriptEscapes());
      json.writeStartObject();
      json.writeStringField("grid", map.gridLabel());
      json.writeNumberField("unit", GeometryCode.UNIT_METRES);
      numbers(json, "origin", map.origin().x, map.origin().y);
      Envelope extent = map.extent();
      numbers(
          json, "extent", extent.getMinX(), extent.getMinY(), extent.getMaxX(), extent.getMaxY());
      writeFit(json, map.fit());
      json.writeArrayFieldStart("layers");
      for (int i = 0; i < map.layers().size(); i++) {
        writeLayer(json, map.layers().get(i), map.codes().get(i));
      }
      json.writeEndArray();
      json.writeObjectFieldStart("text");
      for (Map.Entry<String, String> phrase : phrases.entrySet()) {
        json.writeStringField(phrase.getKey(), phrase.getValue());
      }
      json.writeEndObject();
      json.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  private static void numbers(JsonGenerator json, String name, double... values)
      throws IOException {
    json.writeArrayFieldStart(name);
    for (double value : values) {
      json.writeNumber(value);
    }
    json.writeEndArray();
  }

  private static void writeFit(JsonGenerator json, GridFit fit) throws IOException {
    json.writeObjectFieldStart("fit");
    json.writeNumberField("nodes", fit.nodes());
    Envelope area = fit.area();
    numbers(json, "area", area.getMinX(), area.getMinY(), area.getMaxX(), area.getMaxY());
    numbers(json, "latitudes", fit.latitudes());
    numbers(json, "longitudes", fit.longitudes());
    numbers(json, "factors", fit.factors());
    json.writeEndObject();
  }

  private static void writeLayer(JsonGenerator json, MapLayer layer, GeometryCode code)
      throws IOException {
    json.writeStartObject();
    json.writeStringField("key", layer.key());
    json.writeStringField("form", layer.form().name());
    json.writeBooleanField("shown", layer.shown());
    json.writeNumberField("count", layer.geometries().size());
    json.writeArrayFieldStart("classes");
    for (int place = 0; place < layer.classes().size(); place++) {
      json.writeStartObject();
      json.writeStringField("label", layer.classes().get(place).label());
      json.writeStringField("style", layer.classes().get(place).style());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeArrayFieldStart("classOf");
    if (layer.classes().size() > 1) {
      for (int place : layer.classOf()) {
        json.writeNumber(place);
      }
    }
    json.writeEndArray();
    json.writeArrayFieldStart("columns");
    for (ReportColumn column : layer.columns()) {
      writeColumn(json, column);
    }
    json.writeEndArray();
    json.writeStringField("geometry", code.base64());
    json.writeEndObject();
  }

  private static void writeColumn(JsonGenerator json, ReportColumn column) throws IOException {
    json.writeStartObject();
    json.writeStringField("label", column.label());
    json.writeStringField("unit", column.unit());
    json.writeStringField("kind", column.kind().name());
    Map<String, Integer> words = words(column);
    if (!words.isEmpty()) {
      json.writeArrayFieldStart("words");
      for (String word : words.keySet()) {
        json.writeString(word);
      }
      json.writeEndArray();
    }
    json.writeArrayFieldStart("values");
    for (Object value : column.values()) {
      if (value == null) {
        json.writeNull();
      } else if (value instanceof String text) {
        if (words.isEmpty()) {
          json.writeString(text);
        } else {
          json.writeNumber(words.get(text));
        }
      } else if (value instanceof Double number) {
        json.writeNumber(plain(number));
      } else {
        json.writeNumber(((Number) value).longValue());
      }
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private static BigDecimal plain(double value) {
    BigDecimal plain = BigDecimal.valueOf(value).stripTrailingZeros();
    return plain.scale() < 0 ? plain.setScale(0) : plain;
  }

  /** Words of a column by place, where they repeat enough to be written once; else empty. */
  private static Map<String, Integer> words(ReportColumn column) {
    Map<String, Integer> words = new LinkedHashMap<>();
    if (column.isNumeric()) {
      return words;
    }
    for (Object value : column.values()) {
      if (value != null) {
        words.putIfAbsent((String) value, words.size());
      }
    }
    return 2 * words.size() > column.values().size() ? Map.of() : words;
  }

  /** Escapes what has a meaning in HTML, and line ends that only JavaScript knows. */
  private static final class ScriptEscapes extends CharacterEscapes {
    private static final long serialVersionUID = 1;

    private static final char LINE_SEPARATOR = '\u2028';
    private static final char PARAGRAPH_SEPARATOR = '\u2029';

    @Override
    public int[] getEscapeCodesForAscii() {
      int[] codes = standardAsciiEscapesForJSON();
      codes['<'] = ESCAPE_STANDARD;
      codes['>'] = ESCAPE_STANDARD;
      codes['&'] = ESCAPE_STANDARD;
      return codes;
    }

    @Override
    public SerializableString getEscapeSequence(int character) {
      return character == LINE_SEPARATOR || character == PARAGRAPH_SEPARATOR
          ? new SerializedString(character == LINE_SEPARATOR ? "\\u2028" : "\\u2029")
          : null;
    }
  }
}
