package org.meadowmark.core.change.rates;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.rates.EdgeRateFit.Outcome;

/**
 * Fits the rate at which edges move from scars that were seen open at one survey and gone at
 * another.
 *
 * <p>The rate e of a scar is lognormal; a scar whose edges had to go d, open at time s and gone at
 * t, has d/t ≤ e &lt; d/s (interval-censored; one never seen gone has e &lt; d/s). Maximum
 * likelihood by Newton's method in a = μ/σ and b = 1/σ, in which the log-likelihood is concave
 * (Burridge 1981, Journal of the Royal Statistical Society B 43:41–45, from memory). Interval of
 * the median exp(μ): profile likelihood, where 2·(ℓ_max − ℓ) is the χ² limit at one degree of
 * freedom (Meeker &amp; Escobar 1995, The American Statistician 49:48–53, from memory).
 *
 * <p>A scar counts once, from its first sight. Time linear in scars, and in a few thousand steps
 * over bounds that differ.
 */
public final class EdgeRateFitter {
  /** With fewer scars the likelihood says nothing that holds. */
  static final int FEWEST = 10;

  private static final int STEPS = 200;
  private static final double CONVERGED = 1e-9;
  private static final double NO_SPREAD = 1e4;
  private static final double FARTHEST_LOG = Math.log(1_000);
  private static final double LOWEST_LOG_B = -8;
  private static final double HIGHEST_LOG_B = 8;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  private final String species;
  private final List<ClosingObservation> scars;
  private final double confidence;
  private final double[] logLow;
  private final double[] logHigh;
  private final int[] times;

  /** Logarithms of the bounds of a rate. */
  private record Bounds(double low, double high) {
    static final Comparator<Bounds> ORDER =
        Comparator.comparingDouble(Bounds::low).thenComparingDouble(Bounds::high);
  }

  private EdgeRateFitter(String species, List<ClosingObservation> scars, double confidence) {
    this.species = species;
    this.scars = scars;
    this.confidence = confidence;
    // Widths come in centimetres and surveys on few days, so most scars share their bounds.
    Map<Bounds, Integer> counts = new TreeMap<>(Bounds.ORDER);
    for (ClosingObservation scar : scars) {
      counts.merge(
          new Bounds(Math.log(scar.slowestMetresPerYear()), Math.log(scar.fastestMetresPerYear())),
          1,
          Integer::sum);
    }
    logLow = counts.keySet().stream().mapToDouble(Bounds::low).toArray();
    logHigh = counts.keySet().stream().mapToDouble(Bounds::high).toArray();
    times = counts.values().stream().mapToInt(Integer::intValue).toArray();
  }

  /**
   * Fits the scars of a species.
   *
   * @param species key, or empty
   * @param scars its scars
   * @param confidence share of intervals that are to hold the truth
   * @return the rate with its interval, or why the scars give none
   */
  public static EdgeRateFit fit(String species, List<ClosingObservation> scars, double confidence) {
    return new EdgeRateFitter(species, scars, confidence).fit();
  }

  private EdgeRateFit fit() {
    int closed = (int) scars.stream().filter(ClosingObservation::isClosed).count();
    double needed =
        scars.stream().mapToDouble(ClosingObservation::slowestMetresPerYear).max().orElse(0);
    double allowed =
        scars.stream().mapToDouble(ClosingObservation::fastestMetresPerYear).min().orElse(0);
    if (scars.size() < FEWEST) {
      return without(closed, Outcome.TOO_FEW);
    }
    if (Double.isInfinite(allowed)) {
      return without(closed, Outcome.ALL_CLOSED);
    }
    if (closed == 0) {
      return without(closed, Outcome.NONE_CLOSED);
    }
    if (needed < allowed) {
      return new EdgeRateFit(
          species,
          scars.size(),
          closed,
          Outcome.PARTED,
          OptionalDouble.of(Math.sqrt(needed * allowed)),
          Optional.of(new Interval(needed, allowed)),
          OptionalDouble.empty());
    }
    double[] best = maximum();
    if (!(best[1] > 0) || best[1] > NO_SPREAD) {
      return without(closed, Outcome.NO_LIMITS);
    }
    double median = best[0] / best[1];
    double bound =
        logLikelihood(best[0], best[1])
            - ChiSquaredDistribution.of(1).inverseCumulativeProbability(confidence) / 2;
    OptionalDouble low = limit(median, -1, bound);
    OptionalDouble high = limit(median, 1, bound);
    boolean limited = low.isPresent() && high.isPresent();
    return new EdgeRateFit(
        species,
        scars.size(),
        closed,
        limited ? Outcome.FITTED : Outcome.NO_LIMITS,
        OptionalDouble.of(Math.exp(median)),
        limited
            ? Optional.of(new Interval(Math.exp(low.getAsDouble()), Math.exp(high.getAsDouble())))
            : Optional.empty(),
        OptionalDouble.of(1 / best[1]));
  }

  private EdgeRateFit without(int closed, Outcome outcome) {
    return new EdgeRateFit(
        species,
        scars.size(),
        closed,
        outcome,
        OptionalDouble.empty(),
        Optional.empty(),
        OptionalDouble.empty());
  }

