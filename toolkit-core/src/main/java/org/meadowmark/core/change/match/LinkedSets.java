package org.meadowmark.core.change.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Pairs that hang together through the scars they share. */
final class LinkedSets {
  private LinkedSets() {}

  /**
   * Sets of pairs; sets are in the order of their first pair, and so are the pairs in them.
   *
   * @param pairs in the order of earlier and then later scar
   * @param earlierCount number of earlier scars
   * @param laterCount number of later scars
   */
  static List<List<Pair>> of(List<Pair> pairs, int earlierCount, int laterCount) {
    int[] set = new int[earlierCount + laterCount];
    Arrays.setAll(set, i -> i);
    for (Pair pair : pairs) {
      int one = root(set, pair.earlier());
      int other = root(set, earlierCount + pair.later());
      set[Math.max(one, other)] = Math.min(one, other);
    }
    int[] place = new int[earlierCount + laterCount];
    Arrays.fill(place, -1);
    List<List<Pair>> sets = new ArrayList<>();
    for (Pair pair : pairs) {
      int root = root(set, pair.earlier());
      if (place[root] < 0) {
        place[root] = sets.size();
        sets.add(new ArrayList<>(1));
      }
      sets.get(place[root]).add(pair);
    }
    return sets;
  }

  private static int root(int[] set, int member) {
    int root = member;
    while (set[root] != root) {
      set[root] = set[set[root]];
      root = set[root];
    }
    return root;
  }
}
