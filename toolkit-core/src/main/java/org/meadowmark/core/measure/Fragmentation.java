package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Pieces of grass of a bed, a management area or the whole survey, before and after scarring.
 *
 * @param totalSquareMetres mapped grass before scarring, touching beds joined: the total that
 *     densities, division, splitting and mesh size are taken of, both before and after
 * @param before figures of the patches without scars
 * @param after the same with scars taken out
 * @param crumbsAfter pieces below the minimum patch area after scarring, not counted as patches
 * @param gaps smallest widths of gaps made by scars: one value for each scar and pair of patches it
 *     separates
 * @param gapBins the same widths counted in classes, narrowest first
 * @param crossings groups of patches that an animal can reach, by crossing distance, ascending
 */
public record Fragmentation(
    double totalSquareMetres,
    PatchStatistics before,
    PatchStatistics after,
    int crumbsAfter,
    LengthDistribution gaps,
    List<GapBin> gapBins,
    List<Crossing> crossings) {

  /**
   * Groups of patches no farther apart, edge to edge, than a crossing distance.
   *
   * @param distanceMetres crossing distance
   * @param groupsBefore groups without scars
   * @param groupsAfter groups with scars taken out
   * @param largestGroupShareBefore share of the grass in the largest group, before
   * @param largestGroupShareAfter the same after
   * @param before connectivity without scars, the distance taken as the median crossing distance
   * @param after the same with scars taken out; both empty where there is no grass
   */
  public record Crossing(
      double distanceMetres,
      int groupsBefore,
      int groupsAfter,
      OptionalDouble largestGroupShareBefore,
      OptionalDouble largestGroupShareAfter,
      Optional<Connectedness> before,
      Optional<Connectedness> after) {}

  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param totalSquareMetres mapped grass before scarring, touching beds joined: the total that
   *     densities, division, splitting and mesh size are taken of, both before and after
   * @param before figures of the patches without scars
   * @param after the same with scars taken out
   * @param crumbsAfter pieces below the minimum patch area after scarring, not counted as patches
   * @param gaps smallest widths of gaps made by scars: one value for each scar and pair of patches
   *     it separates
   * @param gapBins the same widths counted in classes, narrowest first
   * @param crossings groups of patches that an animal can reach, by crossing distance, ascending
   * @throws NullPointerException if a list or an entry of one is null
   */
  public Fragmentation {
    gapBins = List.copyOf(gapBins);
    crossings = List.copyOf(crossings);
  }
}
