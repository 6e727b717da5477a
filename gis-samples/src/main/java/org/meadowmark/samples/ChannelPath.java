package org.meadowmark.samples;

import org.locationtech.jts.geom.Coordinate;

/**
 * A named channel from end to end, in local metres.
 *
 * @param name name
 * @param points centreline
 * @param firstHalfWidthMetres half of the width at the first point
 * @param lastHalfWidthMetres half of the width at the last point; between them it changes evenly
 */
record ChannelPath(
    String name, Coordinate[] points, double firstHalfWidthMetres, double lastHalfWidthMetres) {

  double halfWidthMetres(int vertex) {
    double share = (double) vertex / (points.length - 1);
    return firstHalfWidthMetres + (lastHalfWidthMetres - firstHalfWidthMetres) * share;
  }

  /** Direction of the channel at a vertex, in radians. */
  double heading(int vertex) {
    Coordinate before = points[Math.max(0, vertex - 1)];
    Coordinate after = points[Math.min(points.length - 1, vertex + 1)];
    return StrictMath.atan2(after.y - before.y, after.x - before.x);
  }

  /** Curvature in 1/m over a few vertices, positive to the left. */
  double curvature(int vertex) {
    int reach = 4;
    int from = Math.max(0, vertex - reach);
    int to = Math.min(points.length - 1, vertex + reach);
    double turn = StrictMath.IEEEremainder(heading(to) - heading(from), 2 * StrictMath.PI);
    double length = 0;
    for (int i = from; i < to; i++) {
      length += points[i].distance(points[i + 1]);
    }
    return length > 0 ? turn / length : 0;
  }
}
