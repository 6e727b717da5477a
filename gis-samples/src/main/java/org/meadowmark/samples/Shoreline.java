package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.List;

/**
 * Land before channels are cut: a mainland around a lagoon, and a barrier between it and the sea in
 * the south. Heights stand for distance: positive on land, about metres from the shore.
 */
final class Shoreline {
  static final double HEIGHT_METRES = 6_000;
  private static final double METRES_A_BED = 17.5;
  private static final double ENDS_METRES = 1_000;
  private static final double BARRIER_NORTHING = 850;
  private static final double SOFTNESS_METRES = 260;

  private final double widthMetres;
  private final GradientNoise shore;
  private final GradientNoise barrier;
  private final GradientNoise isletShape;
  private final List<Islet> islets = new ArrayList<>();

  private record Islet(double x, double y, double radius) {}

  /** The barrier at an easting: its middle line, and half of how wide it is. */
  record Barrier(double northing, double halfWidthMetres) {}

  Shoreline(EstuarySettings settings) {
    widthMetres = Math.rint((ENDS_METRES + settings.beds() * METRES_A_BED) / 100) * 100;
    shore = new GradientNoise(settings.seed(), Purpose.SHORE);
    barrier = new GradientNoise(settings.seed(), Purpose.BARRIER);
    isletShape = new GradientNoise(settings.seed(), Purpose.ISLET_SHAPE);
  }

  double widthMetres() {
    return widthMetres;
  }

  Barrier barrierAt(double x) {
    double halfWidth = 170 + 110 * barrier.fractal(7 + x / 900, 3.5, 3);
    return new Barrier(
        BARRIER_NORTHING + 230 * barrier.fractal(x / 2_600, 0.5, 3), Math.max(60, halfWidth));
  }

  /** Land without islets. */
  double mainland(double x, double y) {
    return mainland(x, y, barrierAt(x));
  }

  private double mainland(double x, double y, Barrier barrierHere) {
    double north = y - (HEIGHT_METRES - 1_150 + 1_500 * shore.fractal(x / 2_700, y / 5_000, 5));
    double west = 620 + 700 * shore.fractal(40 + y / 1_900, x / 3_000, 4) - x;
    double east = x - (widthMetres - 650 + 700 * shore.fractal(80 + y / 1_900, x / 3_000, 4));
    double around =
        SOFTNESS_METRES
            * StrictMath.log(
                StrictMath.exp(north / SOFTNESS_METRES)
                    + StrictMath.exp(west / SOFTNESS_METRES)
                    + StrictMath.exp(east / SOFTNESS_METRES));
    double bar = barrierHere.halfWidthMetres - Math.abs(y - barrierHere.northing);
    // Seaward of the barrier the mainland's ends fall away.
    double seaward = barrierHere.northing - y;
    return Math.max(seaward > 0 ? around - 2 * seaward : around, bar);
  }

  /** Land with islets, before channels are cut. */
  double height(double x, double y, Barrier barrierHere) {
    return Math.max(mainland(x, y, barrierHere), islets(x, y));
  }

  void addIslets(Channels channels, Draws draws) {
    long wanted = Math.max(3, Math.round(widthMetres / 1_100));
    for (int attempt = 0; attempt < wanted * 40 && islets.size() < wanted; attempt++) {
      double x = draws.between(600, widthMetres - 600);
      double y = draws.between(1_500, HEIGHT_METRES - 1_200);
      double radius = draws.between(45, 130);
      if (mainland(x, y) < -250 - radius && channels.clearance(x, y) > radius * 1.4 + 60) {
        islets.add(new Islet(x, y, radius));
      }
    }
  }

  private double islets(double x, double y) {
    double highest = -1_000;
    double ragged = Double.NaN;
    for (Islet islet : islets) {
      double dx = x - islet.x;
      double dy = y - islet.y;
      if (Math.abs(dx) < 1_000 && Math.abs(dy) < 1_000) {
        if (Double.isNaN(ragged)) {
          ragged = 1 + 0.45 * isletShape.fractal(x / 130, y / 130, 3);
        }
        highest =
            Math.max(highest, islet.radius * ragged - StrictMath.sqrt(dx * dx * 0.6 + dy * dy));
      }
    }
    return highest;
  }
}
