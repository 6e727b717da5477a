package org.meadowmark.core.change.rates;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Scopes;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.Scar;

/** Counts the new scars of a season by management area. Time linear in scars. */
public final class NewScarRates {
  private NewScarRates() {}

  private static final class Sum {
    private int scars;
    private final List<Double> metres = new ArrayList<>();
  }

  /**
   * {@return rates by scope, in the order of {@link Scopes#all}}
   *
   * @param pair the two surveys of the season, matched; scopes are those of the later one
   * @param confidence share of intervals that are to hold the truth
   */
  public static List<NewScarRate> of(SeasonPair pair, double confidence) {
    Scopes scopes = new Scopes(pair.later().mapped().managementAreas());
    Map<String, ScarMeasure> measures = new HashMap<>();
    pair.later().measurement().scars().forEach(one -> measures.put(one.scar().id(), one));
    Map<Scope, Sum> sums = new HashMap<>();
    double shortest = Double.POSITIVE_INFINITY;
    for (ScarChange change : pair.match().later()) {
      ScarMeasure measure = measures.get(change.id());
      if (measure == null || measure.footprintInBedsSquareMetres() <= 0) {
        continue;
      }
      double metres = metresInBeds(change, measure);
      Scar scar = measure.scar();
      for (Scope scope : List.of(scopes.of(scar), Scope.WHOLE)) {
        Sum sum = sums.computeIfAbsent(scope, key -> new Sum());
        sum.scars += change.change() == ChangeClass.NEW ? 1 : 0;
        if (metres > 0) {
          sum.metres.add(metres);
        }
      }
      if (metres > 0) {
        shortest = Math.min(shortest, metres);
      }
    }
    double least = Double.isInfinite(shortest) ? 1 : shortest;
    List<NewScarRate> rates = new ArrayList<>();
    for (Scope scope : scopes.all()) {
      Sum sum = sums.getOrDefault(scope, new Sum());
      double[] metres = sum.metres.stream().mapToDouble(Double::doubleValue).toArray();
      double total = 0;
      for (double one : metres) {
        total += one;
      }
      rates.add(
          new NewScarRate(
              pair.season(),
              scope,
              pair.ground().hectaresByScope().get(scope),
              sum.scars,
              PoissonInterval.ofCount(sum.scars, confidence),
              total,
              PoissonInterval.ofLengths(metres, least, confidence)));
    }
    return rates;
  }

  /** New metres of a line inside beds; the new part is taken to lie in beds like the whole. */
  private static double metresInBeds(ScarChange change, ScarMeasure measure) {
    return change.isLine() && measure.lengthMetres() > 0
        ? change.unassignedMetres() * measure.lengthInBedsMetres() / measure.lengthMetres()
        : 0;
  }
}
