package org.meadowmark.core.measure;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.measure.connectivity.Sample;

/**
 * Ways over water between patches, without their geometry.
 *
 * @param crossings ways up to the reach, by first and second piece
 * @param gridAreas area of each piece on the grid
 * @param sample what is drawn where sums over all pairs take too long, and links are left out that
 *     are of no use to shortest ways; empty where they do not
 */
record PatchNetwork(Links crossings, double[] gridAreas, Optional<Sample> sample) {

  /**
   * Group of each piece at a crossing distance: groups are numbered from 0 in order of their first
   * piece.
   */
  int[] groups(double crossingMetres) {
    ConnectedSets sets = new ConnectedSets(gridAreas.length);
    for (int i = 0; i < crossings.size(); i++) {
      if (crossings.metres(i) <= crossingMetres + PieceGraph.EQUAL_METRES) {
        sets.join(crossings.first(i), crossings.second(i));
      }
    }
    return sets.numbers();
  }

  /**
   * Number of groups, and the share of all area in the largest; no share where there is no area.
   */
  record GroupSummary(int count, OptionalDouble largestShare) {}

  GroupSummary summary(double crossingMetres) {
    int[] groups = groups(crossingMetres);
    int count = Arrays.stream(groups).max().orElse(-1) + 1;
    double[] areas = new double[count];
    double total = 0;
    for (int i = 0; i < groups.length; i++) {
      areas[groups[i]] += gridAreas[i];
      total += gridAreas[i];
    }
    return new GroupSummary(
        count,
        total > 0
            ? OptionalDouble.of(Arrays.stream(areas).max().orElse(0) / total)
            : OptionalDouble.empty());
  }
}