  /** Newton's method with halved steps. */
  private double[] maximum() {
    double b = 1;
    double a = middleLog();
    double value = logLikelihood(a, b);
    for (int step = 0; step < STEPS; step++) {
      double[] d = derivatives(a, b);
      double determinant = d[2] * d[4] - d[3] * d[3];
      if (!(determinant > 0)) {
        return new double[] {Double.NaN, Double.NaN};
      }
      double da = (d[3] * d[1] - d[4] * d[0]) / determinant;
      double db = (d[3] * d[0] - d[2] * d[1]) / determinant;
      double length = 1;
      double next = logLikelihood(a + da, b + db);
      while (!(b + length * db > 0 && next >= value) && length > CONVERGED) {
        length /= 2;
        next = logLikelihood(a + length * da, b + length * db);
      }
      if (!(next >= value)) {
        break;
      }
      a += length * da;
      b += length * db;
      boolean settled =
          Math.abs(da) <= CONVERGED * (1 + Math.abs(a)) && Math.abs(db) <= CONVERGED * (1 + b);
      value = next;
      if (settled || b > NO_SPREAD) {
        break;
      }
    }
    return new double[] {a, b};
  }

  private double middleLog() {
    double sum = 0;
    for (int i = 0; i < logLow.length; i++) {
      double middle =
          Double.isInfinite(logLow[i])
              ? logHigh[i]
              : Double.isInfinite(logHigh[i]) ? logLow[i] : (logLow[i] + logHigh[i]) / 2;
      sum += times[i] * middle;
    }
    return sum / scars.size();
  }

  private double logLikelihood(double a, double b) {
    double sum = 0;
    for (int i = 0; i < logLow.length; i++) {
      sum += times[i] * Math.log(chance(a - b * logLow[i], a - b * logHigh[i]));
    }
    return sum;
  }

  /** Φ(upper) − Φ(lower) without cancelling in the upper tail. */
  private static double chance(double upper, double lower) {
    NormalDistribution normal = NormalDistribution.of(0, 1);
    return lower > 0
        ? normal.survivalProbability(lower) - normal.survivalProbability(upper)
        : normal.cumulativeProbability(upper) - normal.cumulativeProbability(lower);
  }

  /** First derivatives by a and b, and second by aa, ab, bb. */
  private double[] derivatives(double a, double b) {
    NormalDistribution normal = NormalDistribution.of(0, 1);
    double[] sums = new double[5];
    for (int i = 0; i < logLow.length; i++) {
      double upper = a - b * logLow[i];
      double lower = a - b * logHigh[i];
      double p = chance(upper, lower);
      // An end that is not there has no density, and its logarithm must not make 0 × ∞.
      double x = Double.isInfinite(logLow[i]) ? 0 : logLow[i];
      double y = Double.isInfinite(logHigh[i]) ? 0 : logHigh[i];
      double f = Double.isInfinite(upper) ? 0 : normal.density(upper) / p;
      double g = Double.isInfinite(lower) ? 0 : normal.density(lower) / p;
      double fz = f == 0 ? 0 : f * upper;
      double gz = g == 0 ? 0 : g * lower;
      double da = f - g;
      double db = y * g - x * f;
      sums[0] += times[i] * da;
      sums[1] += times[i] * db;
      sums[2] += times[i] * (gz - fz - da * da);
      sums[3] += times[i] * (x * fz - y * gz - da * db);
      sums[4] += times[i] * (y * y * gz - x * x * fz - db * db);
    }
    return sums;
  }

  /** Where the profile of the median falls below the bound; empty if it does not within reach. */
  private OptionalDouble limit(double median, int direction, double bound) {
    double inside = median;
    double outside = median;
    double step = 0.05;
    do {
      inside = outside;
      outside += direction * step;
      step *= 1.5;
      if (Math.abs(outside - median) > FARTHEST_LOG) {
        return OptionalDouble.empty();
      }
    } while (profile(outside) >= bound);
    while (Math.abs(outside - inside) > CONVERGED) {
      double middle = (inside + outside) / 2;
      if (profile(middle) >= bound) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return OptionalDouble.of((inside + outside) / 2);
  }

  /** Largest log-likelihood with a given log median, by golden section over ln b. */
  private double profile(double median) {
    double low = LOWEST_LOG_B;
    double high = HIGHEST_LOG_B;
    double left = high - GOLDEN * (high - low);
    double right = low + GOLDEN * (high - low);
    double atLeft = along(median, left);
    double atRight = along(median, right);
    while (high - low > 1e-7) {
      if (atLeft >= atRight) {
        high = right;
        right = left;
        atRight = atLeft;
        left = high - GOLDEN * (high - low);
        atLeft = along(median, left);
      } else {
        low = left;
        left = right;
        atLeft = atRight;
        right = low + GOLDEN * (high - low);
        atRight = along(median, right);
      }
    }
    return Math.max(atLeft, atRight);
  }

  private double along(double median, double logB) {
    double b = Math.exp(logB);
    double value = logLikelihood(b * median, b);
    return Double.isNaN(value) ? Double.NEGATIVE_INFINITY : value;
  }
}
