package org.meadowmark.core.project;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicMask;
import net.sf.geographiclib.PolygonArea;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.datum.Ellipsoid;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.cs.DefaultEllipsoidalCS;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MeadowmarkException;
import si.uom.SI;

/**
 * Grid-to-ground scale of any projected system, found by measuring a small cross and a small square
 * of the grid on its ellipsoid.
 *
 * <p>At nodes 5 km apart, at whole multiples of 5 km of easting and northing, the ends of two grid
 * lines of 1 km are projected back to latitude and longitude and the geodesic between them is
 * measured (Karney 2013, <i>Algorithms for geodesics</i>, Journal of Geodesy 87:43–55). The length
 * factor is the geometric mean of the two directions, which are equal where the projection is
 * conformal, as UTM and most grids for survey are; the area factor comes from the geodesic area of
 * the square. Between nodes both are interpolated bilinearly; on UTM the error of that is below
 * 1e-7. Heights above the ellipsoid are not considered: at sea level they change lengths by a few
 * parts in a million.
 *
 * <p>Safe for use by several threads; the answer does not depend on what was asked before.
 */
public final class GeodesicGroundScale implements GroundScale {
  private static final double NODE_SPACING_METRES = 5_000;
  private static final double HALF_LINE_METRES = 500;

  private record Node(long column, long row) {}

  private record Factors(double length, double area) {}

  private final Map<Node, Factors> factors = new ConcurrentHashMap<>();
  private final MathTransform toGeographic;
  private final Geodesic ellipsoid;

  /**
   * The scale of a grid.
   *
   * @param grid the grid that lengths and areas are measured on
   * @throws IllegalStateException if there is no way from the grid back to degrees
   */
  public GeodesicGroundScale(AnalysisGrid grid) {
    DefaultGeographicCRS degrees =
        new DefaultGeographicCRS(grid.base().getDatum(), DefaultEllipsoidalCS.GEODETIC_2D);
    try {
      toGeographic = CRS.findMathTransform(grid.crs(), degrees, true);
    } catch (FactoryException e) {
      throw new IllegalStateException("no way back from the grid " + grid.label(), e);
    }
    Ellipsoid figure = grid.base().getDatum().getEllipsoid();
    double metresPerUnit = figure.getAxisUnit().getConverterTo(SI.METRE).convert(1.0);
    double flattening = figure.isSphere() ? 0 : 1 / figure.getInverseFlattening();
    ellipsoid = new Geodesic(figure.getSemiMajorAxis() * metresPerUnit, flattening);
  }

  @Override
  public double lengthFactor(double x, double y) {
    return interpolate(x, y, true);
  }

  @Override
  public double areaFactor(double x, double y) {
    return interpolate(x, y, false);
  }

  private double interpolate(double x, double y, boolean length) {
    double column = x / NODE_SPACING_METRES;
    double row = y / NODE_SPACING_METRES;
    long west = (long) Math.floor(column);
    long south = (long) Math.floor(row);
    double east = column - west;
    double north = row - south;
    double low = (1 - east) * at(west, south, length) + east * at(west + 1, south, length);
    double high = (1 - east) * at(west, south + 1, length) + east * at(west + 1, south + 1, length);
    return (1 - north) * low + north * high;
  }

  private double at(long column, long row, boolean length) {
    Factors node = factors.computeIfAbsent(new Node(column, row), this::measure);
    return length ? node.length() : node.area();
  }

  private Factors measure(Node node) {
    double x = node.column() * NODE_SPACING_METRES;
    double y = node.row() * NODE_SPACING_METRES;
    double h = HALF_LINE_METRES;
    double[] ends = {
      x - h, y, x + h, y, x, y - h, x, y + h, x - h, y - h, x + h, y - h, x + h, y + h, x - h, y + h
    };
    try {
      toGeographic.transform(ends, 0, ends, 0, ends.length / 2);
    } catch (TransformException e) {
      throw new MeadowmarkException(
          "the analysis grid does not reach "
              + Math.round(x)
              + " "
              + Math.round(y)
              + "; set analysis_crs to a system that covers the survey",
          e);
    }
    double eastWest = distance(ends, 0);
    double northSouth = distance(ends, 4);
    PolygonArea square = new PolygonArea(ellipsoid, false);
    for (int i = 8; i < ends.length; i += 2) {
      square.AddPoint(ends[i + 1], ends[i]);
    }
    double area = Math.abs(square.Compute(false, true).area);
    return new Factors(2 * h / Math.sqrt(eastWest * northSouth), 4 * h * h / area);
  }

  private double distance(double[] ends, int first) {
    return ellipsoid.Inverse(
            ends[first + 1], ends[first], ends[first + 3], ends[first + 2], GeodesicMask.DISTANCE)
        .s12;
  }
}
