package org.meadowmark.core.write;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequences;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiLineString;
import org.locationtech.jts.geom.MultiPoint;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/** Streams non-empty geometries as GeoJSON, with the ring order that RFC 7946 demands. */
final class GeoJsonGeometry {
  private static final int DECIMALS = 9;

  private final JsonGenerator json;

  GeoJsonGeometry(JsonGenerator json) {
    this.json = json;
  }

  void write(Geometry geometry) throws IOException {
    boolean plainCollection =
        geometry instanceof GeometryCollection
            && !(geometry instanceof MultiPoint)
            && !(geometry instanceof MultiLineString)
            && !(geometry instanceof MultiPolygon);
    json.writeStartObject();
    json.writeStringField(
        "type", geometry instanceof LinearRing ? "LineString" : geometry.getGeometryType());
    json.writeFieldName(plainCollection ? "geometries" : "coordinates");
    if (plainCollection) {
      json.writeStartArray();
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        if (!geometry.getGeometryN(i).isEmpty()) {
          write(geometry.getGeometryN(i));
        }
      }
      json.writeEndArray();
    } else {
      writeCoordinates(geometry);
    }
    json.writeEndObject();
  }

  private void writeCoordinates(Geometry geometry) throws IOException {
    if (geometry instanceof Point point) {
      writePosition(point.getCoordinate());
    } else if (geometry instanceof LineString line) {
      writePositions(line.getCoordinateSequence());
    } else if (geometry instanceof Polygon polygon) {
      json.writeStartArray();
      writeRing(polygon.getExteriorRing(), true);
      for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
        writeRing(polygon.getInteriorRingN(i), false);
      }
      json.writeEndArray();
    } else {
      json.writeStartArray();
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        if (!geometry.getGeometryN(i).isEmpty()) {
          writeCoordinates(geometry.getGeometryN(i));
        }
      }
      json.writeEndArray();
    }
  }

  private void writeRing(LinearRing ring, boolean anticlockwise) throws IOException {
    CoordinateSequence positions = ring.getCoordinateSequence();
    if (Orientation.isCCW(positions) != anticlockwise) {
      positions = positions.copy();
      CoordinateSequences.reverse(positions);
    }
    writePositions(positions);
  }

  private void writePositions(CoordinateSequence positions) throws IOException {
    json.writeStartArray();
    for (int i = 0; i < positions.size(); i++) {
      writePosition(positions.getCoordinate(i));
    }
    json.writeEndArray();
  }

  private void writePosition(Coordinate position) throws IOException {
    boolean lonLat = Math.abs(position.x) <= 180 && Math.abs(position.y) <= 90;
    if (!lonLat) {
      throw new IllegalArgumentException(
          position + " is not a longitude and latitude; transform to WGS 84 first");
    }
    json.writeStartArray();
    json.writeNumber(rounded(position.x));
    json.writeNumber(rounded(position.y));
    json.writeEndArray();
  }

  private static String rounded(double degrees) {
    BigDecimal shortest = BigDecimal.valueOf(degrees).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return shortest.signum() == 0 ? "0" : shortest.stripTrailingZeros().toPlainString();
  }
}
