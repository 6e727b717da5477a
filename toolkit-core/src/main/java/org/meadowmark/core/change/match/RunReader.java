package org.meadowmark.core.change.match;

/**
 * How a stretch of one line runs along another: looked at in points spread evenly over it. The
 * direction at a point is that of the chord over one tolerance to either side, on both lines, so
 * that bends of the drawing hand do not count. Not for use by several threads.
 */
final class RunReader {
  private static final int FEWEST_POINTS = 4;
  private static final int MOST_POINTS = 12;

  /** No multiple of the distance between points, so that the last digits do not decide. */
  private static final double LEAST_SIDE_BY_SIDE = 0.45;

  private double nearestAt;
  private double nearestSquared;
  private boolean nearestIsLooseEnd;

  /**
   * What was read along a stretch.
   *
   * @param agreement mean cosine of the angle between the two lines
   * @param meanSquare mean square distance, in square grid metres
   * @param pace metres made on the other line per metre of this one; not a number where the two do
   *     not run side by side for about half the stretch
   */
  record Reading(double agreement, double meanSquare, double pace) {}

  Reading read(Trace line, double from, double to, Trace other, double tolerance) {
    int points =
        (int) Math.max(FEWEST_POINTS, Math.min(MOST_POINTS, Math.ceil((to - from) / tolerance)));
    double cosines = 0;
    double squares = 0;
    double firstHere = Double.NaN;
    double firstThere = 0;
    double lastHere = 0;
    double lastThere = 0;
    for (int i = 0; i < points; i++) {
      double here = from + (i + 0.5) / points * (to - from);
      find(line.xAt(here), line.yAt(here), other);
      cosines += cosine(line, here, other, nearestAt, tolerance);
      squares += nearestSquared;
      if (!nearestIsLooseEnd) {
        if (Double.isNaN(firstHere)) {
          firstHere = here;
          firstThere = nearestAt;
        }
        lastHere = here;
        lastThere = nearestAt;
      }
    }
    double sideBySide = lastHere - firstHere;
    return new Reading(
        cosines / points,
        squares / points,
        sideBySide >= LEAST_SIDE_BY_SIDE * (to - from)
            ? Math.abs(lastThere - firstThere) / sideBySide
            : Double.NaN);
  }

  private static double cosine(
      Trace line, double here, Trace other, double there, double tolerance) {
    double x = line.xAt(here + tolerance) - line.xAt(here - tolerance);
    double y = line.yAt(here + tolerance) - line.yAt(here - tolerance);
    double otherX = other.xAt(there + tolerance) - other.xAt(there - tolerance);
    double otherY = other.yAt(there + tolerance) - other.yAt(there - tolerance);
    double lengths = Math.sqrt((x * x + y * y) * (otherX * otherX + otherY * otherY));
    // A closed loop shorter than the chord has no direction, and nothing speaks against it.
    return lengths > 0 ? Math.abs(x * otherX + y * otherY) / lengths : 1;
  }

  private void find(double x, double y, Trace other) {
    nearestSquared = Double.POSITIVE_INFINITY;
    for (int u = 1; u < other.vertices(); u++) {
      if (!other.endsEdge(u)) {
        continue;
      }
      double length = other.at(u) - other.at(u - 1);
      double wayX = (other.x(u) - other.x(u - 1)) / length;
      double wayY = (other.y(u) - other.y(u - 1)) / length;
      double along = (x - other.x(u - 1)) * wayX + (y - other.y(u - 1)) * wayY;
      double clamped = Math.max(0, Math.min(length, along));
      double offX = x - other.x(u - 1) - clamped * wayX;
      double offY = y - other.y(u - 1) - clamped * wayY;
      double squared = offX * offX + offY * offY;
      if (squared < nearestSquared) {
        nearestSquared = squared;
        nearestAt = other.at(u - 1) + clamped;
        nearestIsLooseEnd =
            along <= 0 && other.isLooseEnd(u - 1) || along >= length && other.isLooseEnd(u);
      }
    }
  }
}
