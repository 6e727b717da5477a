package org.meadowmark.core.measure.uncertainty;

/**
 * Factors that a width is wrong by: lognormal with mean 1 and the stated coefficient of variation
 * c, exp(sz − s²/2) with s² = ln(1 + c²), z standard normal. A factor depends on the seed, a name
 * and the number of the draw, and on nothing else. Immutable.
 */
public final class WidthError {
  private static final long WIDTH = 0x9E6C63D0676A9A99L;

  private final long stream;
  private final double logDeviation;

  private WidthError(long stream, double variation) {
    this.stream = stream;
    this.logDeviation = StrictMath.sqrt(StrictMath.log1p(variation * variation));
  }

  /**
   * {@return the error of one thing by itself}
   *
   * @param seed seed of everything that is drawn
   * @param id its id
   * @param variation coefficient of variation, 0 or more
   */
  public static WidthError own(long seed, String id, double variation) {
    return new WidthError(DrawStream.mix(ownStream(seed, id) ^ WIDTH), variation);
  }

  /**
   * {@return the error of all things that share a default width}
   *
   * @param seed seed of everything that is drawn
   * @param name what they share, such as the cause of scars
   * @param variation coefficient of variation, 0 or more
   */
  public static WidthError shared(long seed, String name, double variation) {
    return new WidthError(
        DrawStream.mix(DrawStream.mix(seed + WIDTH) ^ DrawStream.hash(name)), variation);
  }

  static long ownStream(long seed, String id) {
    return DrawStream.mix(seed ^ DrawStream.mix(DrawStream.hash(id)));
  }

  /** Factor that is exceeded when its normal deviate is above {@code z}. */
  double factorAt(double z) {
    return StrictMath.exp(logDeviation * z - logDeviation * logDeviation / 2);
  }

  /**
   * {@return factor that the width is multiplied by in a draw; 1 where the coefficient of variation
   * is 0}
   *
   * @param draw number of the draw, from 0
   */
  public double factor(int draw) {
    return logDeviation == 0 ? 1 : factorAt(DrawStream.normalPair(stream, draw).first());
  }
}
