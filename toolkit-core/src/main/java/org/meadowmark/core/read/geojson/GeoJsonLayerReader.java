package org.meadowmark.core.read.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.geojson.GeoJsonReader;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.read.DateText;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.LayerReader;
import org.meadowmark.core.read.Nesting;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.survey.LayerSource;

/**
 * Reads GeoJSON: a feature collection, a feature, or a bare geometry.
 *
 * <p>The file is passed over twice: first to see that it is whole and what its properties are, then
 * feature by feature. The id of a feature is its id member, else its place in the file from 1. A
 * property that is a list or an object is read as its JSON text; a text such as {@code 2024-06-30}
 * as a date.
 *
 * <p>Source: RFC 7946, <i>The GeoJSON Format</i> (2016), and for the {@code crs} member <i>The
 * GeoJSON Format Specification</i> (2008).
 */
public final class GeoJsonLayerReader implements LayerReader {
  // A number that is not finite spoils one feature, not the file.
  private static final ObjectMapper JSON =
      JsonMapper.builder().enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS).build();

  @Override
  public void read(LayerSource source, FeatureSink sink) {
    LayerProblems problems = LayerProblems.ofFile(source);
    try {
      GeoJsonOutline outline;
      try (JsonParser json = JSON.createParser(source.file().toFile())) {
        outline = new OutlineScan(json, problems).scan();
      }
      Set<String> names = new LinkedHashSet<>(Set.of(problems.layer()));
      outline.name().ifPresent(names::add);
      problems.refuseOtherLayer(names);
      sendHeader(outline, problems, sink);
      try (JsonParser json = JSON.createParser(source.file().toFile())) {
        sendFeatures(json, outline, problems, sink);
      }
    } catch (JsonProcessingException e) {
      throw problems.refused(
          "is no valid JSON (" + LayerProblems.oneLine(e.getOriginalMessage()) + ")",
          "write the file anew with a GIS",
          e);
    } catch (IOException e) {
      throw problems.unreadable(e);
    }
  }

  private static void sendHeader(GeoJsonOutline outline, LayerProblems problems, FeatureSink sink) {
    sink.header(
        new LayerHeader(
            problems.layer(), outline.attributeNames(), outline.crs(), outline.featureCount()));
    outline
        .unknownCrs()
        .ifPresent(
            member ->
                sink.finding(
                    problems.remark(
                        FindingCode.CRS_UNKNOWN,
                        Level.WARNING,
                        "",
                        "its crs member is not understood: " + member,
                        "give the reference system of the layer")));
  }

  private static void sendFeatures(
      JsonParser json, GeoJsonOutline outline, LayerProblems problems, FeatureSink sink)
      throws IOException {
    json.nextToken();
    switch (outline.root()) {
      case GEOMETRY -> send(null, JSON.readTree(json), 1, problems, sink);
      case FEATURE -> sendFeature(JSON.readTree(json), 1, problems, sink);
      case FEATURE_COLLECTION -> {
        while (json.nextToken() == JsonToken.FIELD_NAME) {
          boolean features = json.currentName().equals("features");
          json.nextToken();
          if (features) {
            long position = 0;
            while (json.nextToken() != JsonToken.END_ARRAY) {
              position++;
              sendFeature(JSON.readTree(json), position, problems, sink);
            }
          } else {
            json.skipChildren();
          }
        }
      }
    }
  }

  private static void sendFeature(
      JsonNode feature, long position, LayerProblems problems, FeatureSink sink) {
    if (!feature.path("type").asText().equals("Feature")) {
      sink.finding(
          problems.skipped(
              Long.toString(position),
              FindingCode.UNREADABLE_FEATURE,
              "it is no object of type Feature"));
      return;
    }
    send(feature, feature.path("geometry"), position, problems, sink);
  }

  private static void send(
      JsonNode feature,
      JsonNode geometryNode,
      long position,
      LayerProblems problems,
      FeatureSink sink) {
    String id =
        feature != null && feature.path("id").isValueNode() && !feature.path("id").isNull()
            ? LayerProblems.oneLine(feature.path("id").asText())
            : Long.toString(position);
    Optional<Geometry> geometry = Optional.empty();
    if (!geometryNode.isNull() && !geometryNode.isMissingNode()) {
      if (isDeeper(geometryNode, 2 * Nesting.DEEPEST)) {
        sink.finding(
            problems.skipped(
                id,
                FindingCode.UNREADABLE_FEATURE,
                "its geometry cannot be read (" + Nesting.TOO_DEEP + ")"));
        return;
      }
      if (hasNonFinite(geometryNode)) {
        sink.finding(
            problems.skipped(
                id, FindingCode.NON_FINITE_COORDINATE, "a coordinate is not a finite number"));
        return;
      }
      try {
        geometry = Optional.of(geometry(geometryNode));
      } catch (ParseException e) {
        sink.finding(
            problems.skipped(
                id,
                FindingCode.UNREADABLE_FEATURE,
                "its geometry cannot be read (" + LayerProblems.detail(e) + ")"));
        return;
      }
    }
    sink.feature(new SourceFeature(problems.ref(id), geometry, attributes(feature)));
  }

  /** A level of a collection is two of JSON: the object and its list. */
  private static boolean isDeeper(JsonNode node, int deepest) {
    if (!node.isContainerNode()) {
      return false;
    }
    if (deepest == 0) {
      return true;
    }
    for (JsonNode child : node) {
      if (isDeeper(child, deepest - 1)) {
        return true;
      }
    }
    return false;
  }

  private static boolean hasNonFinite(JsonNode node) {
    if (node.isContainerNode()) {
      for (JsonNode child : node) {
        if (hasNonFinite(child)) {
          return true;
        }
      }
      return false;
    }
    return node.isNumber() && !Double.isFinite(node.doubleValue());
  }

  private static Geometry geometry(JsonNode node) throws ParseException {
    // The library takes a geometry without coordinates for an empty one.
    if (!node.path("coordinates").isArray() && !node.path("geometries").isArray()) {
      throw new ParseException("it has no coordinates");
    }
    try {
      Geometry geometry = new GeoJsonReader(new GeometryFactory()).read(node.toString());
      if (geometry == null) {
        throw new ParseException("no known type");
      }
      return geometry;
    } catch (IllegalArgumentException e) {
      throw new ParseException(LayerProblems.detail(e));
    } catch (RuntimeException e) {
      throw new ParseException("its coordinates are not nested as its type demands");
    }
  }

  private static Map<String, Object> attributes(JsonNode feature) {
    Map<String, Object> values = new HashMap<>();
    if (feature != null && feature.path("properties").isObject()) {
      feature
          .path("properties")
          .properties()
          .forEach(
              property -> {
                Object value = value(property.getValue());
                if (value != null) {
                  values.put(property.getKey(), value);
                }
              });
    }
    return values;
  }

  private static Object value(JsonNode node) {
    if (node.isNull()) {
      return null;
    }
    if (node.isBoolean()) {
      return node.booleanValue();
    }
    if (node.isNumber()) {
      if (node.isIntegralNumber() && node.canConvertToLong()) {
        return node.longValue();
      }
      return Double.isFinite(node.doubleValue()) ? node.doubleValue() : null;
    }
    if (node.isTextual()) {
      return DateText.date(node.textValue()).<Object>map(date -> date).orElse(node.textValue());
    }
    return node.toString();
  }
}
