package org.meadowmark.core.write.report;

import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.write.proposal.GridPlaces;

/**
 * Degrees and ground scale over a survey as values at Chebyshev nodes, so that the page can
 * interpolate them without a library for projections.
 *
 * <p>Interpolation through n × n nodes, see Berrut, J.-P. and Trefethen, L. N. (2004),
 * <i>Barycentric Lagrange interpolation</i>, SIAM Review 46:501–517. Nodes are added until the
 * degrees are right to {@value #MOST_DEGREES}° at points between them, or are {@value #MOST_NODES}
 * each way.
 *
 * @param area where the values hold
 * @param nodes nodes each way
 * @param latitudes degrees at nodes, from north to south and within that from east to west (the
 *     order of the cosine); empty where the grid's place on Earth is not known
 * @param longitudes likewise
 * @param factors grid length divided by ground length at the same nodes
 */
record GridFit(
    Envelope area, int nodes, double[] latitudes, double[] longitudes, double[] factors) {
  /** A metre on the ground is some nine of these. */
  static final double MOST_DEGREES = 1e-6;

  private static final int FEWEST_NODES = 5;
  private static final int MOST_NODES = 14;
  private static final double[] MARGINS = {1.5, 0.2, 0};
  private static final int CHECKS = 7;

  /**
   * The values around a survey.
   *
   * @param extent the survey
   * @param places where it is on Earth, if known
   * @param scale its ground scale
   */
  static GridFit of(Envelope extent, Optional<GridPlaces> places, GroundScale scale) {
    if (places.isEmpty()) {
      return at(padded(extent, MARGINS[0]), FEWEST_NODES, places, scale);
    }
    for (double margin : MARGINS) {
      try {
        return fit(padded(extent, margin), places, scale);
      } catch (IllegalStateException e) {
        // The projection does not reach that far: try a smaller margin.
        continue;
      }
    }
    return at(padded(extent, MARGINS[0]), FEWEST_NODES, Optional.empty(), scale);
  }

  private static GridFit fit(Envelope area, Optional<GridPlaces> places, GroundScale scale) {
    GridFit fit = at(area, FEWEST_NODES, places, scale);
    for (int nodes = FEWEST_NODES + 1; nodes <= MOST_NODES; nodes++) {
      if (fit.largestError(places.orElseThrow()) <= MOST_DEGREES) {
        return fit;
      }
      fit = at(area, nodes, places, scale);
    }
    return fit;
  }

  private static Envelope padded(Envelope extent, double margin) {
    Envelope area = new Envelope(extent);
    double side = Math.max(1, Math.max(extent.getWidth(), extent.getHeight()));
    area.expandBy(margin * side + 1);
    return area;
  }

  private static GridFit at(
      Envelope area, int nodes, Optional<GridPlaces> places, GroundScale scale) {
    int count = places.isPresent() ? nodes * nodes : 0;
    double[] latitudes = new double[count];
    double[] longitudes = new double[count];
    double[] factors = new double[nodes * nodes];
    for (int row = 0; row < nodes; row++) {
      double y = place(area.getMinY(), area.getMaxY(), node(row, nodes));
      for (int column = 0; column < nodes; column++) {
        double x = place(area.getMinX(), area.getMaxX(), node(column, nodes));
        int at = row * nodes + column;
        factors[at] = scale.lengthFactor(x, y);
        if (places.isPresent()) {
          GridPlaces.Degrees degrees = places.get().at(x, y);
          latitudes[at] = degrees.latitude();
          longitudes[at] = degrees.longitude();
        }
      }
    }
    return new GridFit(area, nodes, latitudes, longitudes, factors);
  }

  private static double node(int place, int nodes) {
    return Math.cos(Math.PI * (place + 0.5) / nodes);
  }

  private static double place(double low, double high, double position) {
    return (low + high) / 2 + position * (high - low) / 2;
  }

  private double largestError(GridPlaces places) {
    double largest = 0;
    for (int i = 0; i <= CHECKS; i++) {
      for (int j = 0; j <= CHECKS; j++) {
        double x = area.getMinX() + i * area.getWidth() / CHECKS;
        double y = area.getMinY() + j * area.getHeight() / CHECKS;
        GridPlaces.Degrees right = places.at(x, y);
        largest = Math.max(largest, Math.abs(interpolated(latitudes, x, y) - right.latitude()));
        largest = Math.max(largest, Math.abs(interpolated(longitudes, x, y) - right.longitude()));
      }
    }
    return largest;
  }

  /** A value at a point. */
  double interpolated(double[] values, double x, double y) {
    double[] across = weights((2 * x - area.getMinX() - area.getMaxX()) / area.getWidth());
    double[] along = weights((2 * y - area.getMinY() - area.getMaxY()) / area.getHeight());
    double sum = 0;
    for (int row = 0; row < nodes; row++) {
      for (int column = 0; column < nodes; column++) {
        sum += along[row] * across[column] * values[row * nodes + column];
      }
    }
    return sum;
  }

  private double[] weights(double position) {
    double[] weights = new double[nodes];
    double sum = 0;
    for (int i = 0; i < nodes; i++) {
      double distance = position - node(i, nodes);
      if (distance == 0) {
        double[] only = new double[nodes];
        only[i] = 1;
        return only;
      }
      weights[i] = (i % 2 == 0 ? 1 : -1) * Math.sin(Math.PI * (i + 0.5) / nodes) / distance;
      sum += weights[i];
    }
    for (int i = 0; i < nodes; i++) {
      weights[i] /= sum;
    }
    return weights;
  }
}
