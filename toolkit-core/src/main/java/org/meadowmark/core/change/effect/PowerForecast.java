package org.meadowmark.core.change.effect;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Chance of detecting a drop after further seasons.
 *
 * <p>New scar metres are taken as compound Poisson with event size φ = Σl²/Σl, and vary ψ times as
 * much, ψ being what the jackknife variance of ln R is to that of pure chance now, at least 1. Then
 * Var(ln R) = ψφ·(1/b_M + 1/b_C + 1/a_M + 1/a_C) with b and a the metres before and after beside
 * marks and controls; further seasons of the mean length make a_M and a_C larger, the seasons
 * before stay as few as they are. Power is that of Student's t at −ln(1 − drop)/√Var, by the normal
 * approximation to the noncentral t distribution (Abramowitz &amp; Stegun 1964, 26.7.10, from
 * memory).
 *
 * @param drop drop to detect, in 0–1
 * @param target power asked for
 * @param points power by further seasons, from 0 on
 * @param seasonsNeeded further seasons from which the power is reached; empty where none within the
 *     limit is enough
 * @param bestPower power that no number of seasons can pass, since the seasons before stay few
 * @param smallestDropNow smallest drop that the seasons there are would detect with the power asked
 *     for; empty where none is
 * @param excessVariation ψ
 */
public record PowerForecast(
    double drop,
    double target,
    List<Point> points,
    OptionalInt seasonsNeeded,
    double bestPower,
    OptionalDouble smallestDropNow,
    double excessVariation) {
  private static final double CLOSEST_TO_ONE = 0.999;
  private static final int HALVINGS = 50;

  /**
   * Power after further seasons.
   *
   * @param furtherSeasons seasons from now on
   * @param power chance of detecting the drop
   */
  public record Point(int furtherSeasons, double power) {}

  /**
   * Keeps a copy of the points.
   *
   * @param drop drop to detect, in 0–1
   * @param target power asked for
   * @param points power by further seasons, from 0 on
   * @param seasonsNeeded further seasons from which the power is reached; empty where none within
   *     the limit is enough
   * @param bestPower power that no number of seasons can pass, since the seasons before stay few
   * @param smallestDropNow smallest drop that the seasons there are would detect with the power
   *     asked for; empty where none is
   * @param excessVariation ψ
   * @throws NullPointerException if the list or a point in it is null
   */
  public PowerForecast {
    points = List.copyOf(points);
  }

  /**
   * What the forecast goes on.
   *
   * @param marked sums beside marks
   * @param controls sums beside controls
   * @param markedExposurePerSeason exposure times years that a further season adds beside marks
   * @param controlExposurePerSeason the same beside controls
   * @param eventMetres φ
   * @param ratio ratio with its variance now
   */
  record Basis(
      Amounts marked,
      Amounts controls,
      double markedExposurePerSeason,
      double controlExposurePerSeason,
      double eventMetres,
      RatioOfRatios ratio) {

    boolean isComplete() {
      return marked.metresBefore() > 0
          && controls.metresBefore() > 0
          && controls.metresAfter() > 0
          && eventMetres > 0
          && ratio.logVariance().isPresent();
    }

    private double expectedRate() {
      return marked.rateBefore() * controls.rateAfter() / controls.rateBefore();
    }

    double excess() {
      double seen =
          marked.metresAfter() > 0 ? marked.metresAfter() : expectedRate() * marked.exposureAfter();
      double chance =
          eventMetres
              * (1 / marked.metresBefore()
                  + 1 / controls.metresBefore()
                  + 1 / seen
                  + 1 / controls.metresAfter());
      return Math.max(1, ratio.logVariance().orElseThrow() / chance);
    }

    double power(double drop, double furtherSeasons, double excess, double confidence) {
      double after = marked.exposureAfter() + furtherSeasons * markedExposurePerSeason;
      double controlAfter = controls.exposureAfter() + furtherSeasons * controlExposurePerSeason;
      double variance =
          excess
              * eventMetres
              * (1 / marked.metresBefore()
                  + 1 / controls.metresBefore()
                  + 1 / ((1 - drop) * expectedRate() * after)
                  + 1 / (controls.rateAfter() * controlAfter));
      return chance(-Math.log1p(-drop) / Math.sqrt(variance), ratio.degreesOfFreedom(), confidence);
    }
  }

  /** Chance that Student's t, shifted, lies above its upper limit at a confidence. */
  static double chance(double shift, double degrees, double confidence) {
    double limit = TDistribution.of(degrees).inverseSurvivalProbability((1 - confidence) / 2);
    double z =
        (limit * (1 - 1 / (4 * degrees)) - shift) / Math.sqrt(1 + limit * limit / (2 * degrees));
    return NormalDistribution.of(0, 1).survivalProbability(z);
  }

  static PowerForecast of(Basis basis, EffectSettings settings) {
    double excess = basis.excess();
    double confidence = settings.confidence();
    List<Point> points = new ArrayList<>();
    OptionalInt needed = OptionalInt.empty();
    for (int further = 0; further <= settings.mostFurtherSeasons(); further++) {
      double power = basis.power(settings.drop(), further, excess, confidence);
      points.add(new Point(further, power));
      if (needed.isEmpty() && power >= settings.power()) {
        needed = OptionalInt.of(further);
      }
    }
    return new PowerForecast(
        settings.drop(),
        settings.power(),
        points,
        needed,
        basis.power(settings.drop(), Double.POSITIVE_INFINITY, excess, confidence),
        smallestDrop(basis, excess, settings),
        excess);
  }

  private static OptionalDouble smallestDrop(Basis basis, double excess, EffectSettings settings) {
    double best = 0;
    double high = 0;
    // A drop near 1 leaves so few scars that the logarithm's variance takes over: the top is
    // inside.
    for (double drop = 0.01; drop < CLOSEST_TO_ONE; drop += 0.01) {
      double power = basis.power(drop, 0, excess, settings.confidence());
      if (power >= settings.power()) {
        high = drop;
        break;
      }
      best = drop;
    }
    if (high == 0) {
      return OptionalDouble.empty();
    }
    double low = best;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (basis.power(middle, 0, excess, settings.confidence()) >= settings.power()) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return OptionalDouble.of(high);
  }
}
