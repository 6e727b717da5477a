package org.meadowmark.core.change.match;

import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.change.Seasons;

/** Two surveys with scars that lie close, of every kind: drawn again, cut, longer, over others. */
final class RandomSeasons {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private RandomSeasons() {}

  static Seasons of(long seed, int scars, double widthMetres) {
    Random random = new Random(seed);
    Seasons seasons = new Seasons().tolerance(0.5 + 2 * random.nextDouble());
    if (random.nextInt(3) == 0) {
      seasons.earlier().surveyed(TestSurvey.box(10, -50, widthMetres + 50, widthMetres + 50));
    }
    if (random.nextInt(3) == 0) {
      seasons.later().surveyed(TestSurvey.box(-50, 10, widthMetres - 5, widthMetres + 50));
    }
    int id = 0;
    for (int i = 0; i < scars; i++) {
      Geometry scar =
          random.nextInt(12) == 0 ? basin(random, widthMetres) : line(random, widthMetres);
      if (random.nextInt(4) > 0) {
        seasons.earlier().scar("e" + id++, moved(scar, random), 0.4, "propeller");
      }
      int fate = random.nextInt(5);
      if (fate == 1 && scar.getDimension() == 1) {
        Coordinate[] all = scar.getCoordinates();
        int at = 1 + random.nextInt(all.length - 2);
        seasons.later().scar("l" + id++, moved(part(all, 0, at), random), 0.4, "propeller");
        seasons
            .later()
            .scar("l" + id++, moved(part(all, at, all.length - 1), random), 0.4, "propeller");
      } else if (fate > 0) {
        seasons.later().scar("l" + id++, moved(scar, random), 0.4, "propeller");
      }
    }
    return seasons;
  }

  private static Geometry line(Random random, double widthMetres) {
    double x = widthMetres * random.nextDouble();
    double y = widthMetres * random.nextDouble();
    double heading = (random.nextBoolean() ? 0 : 0.5) + 0.1 * random.nextGaussian();
    Coordinate[] line = new Coordinate[6];
    double step = 1 + 5 * random.nextDouble();
    for (int i = 0; i < line.length; i++) {
      line[i] = new Coordinate(x, y);
      heading += 0.15 * random.nextGaussian();
      x += step * Math.cos(heading);
      y += step * Math.sin(heading);
    }
    return FACTORY.createLineString(line);
  }

  private static Geometry basin(Random random, double widthMetres) {
    Coordinate middle =
        new Coordinate(widthMetres * random.nextDouble(), widthMetres * random.nextDouble());
    return FACTORY.createPoint(middle).buffer(1 + 4 * random.nextDouble());
  }

  private static Geometry part(Coordinate[] all, int from, int to) {
    Coordinate[] part = new Coordinate[to - from + 1];
    System.arraycopy(all, from, part, 0, part.length);
    return FACTORY.createLineString(part);
  }

  private static Geometry moved(Geometry geometry, Random random) {
    double x = 0.5 * random.nextGaussian();
    double y = 0.5 * random.nextGaussian();
    Geometry moved = geometry.copy();
    moved.apply(
        (Coordinate c) -> {
          c.x += x;
          c.y += y;
        });
    moved.geometryChanged();
    return moved;
  }
}
