package org.meadowmark.core.write.proposal;

/** Round numbers for bars and ticks: 1, 2 or 5 times a power of ten. */
final class RoundSteps {
  private RoundSteps() {}

  /** The largest round number that is not above a positive value. */
  static double atMost(double value) {
    double power = Math.pow(10, Math.floor(Math.log10(value)));
    for (int factor : new int[] {5, 2}) {
      if (factor * power <= value * (1 + 1e-9)) {
        return factor * power;
      }
    }
    return power;
  }
}
