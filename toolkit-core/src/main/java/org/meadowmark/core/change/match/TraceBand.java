package org.meadowmark.core.change.match;

import java.util.Arrays;

/**
 * Where one line lies within a distance of another: exact, without making a buffer. The points
 * within a distance of an edge are a disc around each end and a rectangle between; a straight line
 * meets this convex shape in one stretch.
 *
 * <p>Time is the number of pairs of edges whose boxes come within the distance, after one look at
 * each. Not for use by several threads.
 */
final class TraceBand {
  private double[] from = new double[64];
  private double[] to = new double[64];
  private int count;
  private double low;
  private double high;

  /** Stretches of a line that lie within a distance of another. */
  double[] of(Trace line, Trace other, double distance) {
    count = 0;
    double minX = other.box().getMinX() - distance;
    double maxX = other.box().getMaxX() + distance;
    double minY = other.box().getMinY() - distance;
    double maxY = other.box().getMaxY() + distance;
    for (int v = 1; v < line.vertices(); v++) {
      if (line.endsEdge(v)
          && Math.min(line.x(v - 1), line.x(v)) <= maxX
          && Math.max(line.x(v - 1), line.x(v)) >= minX
          && Math.min(line.y(v - 1), line.y(v)) <= maxY
          && Math.max(line.y(v - 1), line.y(v)) >= minY) {
        edge(line, v, other, distance);
      }
    }
    return Spans.joined(from, to, count);
  }

  private void edge(Trace line, int v, Trace other, double distance) {
    double startX = line.x(v - 1);
    double startY = line.y(v - 1);
    double length = line.at(v) - line.at(v - 1);
    double wayX = (line.x(v) - startX) / length;
    double wayY = (line.y(v) - startY) / length;
    double minX = Math.min(startX, line.x(v)) - distance;
    double maxX = Math.max(startX, line.x(v)) + distance;
    double minY = Math.min(startY, line.y(v)) - distance;
    double maxY = Math.max(startY, line.y(v)) + distance;
    for (int u = 1; u < other.vertices(); u++) {
      if (!other.endsEdge(u)
          || Math.min(other.x(u - 1), other.x(u)) > maxX
          || Math.max(other.x(u - 1), other.x(u)) < minX
          || Math.min(other.y(u - 1), other.y(u)) > maxY
          || Math.max(other.y(u - 1), other.y(u)) < minY) {
        continue;
      }
      low = Double.POSITIVE_INFINITY;
      high = Double.NEGATIVE_INFINITY;
      disc(startX - other.x(u - 1), startY - other.y(u - 1), wayX, wayY, distance);
      disc(startX - other.x(u), startY - other.y(u), wayX, wayY, distance);
      rectangle(startX, startY, wayX, wayY, other, u, distance);
      double first = Math.max(0, low);
      double last = Math.min(length, high);
      if (last > first) {
        double base = line.at(v - 1);
        // The end of an edge is the start of the next, to the digit, so that stretches join.
        add(base + first, last == length ? line.at(v) : base + last);
      }
    }
  }

  /** Start is relative to the middle of the disc. */
  private void disc(double startX, double startY, double wayX, double wayY, double radius) {
    double middle = -(startX * wayX + startY * wayY);
    double offX = startX + middle * wayX;
    double offY = startY + middle * wayY;
    double half = radius * radius - offX * offX - offY * offY;
    if (half >= 0) {
      double reach = Math.sqrt(half);
      low = Math.min(low, middle - reach);
      high = Math.max(high, middle + reach);
    }
  }

  private void rectangle(
      double startX,
      double startY,
      double wayX,
      double wayY,
      Trace other,
      int u,
      double halfWidth) {
    double length = other.at(u) - other.at(u - 1);
    double axisX = (other.x(u) - other.x(u - 1)) / length;
    double axisY = (other.y(u) - other.y(u - 1)) / length;
    double relativeX = startX - other.x(u - 1);
    double relativeY = startY - other.y(u - 1);
    double first = Double.NEGATIVE_INFINITY;
    double last = Double.POSITIVE_INFINITY;
    double along = relativeX * axisX + relativeY * axisY;
    double alongRate = wayX * axisX + wayY * axisY;
    double across = relativeY * axisX - relativeX * axisY;
    double acrossRate = wayY * axisX - wayX * axisY;
    if (alongRate == 0) {
      if (along < 0 || along > length) {
        return;
      }
    } else {
      double one = -along / alongRate;
      double two = (length - along) / alongRate;
      first = Math.max(first, Math.min(one, two));
      last = Math.min(last, Math.max(one, two));
    }
    if (acrossRate == 0) {
      if (Math.abs(across) > halfWidth) {
        return;
      }
    } else {
      double one = (-halfWidth - across) / acrossRate;
      double two = (halfWidth - across) / acrossRate;
      first = Math.max(first, Math.min(one, two));
      last = Math.min(last, Math.max(one, two));
    }
    if (last >= first) {
      low = Math.min(low, first);
      high = Math.max(high, last);
    }
  }

  private void add(double first, double last) {
    if (count == from.length) {
      from = Arrays.copyOf(from, 2 * count);
      to = Arrays.copyOf(to, 2 * count);
    }
    from[count] = first;
    to[count++] = last;
  }
}
