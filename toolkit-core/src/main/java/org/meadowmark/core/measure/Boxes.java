package org.meadowmark.core.measure;

import org.locationtech.jts.geom.Envelope;

/** Boxes by place, for many comparisons of distances without roots. */
final class Boxes {
  private final double[] minX;
  private final double[] minY;
  private final double[] maxX;
  private final double[] maxY;

  Boxes(int count) {
    minX = new double[count];
    minY = new double[count];
    maxX = new double[count];
    maxY = new double[count];
  }

  void set(int place, Envelope box) {
    minX[place] = box.getMinX();
    minY[place] = box.getMinY();
    maxX[place] = box.getMaxX();
    maxY[place] = box.getMaxY();
  }

  /** Whether two boxes are no farther apart than a distance, which may be infinite. */
  boolean areWithin(double distance, int a, int b) {
    double x = Math.max(0, Math.max(minX[b] - maxX[a], minX[a] - maxX[b]));
    double y = Math.max(0, Math.max(minY[b] - maxY[a], minY[a] - maxY[b]));
    return x * x + y * y <= distance * distance;
  }
}
