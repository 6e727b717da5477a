package org.meadowmark.core.project;

import org.geotools.api.metadata.extent.GeographicBoundingBox;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.CRS;

/**
 * Where a reference system can be used: its area of use, widened on each side by half its own width
 * but by 1° at least. Systems without a stated area, and those across the 180° meridian, reach
 * everywhere.
 */
record GeographicDomain(double west, double south, double east, double north) {
  private static final GeographicDomain EVERYWHERE = new GeographicDomain(-360, -90, 360, 90);
  private static final double LEAST_MARGIN_DEGREES = 1;

  static GeographicDomain of(CoordinateReferenceSystem crs) {
    GeographicBoundingBox box = CRS.getGeographicBoundingBox(crs);
    if (box == null || box.getWestBoundLongitude() >= box.getEastBoundLongitude()) {
      return EVERYWHERE;
    }
    double width = box.getEastBoundLongitude() - box.getWestBoundLongitude();
    double height = box.getNorthBoundLatitude() - box.getSouthBoundLatitude();
    double besides = Math.max(LEAST_MARGIN_DEGREES, width / 2);
    double beyond = Math.max(LEAST_MARGIN_DEGREES, height / 2);
    return new GeographicDomain(
        box.getWestBoundLongitude() - besides,
        box.getSouthBoundLatitude() - beyond,
        box.getEastBoundLongitude() + besides,
        box.getNorthBoundLatitude() + beyond);
  }

  /** Whether a place lies in it; longitudes a full turn apart are the same place. */
  boolean contains(double longitude, double latitude) {
    if (!(latitude >= south && latitude <= north)) {
      return false;
    }
    return within(longitude) || within(longitude - 360) || within(longitude + 360);
  }

  private boolean within(double longitude) {
    return longitude >= west && longitude <= east;
  }
}
