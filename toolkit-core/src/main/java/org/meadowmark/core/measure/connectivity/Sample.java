package org.meadowmark.core.measure.connectivity;

/**
 * How patches are drawn where connectivity is estimated.
 *
 * @param sources number of patches, 2 or more
 * @param seed seed of the draw
 */
public record Sample(int sources, long seed) {
  public Sample {
    if (sources < 2) {
      throw new IllegalArgumentException("a sample of " + sources + " has no standard error");
    }
  }
}
