package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;

/**
 * What the rest of a survey decides about how a part of it is measured.
 *
 * @param scarCount scars of the whole survey
 * @param tiled whether meadows are cut in tiles, because one meadow of the survey has very many
 *     scars near it; empty where the part is the whole and decides for itself
 * @param thinnedBefore lines of totals that have so many patches before scarring that connectivity
 *     is estimated: numbers of the management areas in order, then of what lies outside them, where
 *     there are any, then of the whole survey
 * @param thinnedAfter the same after scarring
 */
public record PartRules(
    int scarCount,
    Optional<Boolean> tiled,
    List<Integer> thinnedBefore,
    List<Integer> thinnedAfter) {
  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param scarCount scars of the whole survey
   * @param tiled whether meadows are cut in tiles, because one meadow of the survey has very many
   *     scars near it; empty where the part is the whole and decides for itself
   * @param thinnedBefore lines of totals that have so many patches before scarring that
   *     connectivity is estimated: numbers of the management areas in order, then of what lies
   *     outside them, where there are any, then of the whole survey
   * @param thinnedAfter the same after scarring
   * @throws NullPointerException if a list or an entry of one is null
   */
  public PartRules {
    thinnedBefore = List.copyOf(thinnedBefore);
    thinnedAfter = List.copyOf(thinnedAfter);
  }

  /**
   * {@return rules of a part where no line of totals has so many patches that its connectivity is
   * estimated}
   *
   * @param scarCount scars of the whole survey
   * @param tiled whether meadows are cut in tiles, see {@link #tiled}
   */
  public static PartRules of(int scarCount, boolean tiled) {
    return new PartRules(scarCount, Optional.of(tiled), List.of(), List.of());
  }

  static PartRules ofWhole(int scarCount) {
    return new PartRules(scarCount, Optional.empty(), List.of(), List.of());
  }

  PieceGraph.Maker graphs(PieceGraph.Maker graphs, int line, boolean after) {
    return (after ? thinnedAfter : thinnedBefore).contains(line) ? graphs.thinning() : graphs;
  }
}
