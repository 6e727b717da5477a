package org.meadowmark.core.measure.uncertainty;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.apache.commons.statistics.descriptive.Quantile;
import org.apache.commons.statistics.descriptive.Variance;
import org.meadowmark.core.measure.uncertainty.DamageInterval.ClassShare;
import org.meadowmark.core.measure.uncertainty.DamageInterval.ErrorSource;
import org.meadowmark.core.measure.uncertainty.DamageInterval.Range;
import org.meadowmark.core.measure.uncertainty.DrawnArea.Errors;

/**
 * Makes intervals of drawn areas.
 *
 * <p>Quantiles are of type 7 of Hyndman, R. J. &amp; Fan, Y. (1996), <i>Sample quantiles in
 * statistical packages</i>, The American Statistician 50:361–365.
 */
public final class IntervalMaker {
  private static final double LOW = 0.05;
  private static final double HIGH = 0.95;

  private final ErrorModel model;
  private final List<String> classKeys;

  /**
   * Creates a maker.
   *
   * @param model what was drawn
   * @param classKeys severity classes, lightest first
   */
  public IntervalMaker(ErrorModel model, List<String> classKeys) {
    this.model = model;
    this.classKeys = List.copyOf(classKeys);
  }

  /**
   * The interval of a drawn area.
   *
   * @param pieces what the area is made of
   * @param surveyedSquareMetres surveyed area
   * @param classOfArea severity class of a scarred area
   * @return empty where nothing was surveyed: damage that is unknown has no interval
   */
  public Optional<DamageInterval> of(
      List<DrawnArea> pieces, double surveyedSquareMetres, DoubleFunction<String> classOfArea) {
    if (!(surveyedSquareMetres > 0)) {
      return Optional.empty();
    }
    DrawnArea area = DrawnArea.sum(pieces, model.draws());
    double[] all = draws(area, Errors.ALL);
    Range range = range(all);
    List<ClassShare> classes = classes(all, classOfArea);
    double width = variance(draws(area, Errors.WIDTH));
    double position = variance(draws(area, Errors.POSITION));
    boolean positionDrawn = model.position().isPresent();
    boolean varies = width + position > 0;
    return Optional.of(
        new DamageInterval(
            model.draws(),
            range,
            new Range(
                share(range.low(), surveyedSquareMetres),
                share(range.median(), surveyedSquareMetres),
                share(range.high(), surveyedSquareMetres)),
            classes,
            likeliest(classes),
            positionDrawn,
            positionDrawn && varies
                ? OptionalDouble.of(width / (width + position))
                : OptionalDouble.empty(),
            varies
                ? Optional.of(width >= position ? ErrorSource.WIDTH : ErrorSource.POSITION)
                : Optional.empty()));
  }

  private double[] draws(DrawnArea area, Errors errors) {
    double[] draws = new double[model.draws()];
    for (int draw = 0; draw < draws.length; draw++) {
      draws[draw] = area.area(errors, draw);
    }
    return draws;
  }

  private static Range range(double[] draws) {
    double[] found =
        Quantile.withDefaults()
            .withCopy(true)
            .with(Quantile.EstimationMethod.HF7)
            .evaluate(draws, LOW, 0.5, HIGH);
    return new Range(found[0], found[1], found[2]);
  }

  private static double variance(double[] draws) {
    return draws.length < 2 ? 0 : Variance.of(draws).getAsDouble();
  }

  private static double share(double area, double surveyed) {
    return Math.min(1, area / surveyed);
  }

  private List<ClassShare> classes(double[] draws, DoubleFunction<String> classOfArea) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    classKeys.forEach(key -> counts.put(key, 0));
    for (double draw : draws) {
      counts.merge(classOfArea.apply(draw), 1, Integer::sum);
    }
    List<ClassShare> classes = new ArrayList<>();
    counts.forEach((key, count) -> classes.add(new ClassShare(key, (double) count / draws.length)));
    return classes;
  }

  private static String likeliest(List<ClassShare> classes) {
    ClassShare most = classes.get(0);
    for (ClassShare candidate : classes) {
      if (candidate.drawShare() > most.drawShare()) {
        most = candidate;
      }
    }
    return most.severityKey();
  }
}
