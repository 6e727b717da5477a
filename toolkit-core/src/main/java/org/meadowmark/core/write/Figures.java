package org.meadowmark.core.write;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import org.meadowmark.core.model.Hectare;

/**
 * Numbers for people: a point for decimals, a narrow no-break space between groups of three digits,
 * three significant digits (two below 1) but never fewer than the whole number, and the unit after
 * a no-break space. The same in every locale.
 */
public final class Figures {
  /** Narrow no-break space: between groups of digits. */
  public static final char THIN_SPACE = '\u202F';

  /** No-break space: between a number and its unit. */
  public static final char UNIT_SPACE = '\u00A0';

  private static final int SIGNIFICANT = 3;
  private static final int SIGNIFICANT_BELOW_ONE = 2;
  private static final int GROUP = 3;
  private static final int MOST_DECIMALS = 6;
  private static final double METRES_PER_KILOMETRE = 1_000;
  private static final double PERCENT = 100;
  private static final String NONE = "–";

  private Figures() {}

  /**
   * {@return a whole number: {@code 12 345}}
   *
   * @param value a count, or a difference of two
   */
  public static String count(long value) {
    return grouped(BigDecimal.valueOf(value));
  }

  /**
   * {@return a count with its noun}
   *
   * @param value how many there are
   * @param one noun in the singular
   * @param many noun in the plural
   */
  public static String count(long value, String one, String many) {
    return count(value) + UNIT_SPACE + (value == 1 ? one : many);
  }

  /**
   * {@return a number as {@code 12 345}, {@code 12.3}, {@code 1.23} or {@code 0.012}}
   *
   * @param value a value without a unit, or in a unit that stands elsewhere; a dash is shown where
   *     it is not finite
   */
  public static String number(double value) {
    if (!Double.isFinite(value)) {
      return NONE;
    }
    return value == 0 ? "0" : grouped(rounded(value));
  }

  /**
   * {@return a number with the digits that are shown of it}
   *
   * @param value a finite number
   */
  public static BigDecimal rounded(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    int digits = Math.abs(value) < 1 ? SIGNIFICANT_BELOW_ONE : SIGNIFICANT;
    BigDecimal significant = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
    int decimals = Math.min(MOST_DECIMALS, digits - significant.precision() + significant.scale());
    return exact.setScale(Math.max(0, decimals), RoundingMode.HALF_EVEN);
  }

  /**
   * {@return a length, in kilometres from 1 km up}
   *
   * @param metres the length; a dash is shown where it is not finite
   */
  public static String length(double metres) {
    return Math.abs(metres) < METRES_PER_KILOMETRE
        ? withUnit(metres, "m")
        : withUnit(metres / METRES_PER_KILOMETRE, "km");
  }

  /**
   * {@return an area, in hectares from 1 ha up}
   *
   * @param squareMetres the area; a dash is shown where it is not finite
   */
  public static String area(double squareMetres) {
    return Math.abs(squareMetres) < Hectare.SQUARE_METRES
        ? withUnit(squareMetres, "m²")
        : hectares(squareMetres);
  }

  /**
   * {@return an area in hectares}
   *
   * @param squareMetres the area; a dash is shown where it is not finite
   */
  public static String hectares(double squareMetres) {
    return withUnit(hectareValue(squareMetres), "ha");
  }

  /**
   * {@return square metres as a number of hectares}
   *
   * @param squareMetres the area, not rounded before or after
   */
  public static double hectareValue(double squareMetres) {
    return squareMetres / Hectare.SQUARE_METRES;
  }

  /**
   * {@return a share between 0 and 1 in percent, or a dash where it is not known}
   *
   * @param share the share, 0.25 for 25 %; empty where it is not known
   */
  public static String percent(OptionalDouble share) {
    return share.isPresent() ? percent(share.getAsDouble()) : NONE;
  }

  /**
   * {@return a share between 0 and 1 in percent}
   *
   * @param share the share, 0.25 for 25 %; above 0 and below 0.0001 it is shown as {@code < 0.01 %}
   */
  public static String percent(double share) {
    double percent = PERCENT * share;
    if (percent > 0 && percent < 0.01) {
      return "<" + UNIT_SPACE + "0.01" + UNIT_SPACE + "%";
    }
    return withUnit(percent, "%");
  }

  /**
   * {@return a length that was chosen, not measured: as it is, in metres}
   *
   * @param metres a setting; all its digits are shown
   * @throws NumberFormatException if it is not finite
   */
  public static String chosenLength(double metres) {
    return grouped(plain(metres)) + UNIT_SPACE + "m";
  }

  /**
   * {@return a share between 0 and 1 that was chosen, not measured: as it is, in percent}
   *
   * @param share a setting, 0.25 for 25 %; all its digits are shown
   * @throws NumberFormatException if it is not finite
   */
  public static String chosenPercent(double share) {
    return grouped(plain(share).movePointRight(2)) + UNIT_SPACE + "%";
  }

  /**
   * {@return a damage rate}
   *
   * @param metresPerHectare metres of scar line on a hectare of bed
   */
  public static String rate(double metresPerHectare) {
    return withUnit(metresPerHectare, "m/ha");
  }

  private static String withUnit(double value, String unit) {
    return number(value) + UNIT_SPACE + unit;
  }

  private static BigDecimal plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros();
  }

  private static String grouped(BigDecimal value) {
    String plain = value.abs().toPlainString();
    int point = plain.indexOf('.');
    int wholeEnd = point < 0 ? plain.length() : point;
    StringBuilder text = new StringBuilder(value.signum() < 0 ? "−" : "");
    for (int i = 0; i < wholeEnd; i++) {
      if (i > 0 && (wholeEnd - i) % GROUP == 0) {
        text.append(THIN_SPACE);
      }
      text.append(plain.charAt(i));
    }
    return text.append(plain.substring(wholeEnd)).toString();
  }
}
