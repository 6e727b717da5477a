package org.meadowmark.core.measure.uncertainty;

import java.util.SplittableRandom;

/**
 * Random numbers that depend on a stream and the number of a draw alone. Normal deviates by the
 * polar method of Marsaglia, G. & Bray, T. A. (1964), <i>A convenient method for generating normal
 * variables</i>, SIAM Review 6:260–264, from SplitMix: Steele, G. L., Lea, D. & Flood, C. H.
 * (2014), <i>Fast splittable pseudorandom number generators</i>, OOPSLA. Elementary functions are
 * those of {@link StrictMath}, so that every machine draws the same.
 */
final class DrawStream {
  record NormalPair(double first, double second) {}

  private DrawStream() {}

  static NormalPair normalPair(long stream, int draw) {
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
  static long hash(String text) {
    long hash = 0xCBF29CE484222325L;
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * 0x100000001B3L;
    }
    return hash;
  }

  /** Finaliser of SplitMix. */
  static long mix(long value) {
    long z = value;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
