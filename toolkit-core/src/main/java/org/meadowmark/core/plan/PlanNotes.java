package org.meadowmark.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.meadowmark.core.survey.RepairParameters;

/** What a plan lacks, and what its figures rest on. */
final class PlanNotes {
  private static final double PERCENT = 100;

  private PlanNotes() {}

  static List<String> gaps(RepairParameters choices, List<RepairScar> scars) {
    List<String> gaps = new ArrayList<>();
    if (!choices.placeholders().names().isEmpty()) {
      gaps.add(
          "Costs are placeholders until they are set: "
              + String.join(", ", choices.placeholders().names())
              + ".");
    }
    if (choices.budget().isEmpty()) {
      gaps.add("No budget is set (repair_budget): figures for each scar, no plan.");
    } else if (choices.budget().getAsDouble() == 0) {
      gaps.add("The budget is 0: nothing that costs money can be planned.");
    }
    long withoutFill = scars.stream().filter(scar -> scar.fillCubicMetres().isEmpty()).count();
    if (withoutFill > 0) {
      gaps.add(
          "Excavation is not known for "
              + withoutFill
              + " of "
              + scars.size()
              + " scars: fill and its cost are not in their figures.");
    }
    long withoutGain = scars.stream().filter(scar -> scar.gain().isEmpty()).count();
    if (withoutGain > 0) {
      gaps.add(
          "No recovery is forecast for "
              + withoutGain
              + " of "
              + scars.size()
              + " scars: their gain in grass is not counted.");
    }
    if (choices.deepestMetres().isEmpty()) {
      gaps.add("No deepest place for grass is set (deepest_planting_m): light was not looked at.");
    }
    String notNoted =
        Stream.of("bottom (sand or muck)", "grazing")
            .flatMap(what -> notNoted(what, scars).stream())
            .collect(Collectors.joining(", "));
    if (!notNoted.isEmpty()) {
      gaps.add("Not noted: " + notNoted + "; look before planting.");
    }
    return gaps;
  }

  private static Optional<String> notNoted(String what, List<RepairScar> scars) {
    long without = scars.stream().filter(scar -> scar.unknowns().contains(what)).count();
    return without == 0
        ? Optional.empty()
        : Optional.of(what + " at " + without + " of " + scars.size() + " scars");
  }

  static List<String> assumptions(RepairParameters choices) {
    return List.of(
        "What several scars restore of connectivity is worked out for all of them together; by the"
            + " sum of what each restores alone only where the survey has too many patches.",
        "Chance of being scarred again: new scars at random in the bed in reach of a segment;"
            + " scarred area of the segment over the time a scar stays visible.",
        String.format(
            Locale.ROOT,
            "A marker is taken to keep %.0f %% of new scars away (marker_effect): common practice,"
                + " no source. The choice counts no marker.",
            PERCENT * choices.markerEffect()),
        "The figures of a scar are those of planting in the first season, taken as the base year; a"
            + " later season gains less, by the discount rate and by what closes until then.");
  }
}
