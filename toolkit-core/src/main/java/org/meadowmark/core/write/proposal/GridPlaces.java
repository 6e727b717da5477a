package org.meadowmark.core.write.proposal;

import java.util.Optional;
import net.sf.geographiclib.Geodesic;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.cs.DefaultEllipsoidalCS;

/**
 * Where points of the analysis grid are on Earth: degrees on the datum of the grid itself, so that
 * no shift between datums adds an error.
 */
public final class GridPlaces {
  private static final double STEP_METRES = 100;

  private final MathTransform toDegrees;
  private final String datum;

  /**
   * A place in degrees, north and east positive.
   *
   * @param latitude degrees north of the equator, on the datum of the grid
   * @param longitude degrees east of the prime meridian of that datum
   */
  public record Degrees(double latitude, double longitude) {}

  private GridPlaces(MathTransform toDegrees, String datum) {
    this.toDegrees = toDegrees;
    this.datum = datum;
  }

  /**
   * The places of a grid.
   *
   * @param wkt well-known text of a projected system in metres
   * @return empty where the text names no such system, as for an invented grid
   */
  public static Optional<GridPlaces> of(String wkt) {
    if (wkt.isBlank()) {
      return Optional.empty();
    }
    try {
      CoordinateReferenceSystem crs = CRS.parseWKT(wkt);
      if (!(crs instanceof ProjectedCRS projected)) {
        return Optional.empty();
      }
      DefaultGeographicCRS degrees =
          new DefaultGeographicCRS(
              projected.getBaseCRS().getDatum(), DefaultEllipsoidalCS.GEODETIC_2D);
      return Optional.of(
          new GridPlaces(
              CRS.findMathTransform(projected, degrees, true),
              projected.getBaseCRS().getName().getCode()));
    } catch (FactoryException e) {
      return Optional.empty();
    }
  }

  /** {@return name of the geographic system that degrees are in} */
  public String datum() {
    return datum;
  }

  /**
   * {@return a point of the grid in degrees}
   *
   * @param x easting in metres
   * @param y northing in metres
   * @throws IllegalStateException if the projection has no place for the point
   */
  public Degrees at(double x, double y) {
    double[] point = {x, y};
    try {
      toDegrees.transform(point, 0, point, 0, 1);
    } catch (TransformException e) {
      throw new IllegalStateException("the grid does not reach " + x + " " + y, e);
    }
    return new Degrees(point[1], point[0]);
  }

  /**
   * True bearing of grid north at a point, in degrees, positive where grid north lies east of true
   * north: the azimuth of the geodesic along 100 m of a grid line (Karney 2013, <i>Algorithms for
   * geodesics</i>, Journal of Geodesy 87:43–55; on the WGS 84 ellipsoid, whose difference from
   * others does not show in an angle).
   */
  double gridNorthBearing(double x, double y) {
    Degrees from = at(x, y);
    Degrees to = at(x, y + STEP_METRES);
    return Geodesic.WGS84.Inverse(from.latitude(), from.longitude(), to.latitude(), to.longitude())
        .azi1;
  }
}
