package org.meadowmark.cluster.assign;

import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.geometry.jts.JTS;
import org.geotools.referencing.CRS;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.meadowmark.cluster.geoparquet.GeoParquetLayer;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.read.LayerProblems;

/** Geometries of layers to find places with; nothing is measured in them. */
final class LayerShapes {
  private static final CrsCatalog CATALOG = new CrsCatalog();
  private static final ConcurrentHashMap<String, MathTransform> TRANSFORMS =
      new ConcurrentHashMap<>();

  private LayerShapes() {}

  /** The geometry of a row, mended; empty where it is missing, empty or cannot be read. */
  static Optional<Geometry> shape(byte[] wellKnownBinary) {
    if (wellKnownBinary == null) {
      return Optional.empty();
    }
    try {
      Geometry read = new WKBReader().read(wellKnownBinary);
      Geometry shape = read.isValid() ? read : GeometryFixer.fix(read);
      return shape.isEmpty() ? Optional.empty() : Optional.of(shape);
    } catch (ParseException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  /** The reference system of a layer by its code: that of the survey file, else of the layer. */
  static String crs(GeoParquetLayer layer) {
    return layer
        .source()
        .crs()
        .or(() -> layer.crs().map(CrsText::label))
        .orElseThrow(
            () ->
                new LayerProblems(layer.source(), layer.name())
                    .refused(
                        "does not say what coordinate reference system it is in",
                        "state it with crs = \"EPSG:n\" for the layer in the survey file"));
  }

  /** A geometry in another reference system, easting or longitude first. */
  static Geometry in(Geometry geometry, String from, String to) {
    if (from.equals(to)) {
      return geometry;
    }
    MathTransform transform =
        TRANSFORMS.computeIfAbsent(
            from + " " + to,
            key -> {
              try {
                return CRS.findMathTransform(system(from), system(to), true);
              } catch (FactoryException e) {
                throw new IllegalStateException("no way from " + from + " to " + to, e);
              }
            });
    try {
      return JTS.transform(geometry, transform);
    } catch (TransformException e) {
      throw new IllegalStateException("not in reach of both " + from + " and " + to, e);
    }
  }

  private static CoordinateReferenceSystem system(String code) {
    return CATALOG
        .resolve(CrsText.ofCode(code), LayerRole.BEDS, FeatureRef.layer("bays", ""))
        .crs();
  }
}
