package org.meadowmark.core.survey;

import java.math.BigDecimal;

/** Numbers in messages: no exponent, no needless zeros. */
final class PlainNumber {
  private PlainNumber() {}

  static String of(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
