package org.meadowmark.core.measure.recovery;

/**
 * Share of the ground that no living disc covers.
 *
 * <p>Along a line at distance y from a row with spacing p, a disc of radius r covers 2c = 2√(r² −
 * y²). A point there has m or m + 1 units in reach, with 2c/p = m + f, and the second with chance
 * f; if each lives with chance s, none does with chance (1 − s)^m·(1 − f·s).
 */
final class UnitDiscs {
  private static final int POINTS_A_ROW = 12;

  private final double spacing;
  private final double survival;

  UnitDiscs(double spacing, double survival) {
    this.spacing = spacing;
    this.survival = survival;
  }

  /**
   * In the middle of a strip.
   *
   * @param stripWidth width when it was planted, over which rows are spread evenly
   * @param rows number of rows
   * @param halfWidth half of the width that is looked at
   * @param radius radius of the discs
   */
  double bareShareOfStrip(double stripWidth, int rows, double halfWidth, double radius) {
    if (rows == 1) {
      double reached = Math.min(halfWidth, radius);
      double sum = 0;
      for (int i = 0; i < POINTS_A_ROW; i++) {
        sum += none(reached * (i + 0.5) / POINTS_A_ROW, radius);
      }
      return halfWidth > 0 ? 1 - reached / halfWidth * (1 - sum / POINTS_A_ROW) : 0;
    }
    int points = POINTS_A_ROW * rows;
    double sum = 0;
    for (int i = 0; i < points; i++) {
      double y = halfWidth * (2 * (i + 0.5) / points - 1);
      double bare = 1;
      double between = stripWidth / rows;
      int first = (int) Math.max(0, Math.floor((y + stripWidth / 2 - radius) / between - 0.5));
      int last = (int) Math.min(rows - 1, Math.ceil((y + stripWidth / 2 + radius) / between));
      for (int row = first; row <= last; row++) {
        bare *= none(Math.abs(y + stripWidth / 2 - (row + 0.5) * between), radius);
      }
      sum += bare;
    }
    return sum / points;
  }

  /** Of ground without end, rows a spacing apart. */
  double bareShareOfPlain(double radius) {
    double sum = 0;
    int reach = (int) Math.ceil(radius / spacing) + 1;
    for (int i = 0; i < POINTS_A_ROW; i++) {
      double y = spacing / 2 * (i + 0.5) / POINTS_A_ROW;
      double bare = 1;
      for (int row = -reach; row <= reach; row++) {
        bare *= none(Math.abs(y - row * spacing), radius);
      }
      sum += bare;
    }
    return sum / POINTS_A_ROW;
  }

  private double none(double y, double radius) {
    if (y >= radius) {
      return 1;
    }
    double inReach = 2 * Math.sqrt(radius * radius - y * y) / spacing;
    int sure = (int) inReach;
    double none = 1 - (inReach - sure) * survival;
    for (int i = 0; i < sure && none > 0; i++) {
      none *= 1 - survival;
    }
    return none;
  }
}
