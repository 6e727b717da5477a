package org.meadowmark.core.change;

import org.meadowmark.core.survey.PositionalAccuracy;

/**
 * How far apart two surveys may map the same thing.
 *
 * <p>Errors of two surveys that were made apart are independent, so they add in squares, axis by
 * axis: RMSE² = RMSE₁² + RMSE₂². The distance that holds 95 % of the differences follows from the
 * sum by the formula of FGDC-STD-007.3-1998 (see {@link PositionalAccuracy}); where the axes differ
 * too much for it, the larger error is taken for both, which is the cautious side.
 */
public final class CombinedAccuracy {
  private CombinedAccuracy() {}

  /**
   * {@return error of the difference between two surveys' positions}
   *
   * @param one accuracy of one survey
   * @param other accuracy of the other, made apart from the first
   */
  public static PositionalAccuracy of(PositionalAccuracy one, PositionalAccuracy other) {
    return new PositionalAccuracy(
        Math.hypot(one.rmseXMetres(), other.rmseXMetres()),
        Math.hypot(one.rmseYMetres(), other.rmseYMetres()));
  }

  /**
   * {@return distance within which two surveys map the same point in 95 % of cases}
   *
   * @param one accuracy of one survey
   * @param other accuracy of the other
   * @param leastMetres what it is at least, for surveys that state no error at all
   */
  public static double toleranceMetres(
      PositionalAccuracy one, PositionalAccuracy other, double leastMetres) {
    PositionalAccuracy both = of(one, other);
    if (!both.hasAccuracy95()) {
      double larger = Math.max(both.rmseXMetres(), both.rmseYMetres());
      both = new PositionalAccuracy(larger, larger);
    }
    return Math.max(leastMetres, both.accuracy95Metres());
  }
}
