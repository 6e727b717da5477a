package org.meadowmark.core.measure.uncertainty;

import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.meadowmark.core.model.PointLocators;

/** A piece of a scar that may lie over a point: one stretch of its line, or its outline. */
abstract class Cover {
  private final int scar;
  private final Envelope envelope;

  private Cover(int scar, Envelope envelope) {
    this.scar = scar;
    this.envelope = envelope;
  }

  /** Place of the scar in the batch. */
  final int scar() {
    return scar;
  }

  /** Extent without width. */
  final Envelope envelope() {
    return envelope;
  }

  /** Whether a point in the scar's own frame, its shift taken off, is under it. */
  abstract boolean covers(double x, double y, double widthFactor);

  /** Distance to a point, without width. */
  abstract double distance(double x, double y);

  /** The strip along a straight stretch; bends are round, ends of the line are flat. */
  static final class Strip extends Cover {
    private final double startX;
    private final double startY;
    private final double alongX;
    private final double alongY;
    private final double length;
    private final double halfWidth;
    private final boolean bendAtStart;
    private final boolean bendAtEnd;

    Strip(int scar, Coordinate a, Coordinate b, double width, boolean bendA, boolean bendB) {
      super(scar, new Envelope(a, b));
      startX = a.x;
      startY = a.y;
      length = a.distance(b);
      alongX = (b.x - a.x) / length;
      alongY = (b.y - a.y) / length;
      halfWidth = width / 2;
      bendAtStart = bendA;
      bendAtEnd = bendB;
    }

    @Override
    boolean covers(double x, double y, double widthFactor) {
      double dx = x - startX;
      double dy = y - startY;
      double half = halfWidth * widthFactor;
      double across = dx * alongY - dy * alongX;
      if (Math.abs(across) > half) {
        return false;
      }
      double along = dx * alongX + dy * alongY;
      if (along < 0) {
        return bendAtStart && along * along + across * across <= half * half;
      }
      double beyond = along - length;
      return beyond <= 0 || bendAtEnd && beyond * beyond + across * across <= half * half;
    }

    @Override
    double distance(double x, double y) {
      double dx = x - startX;
      double dy = y - startY;
      double along = dx * alongX + dy * alongY;
      double beyond = Math.max(0, Math.max(-along, along - length));
      double across = dx * alongY - dy * alongX;
      return Math.sqrt(beyond * beyond + across * across);
    }
  }

  /** The inside of an outline. */
  static final class Area extends Cover {
    private final PointOnGeometryLocator locator;
    private final Geometry outline;

    Area(int scar, Geometry outline) {
      super(scar, outline.getEnvelopeInternal());
      this.outline = outline;
      this.locator = PointLocators.of(outline);
    }

    @Override
    boolean covers(double x, double y, double widthFactor) {
      return envelope().contains(x, y) && locator.locate(new Coordinate(x, y)) != Location.EXTERIOR;
    }

    @Override
    double distance(double x, double y) {
      Envelope box = outline.getEnvelopeInternal();
      double dx = Math.max(0, Math.max(box.getMinX() - x, x - box.getMaxX()));
      double dy = Math.max(0, Math.max(box.getMinY() - y, y - box.getMaxY()));
      return Math.sqrt(dx * dx + dy * dy);
    }
  }
}
