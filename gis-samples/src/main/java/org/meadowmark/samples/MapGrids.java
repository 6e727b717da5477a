package org.meadowmark.samples;

import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.geometry.jts.JTS;
import org.geotools.metadata.iso.citation.Citations;
import org.geotools.referencing.CRS;
import org.geotools.referencing.wkt.Formattable;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.MeadowmarkException;

/** A reference system in the forms that files want it in. */
final class MapGrids {
  static final String LONGITUDE_LATITUDE = "EPSG:4326";

  private final String code;
  private final CoordinateReferenceSystem grid;
  private final CoordinateReferenceSystem degrees;
  private final MathTransform toDegrees;

  MapGrids(String code) {
    try {
      this.code = code;
      grid = CRS.decode(code, true);
      degrees = CRS.decode(LONGITUDE_LATITUDE, true);
      toDegrees = CRS.findMathTransform(grid, degrees, true);
    } catch (FactoryException e) {
      throw new MeadowmarkException(
          "reference system " + code + " is not known; give an EPSG code of a metric grid", e);
    }
  }

  String code() {
    return code;
  }

  String wkt() {
    return ((Formattable) grid).toWKT(Citations.OGC, 0);
  }

  String degreesWkt() {
    return ((Formattable) degrees).toWKT(Citations.OGC, 0);
  }

  /** Longitude first. */
  Geometry toDegrees(Geometry onGrid) {
    try {
      return JTS.transform(onGrid, toDegrees);
    } catch (TransformException e) {
      throw new MeadowmarkException(
          "a coordinate cannot be brought from "
              + code
              + " to longitude and latitude; check that it lies in the system's area",
          e);
    }
  }
}
