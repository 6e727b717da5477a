package org.meadowmark.core.plan;

/**
 * What several repairs restore of connectivity.
 *
 * @param togetherHectares growth of the equivalent connected area with all of them filled
 * @param separateHectares sum of what each alone would restore; can be more or less
 */
public record Connected(double togetherHectares, double separateHectares) {
  /** Two sets of repairs, the second after the first. */
  Connected plus(Connected next) {
    return new Connected(
        togetherHectares + next.togetherHectares, separateHectares + next.separateHectares);
  }
}
