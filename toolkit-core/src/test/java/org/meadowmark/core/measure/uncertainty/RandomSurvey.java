package org.meadowmark.core.measure.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Scars and a bed from a seed. */
record RandomSurvey(List<UncertainScar> scars, Geometry grass) {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Winding scars with measured and default widths and a few polygons over a star-shaped bed. */
  static RandomSurvey winding(long seed, int count, double bedRadius) {
    Random random = new Random(seed);
    List<UncertainScar> scars = new ArrayList<>();
    double spread = bedRadius * 1.2;
    for (int i = 0; i < count; i++) {
      double x = (2 * random.nextDouble() - 1) * spread;
      double y = (2 * random.nextDouble() - 1) * spread;
      if (i % 10 == 9) {
        Geometry hole = FACTORY.createPoint(new Coordinate(x, y)).buffer(1 + random.nextDouble());
        scars.add(new UncertainScar("s" + i, hole, 0, 1, 0, Optional.empty()));
        continue;
      }
      double heading = 2 * Math.PI * random.nextDouble();
      int points = 2 + random.nextInt(8);
      Coordinate[] line = new Coordinate[points];
      for (int k = 0; k < points; k++) {
        line[k] = new Coordinate(x, y);
        heading += 0.4 * random.nextGaussian();
        double step = 3 + 4 * random.nextDouble();
        x += step * Math.cos(heading);
        y += step * Math.sin(heading);
      }
      boolean shared = random.nextInt(3) == 0;
      scars.add(
          new UncertainScar(
              "s" + i,
              FACTORY.createLineString(line),
              shared ? 0.4 : 0.25 + 0.5 * random.nextDouble(),
              1,
              0.3,
              shared ? Optional.of("propeller") : Optional.empty()));
    }
    return new RandomSurvey(scars, star(random, bedRadius));
  }

  /** Bundles of nearly parallel scars as close as their widths. */
  static RandomSurvey bundles(long seed, int bundles, int each, double bedRadius) {
    Random random = new Random(seed);
    List<UncertainScar> scars = new ArrayList<>();
    for (int b = 0; b < bundles; b++) {
      double x = (2 * random.nextDouble() - 1) * bedRadius;
      double y = (2 * random.nextDouble() - 1) * bedRadius;
      double heading = 2 * Math.PI * random.nextDouble();
      for (int i = 0; i < each; i++) {
        double turned = heading + 0.02 * random.nextGaussian();
        double aside = 0.35 * i;
        double fromX = x - aside * Math.sin(heading);
        double fromY = y + aside * Math.cos(heading);
        double length = 20 + 20 * random.nextDouble();
        Coordinate[] line = {
          new Coordinate(fromX, fromY),
          new Coordinate(fromX + length * Math.cos(turned), fromY + length * Math.sin(turned))
        };
        scars.add(
            new UncertainScar(
                "b" + b + "-" + i, FACTORY.createLineString(line), 0.4, 1, 0.4, Optional.empty()));
      }
    }
    return new RandomSurvey(scars, star(random, bedRadius));
  }

  private static Polygon star(Random random, double radius) {
    int corners = 40;
    Coordinate[] ring = new Coordinate[corners + 1];
    for (int i = 0; i < corners; i++) {
      double angle = 2 * Math.PI * i / corners;
      double r = radius * (0.7 + 0.4 * random.nextDouble());
      ring[i] = new Coordinate(r * Math.cos(angle), r * Math.sin(angle));
    }
    ring[corners] = ring[0].copy();
    return FACTORY.createPolygon(ring);
  }
}
