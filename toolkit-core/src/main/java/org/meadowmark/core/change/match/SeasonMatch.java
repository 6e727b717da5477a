package org.meadowmark.core.change.match;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.meadowmark.core.model.Ids;

/**
 * The scars of two surveys, matched. Lists are in {@link Ids#ORDER} of ids.
 *
 * @param earlierDate date of the earlier survey
 * @param laterDate date of the later survey
 * @param toleranceMetres combined positional accuracy at 95 % that scars were matched within
 * @param earlier every scar of the earlier survey
 * @param later every scar of the later survey
 * @param links which is which, by earlier and then later scar
 */
public record SeasonMatch(
    LocalDate earlierDate,
    LocalDate laterDate,
    double toleranceMetres,
    List<ScarChange> earlier,
    List<ScarChange> later,
    List<ScarLink> links) {
  /**
   * Refuses a match of which a part is missing, and keeps copies of the lists.
   *
   * @param earlierDate date of the earlier survey
   * @param laterDate date of the later survey
   * @param toleranceMetres combined positional accuracy at 95 % that scars were matched within
   * @param earlier every scar of the earlier survey
   * @param later every scar of the later survey
   * @param links which is which, by earlier and then later scar
   * @throws NullPointerException if anything is null
   */
  public SeasonMatch {
    Objects.requireNonNull(earlierDate, "earlierDate");
    Objects.requireNonNull(laterDate, "laterDate");
    earlier = List.copyOf(earlier);
    later = List.copyOf(later);
    links = List.copyOf(links);
  }

  /**
   * Ground lengths of some scars, added up.
   *
   * @param lengthMetres whole length
   * @param assignedMetres the part that the other survey has too
   * @param unassignedMetres the part that only this survey has
   * @param notComparableMetres the part outside one of the two surveyed areas
   */
  public record Totals(
      double lengthMetres,
      double assignedMetres,
      double unassignedMetres,
      double notComparableMetres) {

    /**
     * Adds up scars in the order given.
     *
     * @param scars scars of one survey
     * @return the sums, 0 where there is no scar
     */
    public static Totals of(List<ScarChange> scars) {
      double length = 0;
      double assigned = 0;
      double unassigned = 0;
      double notComparable = 0;
      for (ScarChange scar : scars) {
        length += scar.lengthMetres();
        assigned += scar.assignedMetres();
        unassigned += scar.unassignedMetres();
        notComparable += scar.notComparableMetres();
      }
      return new Totals(length, assigned, unassigned, notComparable);
    }
  }

  /** {@return metres of the earlier survey: assigned ones persist, unassigned ones have healed} */
  public Totals earlierTotals() {
    return Totals.of(earlier);
  }

  /** {@return metres of the later survey: assigned ones persist, unassigned ones are new} */
  public Totals laterTotals() {
    return Totals.of(later);
  }

  /**
   * {@return number of scars of each class that occurs, in the order of classes}
   *
   * @param scars scars of one survey
   */
  public static Map<ChangeClass, Integer> counts(List<ScarChange> scars) {
    Map<ChangeClass, Integer> counts = new EnumMap<>(ChangeClass.class);
    scars.forEach(scar -> counts.merge(scar.change(), 1, Integer::sum));
    return counts;
  }

  /**
   * {@return root mean square distance between matched lines, weighted by length: to be held
   * against the stated accuracies} Matches farther apart than the tolerance are not made, so it is
   * a little too small. Empty where no lines are matched.
   */
  public OptionalDouble observedDistanceMetres() {
    double squares = 0;
    double metres = 0;
    for (ScarLink link : links) {
      if (link.distanceMetres().isPresent()) {
        double distance = link.distanceMetres().getAsDouble();
        squares += distance * distance * link.earlierMetres();
        metres += link.earlierMetres();
      }
    }
    return metres > 0 ? OptionalDouble.of(Math.sqrt(squares / metres)) : OptionalDouble.empty();
  }
}
