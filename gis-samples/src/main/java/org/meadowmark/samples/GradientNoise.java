package org.meadowmark.samples;

/**
 * Smooth noise over the plane, between about −1 and 1.
 *
 * <p>Gradient noise with a quintic fade: Perlin (2002) <i>Improving noise</i>, ACM Transactions on
 * Graphics 21:681–682.
 */
final class GradientNoise {
  private static final int DIRECTIONS = 256;
  private static final double[] COSINES = new double[DIRECTIONS];
  private static final double[] SINES = new double[DIRECTIONS];
  private static final double TO_UNIT = 1.5;

  static {
    for (int i = 0; i < DIRECTIONS; i++) {
      double angle = 2 * StrictMath.PI * i / DIRECTIONS;
      COSINES[i] = StrictMath.cos(angle);
      SINES[i] = StrictMath.sin(angle);
    }
  }

  private final long seed;

  GradientNoise(long seed, long purpose) {
    this.seed = Draws.mix(Draws.mix(seed) + purpose);
  }

  /** One octave at a place given in wavelengths. */
  double at(double x, double y) {
    long column = floor(x);
    long row = floor(y);
    double dx = x - column;
    double dy = y - row;
    long left = Draws.mix(seed + column);
    long right = Draws.mix(seed + column + 1);
    double fadeX = fade(dx);
    double bottom = mixed(corner(left, row, dx, dy), corner(right, row, dx - 1, dy), fadeX);
    double top =
        mixed(corner(left, row + 1, dx, dy - 1), corner(right, row + 1, dx - 1, dy - 1), fadeX);
    return TO_UNIT * mixed(bottom, top, fade(dy));
  }

  /** Octaves of halving wavelength and strength, scaled to the same range. */
  double fractal(double x, double y, int octaves) {
    double sum = 0;
    double strength = 1;
    double total = 0;
    double frequency = 1;
    for (int octave = 0; octave < octaves; octave++) {
      sum += strength * at(x * frequency + 17.3 * octave, y * frequency - 9.1 * octave);
      total += strength;
      strength /= 2;
      frequency *= 2;
    }
    return sum / total;
  }

  /** Much quicker than the library's, which is asked for every corner of every octave. */
  private static long floor(double value) {
    long towardsZero = (long) value;
    return value < towardsZero ? towardsZero - 1 : towardsZero;
  }

  private static double corner(long column, long row, double dx, double dy) {
    int direction = (int) (Draws.mix(column + row) >>> 56);
    return COSINES[direction] * dx + SINES[direction] * dy;
  }

  private static double fade(double t) {
    return t * t * t * (t * (6 * t - 15) + 10);
  }

  private static double mixed(double from, double to, double share) {
    return from + (to - from) * share;
  }
}
