package org.meadowmark.core.project;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.datum.Ellipsoid;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.cs.DefaultEllipsoidalCS;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.TrueNorth;
import si.uom.SI;

/**
 * Grid convergence of any projected system: a short grid line due grid north is projected back to
 * latitude and longitude, and its true bearing at its middle is that of the geodesic there (Karney
 * 2013, <i>Algorithms for geodesics</i>, Journal of Geodesy 87:43–55; GeographicLib).
 */
public final class GeodesicTrueNorth implements TrueNorth {
  private static final double HALF_LINE_METRES = 100;

  private final MathTransform toGeographic;
  private final Geodesic ellipsoid;

  private GeodesicTrueNorth(MathTransform toGeographic, Geodesic ellipsoid) {
    this.toGeographic = toGeographic;
    this.ellipsoid = ellipsoid;
  }

  /**
   * {@return true north of a grid}
   *
   * @param gridWkt well-known text of a projected system in metres, easting first
   * @throws IllegalArgumentException if the text is none
   */
  public static GeodesicTrueNorth ofWkt(String gridWkt) {
    try {
      CoordinateReferenceSystem crs = CRS.parseWKT(gridWkt);
      if (!(crs instanceof ProjectedCRS projected)) {
        throw new IllegalArgumentException("no projected system: " + gridWkt);
      }
      DefaultGeographicCRS degrees =
          new DefaultGeographicCRS(
              projected.getBaseCRS().getDatum(), DefaultEllipsoidalCS.GEODETIC_2D);
      Ellipsoid figure = projected.getBaseCRS().getDatum().getEllipsoid();
      double metresPerUnit = figure.getAxisUnit().getConverterTo(SI.METRE).convert(1.0);
      double flattening = figure.isSphere() ? 0 : 1 / figure.getInverseFlattening();
      return new GeodesicTrueNorth(
          CRS.findMathTransform(projected, degrees, true),
          new Geodesic(figure.getSemiMajorAxis() * metresPerUnit, flattening));
    } catch (FactoryException e) {
      throw new IllegalArgumentException("no reference system: " + gridWkt, e);
    }
  }

  @Override
  public double gridNorthDegrees(double x, double y) {
    double[] ends = {x, y - HALF_LINE_METRES, x, y + HALF_LINE_METRES};
    try {
      toGeographic.transform(ends, 0, ends, 0, 2);
    } catch (TransformException e) {
      throw new MeadowmarkException(
          "the analysis grid does not reach " + Math.round(x) + " " + Math.round(y), e);
    }
    var line = ellipsoid.Inverse(ends[1], ends[0], ends[3], ends[2], GeodesicMask.AZIMUTH);
    return (line.azi1 + line.azi2) / 2;
  }
}
