package org.meadowmark.samples;

import java.util.SplittableRandom;

/** Random draws from a stream that is fixed by a seed and keys, the same on every machine. */
final class Draws {
  private final SplittableRandom random;

  private Draws(long state) {
    random = new SplittableRandom(state);
  }

  /** The stream of a seed and two keys, such as a purpose and a number. */
  static Draws of(long seed, long purpose, long number) {
    return new Draws(mix(mix(mix(seed) + purpose) + number));
  }

  /**
   * Scatters the bits of a number.
   *
   * <p>Finaliser of SplitMix64: Steele, Lea &amp; Flood (2014) <i>Fast splittable pseudorandom
   * number generators</i>, OOPSLA 2014, 453–472 (constants from memory).
   */
  static long mix(long value) {
    long z = value + 0x9e3779b97f4a7c15L;
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return z ^ (z >>> 31);
  }

  /** Uniform in [0, 1). */
  double uniform() {
    return (random.nextLong() >>> 11) * 0x1.0p-53;
  }

  double between(double low, double high) {
    return low + (high - low) * uniform();
  }

  int below(int bound) {
    return (int) (uniform() * bound);
  }

  boolean chance(double probability) {
    return uniform() < probability;
  }

  /** 1 or −1. */
  int sign() {
    return chance(0.5) ? 1 : -1;
  }

  /** Standard normal, by Box and Muller's transform. */
  double normal() {
    double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - uniform()));
    return radius * StrictMath.cos(2 * StrictMath.PI * uniform());
  }

  /** Exponential with a mean. */
  double exponential(double mean) {
    return -mean * StrictMath.log(1 - uniform());
  }

  /** Lognormal with a median, redrawn until it lies between two limits. */
  double lognormal(double median, double logDeviation, double lowest, double highest) {
    while (true) {
      double value = median * StrictMath.exp(logDeviation * normal());
      if (value >= lowest && value <= highest) {
        return value;
      }
    }
  }
}
