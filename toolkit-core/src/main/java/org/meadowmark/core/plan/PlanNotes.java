package org.meadowmark.core.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.meadowmark.core.survey.RepairParameters;

/** What the figures of a plan rest on and do not tell. */
final class PlanNotes {
  private PlanNotes() {}

  static List<String> of(RepairParameters choices, List<RepairScar> scars) {
    List<String> notes = new ArrayList<>();
    if (!choices.placeholders().names().isEmpty()) {
      notes.add(
          "Costs are placeholders until they are set: "
              + String.join(", ", choices.placeholders().names())
              + ".");
    }
    if (choices.budget().isEmpty()) {
      notes.add("No budget is set (repair_budget): figures for each scar, no plan.");
    } else if (choices.budget().getAsDouble() == 0) {
      notes.add("The budget is 0: nothing that costs money can be planned.");
    }
    notes.add(
        "Benefits are added up scar by scar; scars that part the same patches restore less together"
            + " than each alone would.");
    notes.add(
        "Chance of being scarred again: new scars at random in the bed in reach of a segment;"
            + " scarred area of the segment over the time a scar stays visible.");
    notes.add(
        String.format(
            Locale.ROOT,
            "A marker is taken to keep %.0f %% of new scars away (marker_effect): common practice,"
                + " no source. The choice counts no marker.",
            100 * choices.markerEffect()));
    notes.add("Benefits are those of planting now; a later season gains less.");
    long withoutFill = scars.stream().filter(scar -> scar.fillCubicMetres().isEmpty()).count();
    if (withoutFill > 0) {
      notes.add(
          "Excavation is not known for "
              + withoutFill
              + " of "
              + scars.size()
              + " scars: fill and its cost are not in their figures.");
    }
    if (choices.deepestMetres().isEmpty()) {
      notes.add("No deepest place for grass is set (deepest_planting_m): light was not looked at.");
    }
    return notes;
  }
}
