package org.meadowmark.core.partition;

import java.util.Locale;
import java.util.Random;
import org.meadowmark.core.TestSurvey;

/** Invented beds in clumps, some near each other and some far apart, with scars in and off them. */
final class ScatteredBeds {
  private static final double CLUMP_SPACING = 400;
  private static final double CELL = 45;

  private ScatteredBeds() {}

  /**
   * A survey with management areas that cut beds.
   *
   * @param clumps number of clumps, a few cells of beds each
   */
  static TestSurvey of(long seed, int clumps, int scarsPerClump) {
    Random random = new Random(seed);
    TestSurvey survey =
        new TestSurvey()
            .draws(40)
            .positionRmse(0.4)
            .area("north", TestSurvey.box(-50, 60, 100_000, 300))
            .area("east", TestSurvey.box(CLUMP_SPACING * clumps / 2 + 31, -100, 100_000, 300));
    int bed = 0;
    int scar = 0;
    for (int clump = 0; clump < clumps; clump++) {
      double x0 = clump * CLUMP_SPACING;
      for (int column = 0; column < 4; column++) {
        for (int row = 0; row < 3; row++) {
          if (random.nextInt(4) == 0) {
            continue;
          }
          double x = x0 + CELL * column;
          double y = CELL * row;
          // Some touch the next one, some are a few metres from it.
          double gap = random.nextInt(3) == 0 ? 0 : 0.5 + 8 * random.nextDouble();
          survey.bed(
              "b" + bed++,
              "POLYGON ((%s, %s, %s, %s, %s))"
                  .formatted(
                      point(x, y),
                      point(x + CELL - gap, y),
                      point(x + CELL - gap, y + CELL - gap),
                      point(x + 3 * random.nextDouble(), y + CELL - gap),
                      point(x, y)));
        }
      }
      for (int i = 0; i < scarsPerClump; i++) {
        double x = x0 - 40 + 260 * random.nextDouble();
        double y = -40 + 220 * random.nextDouble();
        double heading = 2 * Math.PI * random.nextDouble();
        StringBuilder line = new StringBuilder(point(x, y));
        for (int step = 0; step < 1 + random.nextInt(4); step++) {
          heading += random.nextGaussian() / 4;
          double length = 3 + 25 * random.nextDouble();
          x += length * Math.cos(heading);
          y += length * Math.sin(heading);
          line.append(", ").append(point(x, y));
        }
        String id = "s" + (scar++ * 7919 % 100_003);
        if (i % 3 == 0) {
          survey.defaultScar(id, "LINESTRING (" + line + ")", 0.4);
        } else {
          survey.scar(id, "LINESTRING (" + line + ")", 0.1 + random.nextDouble());
        }
      }
      survey.scar(
          "hole" + clump, TestSurvey.box(x0 + 12, 20, x0 + 19, 26.5), 0);
    }
    // One far from everything.
    survey.scar("lost", "LINESTRING (50 5000, 60 5020)", 0.5);
    return survey;
  }

  private static String point(double x, double y) {
    return String.format(Locale.ROOT, "%.3f %.3f", x, y);
  }
}
