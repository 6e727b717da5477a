package org.meadowmark.core.check;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Writes numbers in findings: four significant digits at least, no exponent, no idle zeros. */
final class Figures {
  private static final int SIGNIFICANT = 4;

  private Figures() {}

  static String plain(double value) {
    if (!Double.isFinite(value) || value == 0) {
      return value == 0 ? "0" : Double.toString(value);
    }
    BigDecimal exact = BigDecimal.valueOf(value);
    int wholeDigits = exact.precision() - exact.scale();
    MathContext digits =
        new MathContext(Math.max(SIGNIFICANT, wholeDigits), RoundingMode.HALF_EVEN);
    return exact.round(digits).stripTrailingZeros().toPlainString();
  }

  static String metres(double value) {
    return plain(value) + " m";
  }

  static String squareMetres(double value) {
    return plain(value) + " m²";
  }
}
