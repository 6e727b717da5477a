package org.meadowmark.core.measure.uncertainty;

import org.meadowmark.core.survey.PositionalAccuracy;

/**
 * The errors of one scar, each draw by itself: they depend on the seed, the scar's id and the
 * number of the draw, and on nothing else, neither on other scars nor on threads.
 *
 * <p>The width factor is that of {@link WidthError}. The shift is normal in x and y, independent of
 * each other and of other scars.
 */
final class ErrorDraws {
  private static final long POSITION = 0xD1342543DE82EF95L;

  private final WidthError width;
  private final long positionStream;
  private final double deviationX;
  private final double deviationY;

  ErrorDraws(UncertainScar scar, ErrorModel model) {
    positionStream = DrawStream.mix(WidthError.ownStream(model.seed(), scar.id()) ^ POSITION);
    width =
        scar.sharedWidthError()
            .map(name -> WidthError.shared(model.seed(), name, scar.widthVariation()))
            .orElseGet(() -> WidthError.own(model.seed(), scar.id(), scar.widthVariation()));
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
    return width.factorAt(z);
  }

  /** Width factor of a draw. */
  double widthFactor(int draw) {
    return width.factor(draw);
  }

  /** Writes the shift of a draw. */
  void shift(int draw, double[] x, double[] y, int place) {
    if (!shifts()) {
      x[place] = 0;
      y[place] = 0;
      return;
    }
    DrawStream.NormalPair pair = DrawStream.normalPair(positionStream, draw);
    x[place] = deviationX * pair.first();
    y[place] = deviationY * pair.second();
  }
}
