package org.meadowmark.core.measure.uncertainty;

/**
 * A point of a scar that stands for a small piece of its footprint.
 *
 * <p>The area of a union is the sum over footprints of the integral of 1 / (number of footprints
 * over a point). A point counts with its piece of area divided by that number, or not at all where
 * it is outside the grass.
 */
final class SamplePoint {
  private final int scar;
  private final double x;
  private final double y;
  private final double acrossX;
  private final double acrossY;
  private final double area;
  private final boolean inside;
  private final double[] edges;
  private final Cover[] covers;

  /**
   * Creates a point.
   *
   * @param scar place of its scar in the batch
   * @param x easting of the point on the line, or of the point itself for a polygon
   * @param y northing
   * @param acrossX way from the line to the point at the measured width
   * @param acrossY way from the line to the point at the measured width
   * @param area ground area it stands for at the measured width
   * @param inside whether it is in the grass as measured
   * @param edges edges of the grass in reach: x and y of both ends, one after the other
   * @param covers pieces of other scars in reach, those of one scar next to each other
   */
  SamplePoint(
      int scar,
      double x,
      double y,
      double acrossX,
      double acrossY,
      double area,
      boolean inside,
      double[] edges,
      Cover[] covers) {
    this.scar = scar;
    this.x = x;
    this.y = y;
    this.acrossX = acrossX;
    this.acrossY = acrossY;
    this.area = area;
    this.inside = inside;
    this.edges = edges;
    this.covers = covers;
  }

  /**
   * Adds the change of the scarred area in every draw.
   *
   * @param drawn errors of the batch
   * @param none no errors, in one draw
   * @param changes one a draw
   */
  void addChanges(DrawnErrors drawn, DrawnErrors none, double[] changes) {
    double measured = scarredArea(none, 0);
    for (int draw = 0; draw < changes.length; draw++) {
      changes[draw] += scarredArea(drawn, draw) - measured;
    }
  }

  private double scarredArea(DrawnErrors drawn, int draw) {
    double factor = drawn.factor()[scar][draw];
    double toX = x + acrossX * factor + drawn.x()[scar][draw];
    double toY = y + acrossY * factor + drawn.y()[scar][draw];
    boolean crossed = edges.length > 0 && crossesOddly(x + acrossX, y + acrossY, toX, toY);
    if (inside == crossed) {
      return 0;
    }
    int count = 1;
    int counted = -1;
    for (Cover cover : covers) {
      int other = cover.scar();
      if (other != counted
          && cover.covers(
              toX - drawn.x()[other][draw],
              toY - drawn.y()[other][draw],
              drawn.factor()[other][draw])) {
        count++;
        counted = other;
      }
    }
    return area * factor / count;
  }

  /** Whether a straight way crosses the edges an odd number of times. */
  private boolean crossesOddly(double fromX, double fromY, double toX, double toY) {
    boolean odd = false;
    double wayX = toX - fromX;
    double wayY = toY - fromY;
    for (int i = 0; i < edges.length; i += 4) {
      double aX = edges[i];
      double aY = edges[i + 1];
      double bX = edges[i + 2];
      double bY = edges[i + 3];
      boolean leftA = wayX * (aY - fromY) - wayY * (aX - fromX) > 0;
      boolean leftB = wayX * (bY - fromY) - wayY * (bX - fromX) > 0;
      if (leftA != leftB) {
        double edgeX = bX - aX;
        double edgeY = bY - aY;
        boolean leftFrom = edgeX * (fromY - aY) - edgeY * (fromX - aX) > 0;
        boolean leftTo = edgeX * (toY - aY) - edgeY * (toX - aX) > 0;
        odd ^= leftFrom != leftTo;
      }
    }
    return odd;
  }
}
