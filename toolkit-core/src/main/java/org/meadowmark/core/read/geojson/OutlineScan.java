package org.meadowmark.core.read.geojson;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.read.CrsNames;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.geojson.GeoJsonOutline.Root;

/**
 * First pass over a GeoJSON file: finds its type, reference system and property names, and that it
 * is whole. Geometries are passed over, so memory does not grow with the file.
 */
final class OutlineScan {
  private static final Set<String> GEOMETRY_TYPES =
      Set.of(
          "Point",
          "MultiPoint",
          "LineString",
          "MultiLineString",
          "Polygon",
          "MultiPolygon",
          "GeometryCollection");

  private final JsonParser json;
  private final LayerProblems problems;
  private final Set<String> attributeNames = new LinkedHashSet<>();
  private String type;
  private String name;
  private Optional<CrsText> crs = Optional.of(CrsNames.WGS_84);
  private String unknownCrs;
  private boolean featuresMet;
  private long featureCount;
  private String lastId;

  OutlineScan(JsonParser json, LayerProblems problems) {
    this.json = json;
    this.problems = problems;
  }

  GeoJsonOutline scan() throws IOException {
    try {
      if (json.nextToken() != JsonToken.START_OBJECT) {
        throw notGeoJson("its outermost value is no object");
      }
      scanRoot();
      if (json.nextToken() != null) {
        throw notGeoJson("text follows its end");
      }
    } catch (JsonEOFException e) {
      throw problems.refused("ends too early: " + whereStopped(), "get a whole copy", e);
    } catch (JsonProcessingException e) {
      throw problems.refused(
          "is no valid JSON%s (%s): %s"
              .formatted(
                  place(e.getLocation()),
                  LayerProblems.oneLine(e.getOriginalMessage()),
                  whereStopped()),
          "get a whole copy, or write the file anew with a GIS",
          e);
    }
    Root root = root();
    return new GeoJsonOutline(
        root,
        Optional.ofNullable(name),
        new ArrayList<>(attributeNames),
        crs,
        Optional.ofNullable(unknownCrs),
        root == Root.FEATURE_COLLECTION ? featureCount : 1);
  }

  private static String place(JsonLocation location) {
    return location == null
        ? ""
        : " at line %d, column %d".formatted(location.getLineNr(), location.getColumnNr());
  }

  private RuntimeException notGeoJson(String problem) {
    return problems.refused("is no GeoJSON: " + problem, "give a GeoJSON file");
  }

  private Root root() {
    if (type == null) {
      throw notGeoJson("its outermost object has no type");
    }
    if (type.equals("FeatureCollection")) {
      if (!featuresMet) {
        throw notGeoJson("its feature collection has no features member");
      }
      return Root.FEATURE_COLLECTION;
    }
    if (type.equals("Feature")) {
      return Root.FEATURE;
    }
    if (GEOMETRY_TYPES.contains(type)) {
      attributeNames.clear();
      return Root.GEOMETRY;
    }
    throw notGeoJson("its type is '" + LayerProblems.oneLine(type) + "'");
  }

  private String whereStopped() {
    if (featureCount == 0) {
      return "no feature is whole";
    }
    String id = lastId == null ? "" : " (id " + LayerProblems.oneLine(lastId) + ")";
    return "feature " + featureCount + id + " is the last whole one";
  }

  private void scanRoot() throws IOException {
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String member = json.currentName();
      JsonToken value = json.nextToken();
      switch (member) {
        case "type" -> type = json.getValueAsString();
        case "name" -> name = value == JsonToken.VALUE_STRING ? json.getText() : null;
        case "crs" -> scanCrs();
        case "properties" -> scanProperties();
        case "features" -> scanFeatures();
        default -> json.skipChildren();
      }
    }
  }

  private void scanFeatures() throws IOException {
    if (json.currentToken() != JsonToken.START_ARRAY) {
      throw notGeoJson("its features member is no array");
    }
    featuresMet = true;
    while (json.nextToken() != JsonToken.END_ARRAY) {
      String id = null;
      if (json.currentToken() == JsonToken.START_OBJECT) {
        while (json.nextToken() == JsonToken.FIELD_NAME) {
          String member = json.currentName();
          json.nextToken();
          if (member.equals("properties")) {
            scanProperties();
          } else if (member.equals("id")) {
            id = json.getValueAsString();
          }
          json.skipChildren();
        }
      } else {
        json.skipChildren();
      }
      featureCount++;
      lastId = id;
    }
  }

  private void scanProperties() throws IOException {
    if (json.currentToken() != JsonToken.START_OBJECT) {
      json.skipChildren();
      return;
    }
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      attributeNames.add(json.currentName());
      json.nextToken();
      json.skipChildren();
    }
  }

  /** The member of GeoJSON before RFC 7946: a name, or null for "not known". */
  private void scanCrs() throws IOException {
    JsonNode member = json.readValueAsTree();
    if (member.isNull()) {
      crs = Optional.empty();
      return;
    }
    crs = CrsNames.parse(member.at("/properties/name").asText());
    if (crs.isEmpty()) {
      unknownCrs = LayerProblems.oneLine(member.toString());
    }
  }
}
