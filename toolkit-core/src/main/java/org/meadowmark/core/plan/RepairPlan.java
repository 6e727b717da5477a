package org.meadowmark.core.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.meadowmark.core.plan.layout.PlantingUnit;

/**
 * The repair plan of a survey.
 *
 * @param scars every scar with its figures, by id
 * @param choice the choice within the budget; empty where no budget is set
 * @param seasons what to plant when, by number; empty where nothing is chosen
 * @param notPlaced scars that the budget buys but the seasons do not hold, since each season pays
 *     the way to a site again and has its own budget, by id
 * @param curve benefit against budget, by budget
 * @param units planting units of the scars in seasons, by scar and number
 * @param gaps what the plan lacks, in sentences
 * @param assumptions what its figures rest on, in sentences
 */
public record RepairPlan(
    List<RepairScar> scars,
    Optional<RepairChoice> choice,
    List<RepairSeason> seasons,
    List<RepairScar> notPlaced,
    List<CurvePoint> curve,
    List<PlantingUnit> units,
    List<String> gaps,
    List<String> assumptions) {
  /** Nothing looked at. */
  public static final RepairPlan NONE =
      new RepairPlan(
          List.of(),
          Optional.empty(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of());

  /** Part of all benefit from which the curve counts as flat. */
  public static final double FLAT_SHARE = 0.9;

  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param scars every scar with its figures, by id
   * @param choice the choice within the budget; empty where no budget is set
   * @param seasons what to plant when, by number; empty where nothing is chosen
   * @param notPlaced scars that the budget buys but the seasons do not hold, since each season pays
   *     the way to a site again and has its own budget, by id
   * @param curve benefit against budget, by budget
   * @param units planting units of the scars in seasons, by scar and number
   * @param gaps what the plan lacks, in sentences
   * @param assumptions what its figures rest on, in sentences
   * @throws NullPointerException if a list or an entry of one is null
   */
  public RepairPlan {
    scars = List.copyOf(scars);
    seasons = List.copyOf(seasons);
    notPlaced = List.copyOf(notPlaced);
    curve = List.copyOf(curve);
    units = List.copyOf(units);
    gaps = List.copyOf(gaps);
    assumptions = List.copyOf(assumptions);
  }

  /** {@return number of the season by scar} */
  public Map<String, Integer> seasonByScar() {
    Map<String, Integer> numbers = new HashMap<>();
    seasons.forEach(
        season -> season.scars().forEach(scar -> numbers.put(scar.scarId(), season.number())));
    return numbers;
  }

  /** {@return the smallest budget of the curve with at least {@link #FLAT_SHARE} of all benefit} */
  public Optional<CurvePoint> flattens() {
    if (curve.isEmpty()) {
      return Optional.empty();
    }
    double all = curve.get(curve.size() - 1).benefit();
    return curve.stream().filter(point -> point.benefit() >= FLAT_SHARE * all).findFirst();
  }
}
