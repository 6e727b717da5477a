package org.meadowmark.core.write.proposal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.locationtech.jts.geom.Envelope;

/**
 * Where meridians and parallels at round minutes meet the frame of a map.
 *
 * @param meridians from west to east
 * @param parallels from south to north
 * @param decimals decimals of a minute that the labels need
 */
record Graticule(List<Line> meridians, List<Line> parallels, int decimals) {
  private static final double MINUTES = 60;
  private static final double FEWEST = 2.5;
  private static final int HALVINGS = 40;

  /**
   * A meridian or parallel, drawn straight: at the scale of a zone its bow is below what can be
   * seen.
   *
   * @param degrees longitude or latitude
   * @param start easting at the lower side, or northing at the left side
   * @param end easting at the upper side, or northing at the right side
   */
  record Line(double degrees, double start, double end) {}

  /** The lines of a window. */
  static Graticule of(Envelope window, GridPlaces places) {
    double west = places.at(window.getMinX(), window.getMinY()).longitude();
    double east = places.at(window.getMaxX(), window.getMinY()).longitude();
    double south = places.at(window.getMinX(), window.getMinY()).latitude();
    double north = places.at(window.getMinX(), window.getMaxY()).latitude();
    double span = MINUTES * Math.min(Math.abs(east - west), north - south);
    double stepMinutes = RoundSteps.atMost(span / FEWEST);
    double step = stepMinutes / MINUTES;
    int decimals = (int) Math.max(0, -Math.floor(Math.log10(stepMinutes) + 1e-9));

    List<Line> meridians = new ArrayList<>();
    for (long i = first(west, step); i * step < east; i++) {
      double degrees = i * step;
      meridians.add(
          new Line(
              degrees,
              crossing(x -> places.at(x, window.getMinY()).longitude(), degrees, window, true),
              crossing(x -> places.at(x, window.getMaxY()).longitude(), degrees, window, true)));
    }
    List<Line> parallels = new ArrayList<>();
    for (long i = first(south, step); i * step < north; i++) {
      double degrees = i * step;
      parallels.add(
          new Line(
              degrees,
              crossing(y -> places.at(window.getMinX(), y).latitude(), degrees, window, false),
              crossing(y -> places.at(window.getMaxX(), y).latitude(), degrees, window, false)));
    }
    return new Graticule(List.copyOf(meridians), List.copyOf(parallels), decimals);
  }

  private static long first(double start, double step) {
    return (long) Math.ceil(start / step);
  }

  /** By halving, in a range that reaches beyond the window on both sides. */
  private static double crossing(
      DoubleUnaryOperator degreesAt, double degrees, Envelope window, boolean eastward) {
    double reach = window.getWidth() + window.getHeight();
    double low = (eastward ? window.getMinX() : window.getMinY()) - reach;
    double high = (eastward ? window.getMaxX() : window.getMaxY()) + reach;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (degreesAt.applyAsDouble(middle) < degrees) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
