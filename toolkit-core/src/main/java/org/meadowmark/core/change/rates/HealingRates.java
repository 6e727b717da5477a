package org.meadowmark.core.change.rates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Scopes;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.measure.recovery.Outlook;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.model.Scar;

/**
 * Counts healed scars by management area, and by species and class of width.
 *
 * <p>Only lines in beds with a measured width are counted by width. Time linear in scars.
 */
public final class HealingRates {
  private final SeasonPair pair;
  private final List<Double> widthLimits;
  private final double confidence;

  private HealingRates(SeasonPair pair, List<Double> widthLimits, double confidence) {
    this.pair = pair;
    this.widthLimits = widthLimits;
    this.confidence = confidence;
  }

  private static final class Sum {
    private int scars;
    private int healed;
    private int low;
    private int middle;
    private int high;
    private int expectedOf;

    private void add(boolean gone, Optional<Outlook> outlook, double years) {
      scars++;
      healed += gone ? 1 : 0;
      if (outlook.isPresent()) {
        Range full = outlook.get().yearsToFull();
        expectedOf++;
        low += full.high() <= years ? 1 : 0;
        middle += full.middle() <= years ? 1 : 0;
        high += full.low() <= years ? 1 : 0;
      }
    }
  }

  private record WidthKey(String species, int place) {}

  /**
   * {@return rates by scope, then by species and width over the whole survey}
   *
   * @param pair the two surveys, matched; recovery and widths are those of the earlier one
   * @param widthLimitsMetres limits between classes of width, ascending
   * @param confidence share of intervals that are to hold the truth
   */
  public static List<HealingRate> of(
      SeasonPair pair, List<Double> widthLimitsMetres, double confidence) {
    return new HealingRates(pair, widthLimitsMetres, confidence).rates();
  }

  private List<HealingRate> rates() {
    Scopes scopes = new Scopes(pair.later().mapped().managementAreas());
    Map<Scope, Sum> byScope = new LinkedHashMap<>();
    scopes.all().forEach(scope -> byScope.put(scope, new Sum()));
    Map<WidthKey, Sum> byWidth =
        new TreeMap<>(Comparator.comparing(WidthKey::species).thenComparing(WidthKey::place));
    Map<String, ScarRecovery> recoveries = new HashMap<>();
    pair.earlier().recovery().scars().forEach(one -> recoveries.put(one.scarId(), one));
    Map<String, Scar> scars = new HashMap<>();
    pair.earlier().mapped().scars().forEach(scar -> scars.put(scar.id(), scar));
    double years = pair.season().years();
    for (ScarChange change : pair.match().earlier()) {
      ScarRecovery recovery = recoveries.get(change.id());
      if (change.change() == ChangeClass.NOT_COMPARABLE
          || recovery == null
          || recovery.bedId().isEmpty()) {
        continue;
      }
      Scar scar = scars.get(change.id());
      boolean gone = change.change() == ChangeClass.HEALED;
      byScope.get(Scope.WHOLE).add(gone, recovery.alone(), years);
      Scope scope = scopes.of(scar);
      if (byScope.containsKey(scope)) {
        byScope.get(scope).add(gone, recovery.alone(), years);
      }
      if (scar.widthSource() == Scar.WidthSource.MEASURED) {
        byWidth
            .computeIfAbsent(
                new WidthKey(recovery.species(), place(scar.widthMetres())), key -> new Sum())
            .add(gone, recovery.alone(), years);
      }
    }
    List<HealingRate> rates = new ArrayList<>();
    byScope.forEach(
        (scope, sum) ->
            rates.add(rate(scope, "", OptionalDouble.empty(), OptionalDouble.empty(), sum)));
    byWidth.forEach(
        (key, sum) ->
            rates.add(
                rate(
                    Scope.WHOLE,
                    key.species(),
                    OptionalDouble.of(key.place() == 0 ? 0 : widthLimits.get(key.place() - 1)),
                    key.place() == widthLimits.size()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(widthLimits.get(key.place())),
                    sum)));
    return rates;
  }

  private int place(double width) {
    int place = 0;
    while (place < widthLimits.size() && width >= widthLimits.get(place)) {
      place++;
    }
    return place;
  }

  private HealingRate rate(
      Scope scope, String species, OptionalDouble low, OptionalDouble high, Sum sum) {
    return new HealingRate(
        pair.season(),
        scope,
        species,
        low,
        high,
        sum.scars,
        sum.healed,
        sum.scars > 0
            ? Optional.of(BinomialInterval.of(sum.healed, sum.scars, confidence))
            : Optional.empty(),
        new Range(sum.low, sum.middle, sum.high),
        sum.expectedOf);
  }
}
