package org.meadowmark.core.rank.zone.choice;

import java.util.List;

/**
 * Chosen zones.
 *
 * @param zones positions of the segments of each zone, ascending; the zone that covers most first,
 *     ties by lowest position
 * @param usedMetres total length of the zones
 * @param coveredMetres value that they cover
 * @param upperBoundMetres no choice covers more than this
 * @param proof how it is known that nothing better exists
 */
public record ZoneChoice(
    List<int[]> zones,
    double usedMetres,
    double coveredMetres,
    double upperBoundMetres,
    Proof proof) {

  /** How a choice is proven best. */
  public enum Proof {
    /** No segment that fits has a value. */
    NOTHING_TO_COVER("nothing to cover"),
    /** The bound by prices on length and zones meets the choice. */
    BOUND("proven best by a Lagrangian bound"),
    /** Exact dynamic programme over what the bound left. */
    DYNAMIC_PROGRAMME("proven best by an exact dynamic programme"),
    /** Branch and bound over the loops of what was left, each branch a dynamic programme. */
    BRANCH_AND_BOUND(
        "proven best by branch and bound over loops, each branch an exact dynamic programme"),
    /** Integer programme over what the bound left of a network with loops. */
    INTEGER_PROGRAMME(
        "proven best by an integer programme, solved by branch and bound over linear programmes"
            + " (general solver: GLOP of OR-Tools)"),
    /** The work limit was reached first, and the general solver cannot be loaded here. */
    NONE_WITHOUT_SOLVER(
        "not proven best: the work limit of branch and bound was reached, and the general solver"
            + " does not run on this machine, so the upper bound stands beside it"),
    /** The work limit was reached first. */
    NONE("not proven best: the work limit was reached, so the upper bound stands beside it");

    private final String words;

    Proof(String words) {
      this.words = words;
    }

    /** {@return how it is proven, in words for people} */
    public String words() {
      return words;
    }
  }

  /**
   * Keeps copies of the list and of its arrays; the list cannot be changed.
   *
   * @param zones positions of the segments of each zone, ascending; the zone that covers most
   *     first, ties by lowest position
   * @param usedMetres total length of the zones
   * @param coveredMetres value that they cover
   * @param upperBoundMetres no choice covers more than this
   * @param proof how it is known that nothing better exists
   * @throws NullPointerException if the list or an array is null
   */
  public ZoneChoice {
    zones = zones.stream().map(int[]::clone).toList();
  }
}
