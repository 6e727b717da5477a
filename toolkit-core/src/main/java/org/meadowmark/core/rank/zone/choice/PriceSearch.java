package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;

/**
 * Looks for the prices with the lowest upper bound by cutting planes (Kelley 1960, Journal of the
 * SIAM 8:703–712, from memory): each priced choice gives a plane under the bound as a function of
 * the prices; the next prices are where the highest plane is lowest.
 */
final class PriceSearch {
  private static final int MOST_TRIES = 60;
  private static final int NARROWINGS = 60;
  private static final double CLOSE_ENOUGH = 1e-9;

  /** Priced choices kept for bounds: the best ones. */
  private static final int KEPT = 4;

  private record Plane(double base, double alongMetres, double alongZones) {
    double at(double perMetre, double perZone) {
      return base + alongMetres * perMetre + alongZones * perZone;
    }
  }

  private final Forest forest;
  private final ZoneProblem problem;
  private final List<Plane> planes = new ArrayList<>();
  private final List<PricedForest> best = new ArrayList<>();

  private PriceSearch(Forest forest, ZoneProblem problem) {
    this.forest = forest;
    this.problem = problem;
  }

  /**
   * Priced forests with the lowest bounds, lowest first.
   *
   * @param each hears of every priced choice
   */
  static List<PricedForest> run(Forest forest, ZoneProblem problem, Consumer<PricedForest> each) {
    PriceSearch search = new PriceSearch(forest, problem);
    search.run(each);
    return search.best;
  }

  private void run(Consumer<PricedForest> each) {
    double highestPerMetre = 0;
    double total = 0;
    for (int i = 0; i < forest.core.size(); i++) {
      if (forest.core.lengths[i] > 0) {
        highestPerMetre = Math.max(highestPerMetre, forest.core.values[i] / forest.core.lengths[i]);
      }
      total += forest.core.values[i];
    }
    double highestPerZone = total;
    double perMetre = highestPerMetre / 2;
    double perZone = 0;
    for (int tried = 0; tried < MOST_TRIES; tried++) {
      PricedForest priced = new PricedForest(forest, new Prices(perMetre, perZone));
      each.accept(priced);
      keep(priced);
      double alongMetres = problem.limitMetres() - priced.chosenMetres();
      double alongZones = problem.mostZones() - priced.chosenZones();
      double bound = bound(priced);
      planes.add(
          new Plane(
              bound - alongMetres * perMetre - alongZones * perZone, alongMetres, alongZones));
      perMetre = lowest(0, highestPerMetre, price -> lowestOverZones(price, highestPerZone)[1]);
      double[] zone = lowestOverZones(perMetre, highestPerZone);
      perZone = zone[0];
      if (bound(best.get(0)) - zone[1] <= CLOSE_ENOUGH * bound(best.get(0))) {
        return;
      }
    }
  }

  private double bound(PricedForest priced) {
    return priced.upperBound(problem.limitMetres(), problem.mostZones());
  }

  private void keep(PricedForest priced) {
    best.add(priced);
    best.sort(Comparator.comparingDouble(this::bound));
    if (best.size() > KEPT) {
      best.remove(KEPT);
    }
  }

  private double[] lowestOverZones(double perMetre, double highest) {
    double price = lowest(0, highest, perZone -> highestPlane(perMetre, perZone));
    return new double[] {price, highestPlane(perMetre, price)};
  }

  private double highestPlane(double perMetre, double perZone) {
    double highest = Double.NEGATIVE_INFINITY;
    for (Plane plane : planes) {
      highest = Math.max(highest, plane.at(perMetre, perZone));
    }
    return highest;
  }

  private interface Height {
    double at(double price);
  }

  /** Where a convex function is lowest, by golden-section search. */
  private static double lowest(double from, double to, Height height) {
    double golden = (Math.sqrt(5) - 1) / 2;
    double low = from;
    double high = to;
    double left = high - golden * (high - low);
    double right = low + golden * (high - low);
    double atLeft = height.at(left);
    double atRight = height.at(right);
    for (int i = 0; i < NARROWINGS; i++) {
      if (atLeft <= atRight) {
        high = right;
        right = left;
        atRight = atLeft;
        left = high - golden * (high - low);
        atLeft = height.at(left);
      } else {
        low = left;
        left = right;
        atLeft = atRight;
        right = low + golden * (high - low);
        atRight = height.at(right);
      }
    }
    return (low + high) / 2;
  }
}
