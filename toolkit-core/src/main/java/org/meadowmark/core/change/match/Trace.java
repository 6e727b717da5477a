package org.meadowmark.core.change.match;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.meadowmark.core.model.Scar;

/**
 * A scar as a line along which grid metres are counted. Parts of a line follow each other. A
 * polygon has no course: only how much of it is meant is known, out of half its perimeter.
 */
final class Trace {
  private final Scar scar;
  private final double[] x;
  private final double[] y;

  /** Distance along the line at each vertex; a part starts where it does not grow. */
  private final double[] at;

  private final boolean[] starts;
  private final Envelope box;
  private final double lengthFactor;
  private final double length;

  private Trace(
      Scar scar, double[] x, double[] y, double[] at, boolean[] starts, double lengthFactor) {
    this.scar = scar;
    this.x = x;
    this.y = y;
    this.at = at;
    this.starts = starts;
    this.lengthFactor = lengthFactor;
    this.box = scar.geometry().getEnvelopeInternal();
    this.length =
        scar.isLine() ? (at.length == 0 ? 0 : at[at.length - 1]) : scar.geometry().getLength() / 2;
  }

  /**
   * The trace of a scar.
   *
   * @param lengthFactor grid length divided by ground length there
   */
  static Trace of(Scar scar, double lengthFactor) {
    if (!scar.isLine()) {
      double[] none = {};
      return new Trace(scar, none, none, none, new boolean[0], lengthFactor);
    }
    List<Coordinate[]> parts = new ArrayList<>();
    int count = 0;
    for (Object part : LinearComponentExtracter.getLines(scar.geometry())) {
      Coordinate[] vertices = ((LineString) part).getCoordinates();
      parts.add(vertices);
      count += vertices.length;
    }
    double[] x = new double[count];
    double[] y = new double[count];
    double[] at = new double[count];
    boolean[] starts = new boolean[count];
    int v = 0;
    double made = 0;
    for (Coordinate[] vertices : parts) {
      for (int i = 0; i < vertices.length; i++, v++) {
        x[v] = vertices[i].x;
        y[v] = vertices[i].y;
        starts[v] = i == 0;
        made += i == 0 ? 0 : vertices[i].distance(vertices[i - 1]);
        at[v] = made;
      }
    }
    return new Trace(scar, x, y, at, starts, lengthFactor);
  }

  Scar scar() {
    return scar;
  }

  boolean isLine() {
    return scar.isLine();
  }

  /** The outline of a scar that has no course. */
  Optional<Geometry> outline() {
    return isLine() ? Optional.empty() : Optional.of(scar.geometry());
  }

  Envelope box() {
    return box;
  }

  /** Grid metres. */
  double length() {
    return length;
  }

  double lengthFactor() {
    return lengthFactor;
  }

  int vertices() {
    return x.length;
  }

  double x(int vertex) {
    return x[vertex];
  }

  double y(int vertex) {
    return y[vertex];
  }

  double at(int vertex) {
    return at[vertex];
  }

  /** Whether an edge leads from the vertex before to this one. */
  boolean endsEdge(int vertex) {
    return !starts[vertex] && at[vertex] > at[vertex - 1];
  }

  /** Whether nothing follows this vertex, or nothing comes before it. */
  boolean isLooseEnd(int vertex) {
    return starts[vertex] || vertex + 1 == x.length || starts[vertex + 1];
  }

  /** Vertex at the end of the edge that holds a position. */
  int edgeAt(double position) {
    int low = 1;
    int high = at.length - 1;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (at[middle] < position) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    while (low < at.length - 1 && !endsEdge(low)) {
      low++;
    }
    return low;
  }

  double xAt(double position) {
    return along(x, position);
  }

  double yAt(double position) {
    return along(y, position);
  }

  private double along(double[] ordinates, double position) {
    double inside = Math.max(0, Math.min(length, position));
    int end = edgeAt(inside);
    double edge = at[end] - at[end - 1];
    double share = edge > 0 ? (inside - at[end - 1]) / edge : 0;
    double clamped = Math.max(0, Math.min(1, share));
    return ordinates[end - 1] + clamped * (ordinates[end] - ordinates[end - 1]);
  }
}
