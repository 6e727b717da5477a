package org.meadowmark.core.rank.evidence;

import java.util.Map;
import java.util.Set;

/**
 * What is known of a survey's scars from earlier surveys.
 *
 * @param newShareByScar part of each scar that the survey before did not have, in 0–1; scars that
 *     cannot be compared are left out
 * @param cutAgain new scars on ground that an earlier survey saw scarred
 */
public record EarlierScars(Map<String, Double> newShareByScar, Set<String> cutAgain) {
  /**
   * Keeps copies that cannot be changed.
   *
   * @param newShareByScar part of each scar that the survey before did not have, in 0–1; scars that
   *     cannot be compared are left out
   * @param cutAgain new scars on ground that an earlier survey saw scarred
   * @throws NullPointerException if either, or an entry of one, is null
   */
  public EarlierScars {
    newShareByScar = Map.copyOf(newShareByScar);
    cutAgain = Set.copyOf(cutAgain);
  }
}
