package org.meadowmark.core.change.effect;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;
import org.meadowmark.core.change.Interval;

/**
 * Rate of new scars beside marks, after over before, divided by the same of the controls: 1 where
 * the marks changed nothing, 0.4 where they cut new scars by 60 %.
 *
 * <p>R = Σ seen after / Σ expected, where a group's expected metres are its rate before × the
 * controls' rate after / before × its exposure after. The variance of ln R is that of the jackknife
 * over segments, marked and control ones apart: (n − 1)/n·Σ(θ₍₋ᵢ₎ − mean)² (Efron &amp; Stein 1981,
 * Annals of Statistics 9:586–596, from memory), with Student's t at the degrees of freedom of
 * Satterthwaite. So segments that vary more than chance, or whose scars come in groups, widen it.
 *
 * @param ratio R
 * @param logVariance variance of ln R; empty where it cannot be told
 * @param degreesOfFreedom for the interval
 */
record RatioOfRatios(double ratio, OptionalDouble logVariance, double degreesOfFreedom) {

  /** The ratio; empty where the controls, or the marks before, have no new scar. */
  static Optional<RatioOfRatios> of(Design design) {
    RatioSums sums = new RatioSums(design, design.labels());
    double ratio = sums.ratio();
    if (!Double.isFinite(ratio)) {
      return Optional.empty();
    }
    IntPredicate isControl = i -> design.labels()[i] == Design.CONTROL;
    IntToDoubleFunction without = i -> Math.log(sums.ratioWithout(i));
    double marked = jackknife(without, isControl.negate(), design);
    double control = jackknife(without, isControl, design);
    double variance = marked + control;
    if (!(variance > 0) || !Double.isFinite(variance)) {
      return Optional.of(new RatioOfRatios(ratio, OptionalDouble.empty(), 0));
    }
    double degrees =
        variance
            * variance
            / (marked * marked / (design.marked() - 1)
                + control * control / (design.controls() - 1));
    return Optional.of(new RatioOfRatios(ratio, OptionalDouble.of(variance), degrees));
  }

  private static double jackknife(IntToDoubleFunction without, IntPredicate in, Design design) {
    double[] values =
        IntStream.range(0, design.segments()).filter(in).mapToDouble(without).toArray();
    if (values.length < 2) {
      return Double.NaN;
    }
    double mean =
        IntStream.range(0, values.length).mapToDouble(i -> values[i]).average().orElseThrow();
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return squares * (values.length - 1) / values.length;
  }

  /** Interval of the ratio; empty where no variance can be told. */
  Optional<Interval> interval(double confidence) {
    if (logVariance.isEmpty() || !(ratio > 0)) {
      return Optional.empty();
    }
    double half =
        TDistribution.of(degreesOfFreedom).inverseSurvivalProbability((1 - confidence) / 2)
            * Math.sqrt(logVariance.getAsDouble());
    return Optional.of(new Interval(ratio * Math.exp(-half), ratio * Math.exp(half)));
  }
}
