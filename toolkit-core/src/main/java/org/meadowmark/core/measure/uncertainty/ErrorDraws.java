package org.meadowmark.core.measure.uncertainty;

import java.util.SplittableRandom;
import org.meadowmark.core.survey.PositionalAccuracy;

/**
 * The errors of one scar, each draw by itself: they depend on the seed, the scar's id and the
 * number of the draw, and on nothing else, neither on other scars nor on threads.
 *
 * <p>The width factor is lognormal with mean 1 and the stated coefficient of variation c: exp(sz −
 * s²/2) with s² = ln(1 + c²), z standard normal. The shift is normal in x and y, independent of
 * each other and of other scars. Normal deviates by the polar method of Marsaglia, G. & Bray, T. A.
 * (1964), <i>A convenient method for generating normal variables</i>, SIAM Review 6:260–264, from
 * SplitMix: Steele, G. L., Lea, D. & Flood, C. H. (2014), <i>Fast splittable pseudorandom number
 * generators</i>, OOPSLA. Elementary functions are those of {@link StrictMath}, so that every
 * machine draws the same.
 */
final class ErrorDraws {
  private static final long WIDTH = 0x9E6C63D0676A9A99L;
  private static final long POSITION = 0xD1342543DE82EF95L;

  private final long widthStream;
  private final long positionStream;
  private final double logDeviation;
  private final double deviationX;
  private final double deviationY;

  ErrorDraws(UncertainScar scar, ErrorModel model) {
    long own = mix(model.seed() ^ mix(hash(scar.id())));
    positionStream = mix(own ^ POSITION);
    widthStream =
        scar.sharedWidthError()
            .map(name -> mix(mix(model.seed() + WIDTH) ^ mix(hash(name))))
            .orElseGet(() -> mix(own ^ WIDTH));
    double variation = scar.widthVariation();
    logDeviation = StrictMath.sqrt(StrictMath.log1p(variation * variation));
    deviationX =
        model.position().map(PositionalAccuracy::rmseXMetres).orElse(0.0) * scar.lengthFactor();
    deviationY =
        model.position().map(PositionalAccuracy::rmseYMetres).orElse(0.0) * scar.lengthFactor();
  }

  boolean shifts() {
    return deviationX > 0 || deviationY > 0;
  }

  /** Larger of the two standard deviations of the shift. */
  double shiftDeviation() {
    return Math.max(deviationX, deviationY);
  }

  /** Width factor that is exceeded when its normal deviate is above {@code z}. */
  double factorAt(double z) {
    return StrictMath.exp(logDeviation * z - logDeviation * logDeviation / 2);
  }

  /** Width factor of a draw. */
  double widthFactor(int draw) {
    if (logDeviation == 0) {
      return 1;
    }
    return factorAt(normalPair(widthStream, draw).first);
  }

  /** Writes the shift of a draw. */
  void shift(int draw, double[] x, double[] y, int place) {
    if (!shifts()) {
      x[place] = 0;
      y[place] = 0;
      return;
    }
    NormalPair pair = normalPair(positionStream, draw);
    x[place] = deviationX * pair.first;
    y[place] = deviationY * pair.second;
  }

  private record NormalPair(double first, double second) {}

  private static NormalPair normalPair(long stream, int draw) {
    SplittableRandom random = new SplittableRandom(mix(stream ^ mix(draw + 1L)));
    while (true) {
      double x = 2 * random.nextDouble() - 1;
      double y = 2 * random.nextDouble() - 1;
      double square = x * x + y * y;
      if (square < 1 && square > 0) {
        double scale = StrictMath.sqrt(-2 * StrictMath.log(square) / square);
        return new NormalPair(x * scale, y * scale);
      }
    }
  }

  /** FNV-1a over the characters. */
  private static long hash(String text) {
    long hash = 0xCBF29CE484222325L;
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * 0x100000001B3L;
    }
    return hash;
  }

  /** Finaliser of SplitMix. */
  private static long mix(long value) {
    long z = value;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
