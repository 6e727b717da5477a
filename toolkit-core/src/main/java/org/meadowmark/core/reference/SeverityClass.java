package org.meadowmark.core.reference;

/**
 * A class of a bed by the share of it that is scarred.
 *
 * @param key short name used in tables
 * @param label name for people
 * @param lowestShare lowest share in the class
 * @param lowestIncluded whether the lowest share itself belongs to the class
 * @param highestShare highest share in the class
 * @param highestIncluded whether the highest share itself belongs to the class
 * @param source where the row comes from
 */
public record SeverityClass(
    String key,
    String label,
    double lowestShare,
    boolean lowestIncluded,
    double highestShare,
    boolean highestIncluded,
    String source) {

  /**
   * {@return whether a share (0–1) belongs to the class}
   *
   * @param share scarred part of the area it is held against, in 0–1
   */
  public boolean contains(double share) {
    boolean above = lowestIncluded ? share >= lowestShare : share > lowestShare;
    boolean below = highestIncluded ? share <= highestShare : share < highestShare;
    return above && below;
  }
}
