package org.meadowmark.core.measure.connectivity;

/**
 * How patches are drawn where connectivity is estimated.
 *
 * @param sources number of patches, 2 or more
 * @param seed seed of the draw
 */
public record Sample(int sources, long seed) {
  /**
   * Refuses a sample that has no standard error.
   *
   * @param sources number of patches, 2 or more
   * @param seed seed of the draw
   * @throws IllegalArgumentException if there are fewer than 2 sources
   */
  public Sample {
    if (sources < 2) {
      throw new IllegalArgumentException("a sample of " + sources + " has no standard error");
    }
  }
}
