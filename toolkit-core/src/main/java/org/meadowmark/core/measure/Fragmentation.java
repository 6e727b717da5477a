package org.meadowmark.core.measure;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Pieces of grass of a bed, a management area or the whole survey, before and after scarring.
 *
 * @param patchesBefore patches without scars
 * @param patchesAfter patches with scars taken out
 * @param crumbsAfter pieces below the minimum patch area after scarring, not counted as patches
 * @param largestShareBefore area of the largest patch divided by the area of all, before
 * @param largestShareAfter the same after
 * @param gaps gap widths made by scars: one value for each scar and pair of patches it separates
 * @param crossings groups of patches that an animal can reach, by crossing distance, ascending
 */
public record Fragmentation(
    int patchesBefore,
    int patchesAfter,
    int crumbsAfter,
    OptionalDouble largestShareBefore,
    OptionalDouble largestShareAfter,
    GapWidths gaps,
    List<Crossing> crossings) {

  /**
   * Distribution of gap widths, in metres; the values are empty where there is no gap.
   *
   * @param count number of gaps
   * @param minimumMetres smallest
   * @param medianMetres median
   * @param ninetiethPercentileMetres 90th percentile
   * @param maximumMetres largest
   */
  public record GapWidths(
      int count,
      OptionalDouble minimumMetres,
      OptionalDouble medianMetres,
      OptionalDouble ninetiethPercentileMetres,
      OptionalDouble maximumMetres) {}

  /**
   * Groups of patches no farther apart, edge to edge, than a crossing distance.
   *
   * @param distanceMetres crossing distance
   * @param groupsBefore groups without scars
   * @param groupsAfter groups with scars taken out
   * @param largestGroupShareBefore share of the grass in the largest group, before
   * @param largestGroupShareAfter the same after
   */
  public record Crossing(
      double distanceMetres,
      int groupsBefore,
      int groupsAfter,
      OptionalDouble largestGroupShareBefore,
      OptionalDouble largestGroupShareAfter) {}

  public Fragmentation {
    crossings = List.copyOf(crossings);
  }
}
