package org.meadowmark.core.write.summary;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import org.meadowmark.core.measure.recovery.AreaLoss;
import org.meadowmark.core.measure.recovery.LossConventions;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.write.Figures;

/** What the summary says about recovery and loss. */
final class RecoveryLines {

  private final SurveyRecovery recovery;

  RecoveryLines(SurveyRecovery recovery) {
    this.recovery = recovery;
  }

  /** Empty where there is no scar. */
  String answer() {
    if (recovery.scars().isEmpty()) {
      return "";
    }
    AreaLoss whole = recovery.whole();
    List<ScarRecovery> known =
        recovery.scars().stream().filter(scar -> scar.alone().isPresent()).toList();
    if (known.isEmpty() || whole.alone().isEmpty()) {
      return "Not forecast: " + reasons();
    }
    LossConventions conventions = recovery.conventions();
    Function<Range, String> loss = range -> ranged(range, Figures::number);
    return "The middle one of "
        + Figures.count(known.size(), "scar", "scars")
        + " takes "
        + ranged(medianYears(known), Figures::number)
        + " years to close from its edges; left alone, they cost "
        + loss.apply(whole.alone().get())
        + " discounted service-hectare-years until then, and "
        + loss.apply(whole.planted().orElseThrow())
        + " if every scar were planted at once. New planting of "
        + ranged(
            whole.compensatingHectares().orElseThrow(),
            hectares -> Figures.area(Hectare.SQUARE_METRES * hectares))
        + " would make good for the loss. Counted at "
        + Figures.chosenPercent(conventions.discounting().ratePerYear())
        + " a year, "
        + conventions.discounting().withinYear().key()
        + " of the year, "
        + (conventions.baseYear().isPresent()
            ? "base year " + conventions.baseYear().getAsInt()
            : "from the year of the survey")
        + ", over "
        + Figures.count(conventions.horizonYears(), "year", "years")
        + "; every step is in loss-worked.txt. Published recovery times are few and uncertain, so take the"
        + " range, not the middle."
        + (known.size() < recovery.scars().size() ? " Not forecast: " + reasons() : "");
  }

  private static Range medianYears(List<ScarRecovery> scars) {
    List<Range> sorted =
        scars.stream()
            .map(scar -> scar.alone().orElseThrow().yearsToFull())
            .sorted(
                Comparator.comparingDouble(Range::middle)
                    .thenComparingDouble(Range::low)
                    .thenComparingDouble(Range::high))
            .toList();
    return sorted.get((sorted.size() - 1) / 2);
  }

  private String reasons() {
    Map<String, Integer> counts = new TreeMap<>();
    for (ScarRecovery scar : recovery.scars()) {
      if (scar.alone().isEmpty()) {
        counts.merge(scar.basis(), 1, Integer::sum);
      }
    }
    StringBuilder text = new StringBuilder();
    counts.forEach(
        (reason, count) ->
            text.append(text.isEmpty() ? "" : "; ")
                .append(Figures.count(count, "scar", "scars"))
                .append(" (")
                .append(reason)
                .append(')'));
    return text.append('.').toString();
  }

  private static String ranged(Range range, DoubleFunction<String> figure) {
    return figure.apply(range.middle())
        + " ("
        + figure.apply(range.low())
        + " to "
        + figure.apply(range.high())
        + ")";
  }
}
