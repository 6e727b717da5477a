package org.meadowmark.core.change.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Pairs that hang together through the scars they share. */
final class LinkedSets {
  private LinkedSets() {}

  /**
   * Sets of some pairs; sets are in the order of their first pair, and so are the pairs in them.
   *
   * @param places positions of the pairs, ascending
   * @param pairs all pairs
   * @param earlierCount number of earlier scars
   * @param laterCount number of later scars
   */
  static List<List<Integer>> of(
      List<Integer> places, List<Pair> pairs, int earlierCount, int laterCount) {
    int[] set = new int[earlierCount + laterCount];
    Arrays.setAll(set, i -> i);
    for (int place : places) {
      int one = root(set, pairs.get(place).earlier());
      int other = root(set, earlierCount + pairs.get(place).later());
      set[Math.max(one, other)] = Math.min(one, other);
    }
    int[] number = new int[earlierCount + laterCount];
    Arrays.fill(number, -1);
    List<List<Integer>> sets = new ArrayList<>();
    for (int place : places) {
      int root = root(set, pairs.get(place).earlier());
      if (number[root] < 0) {
        number[root] = sets.size();
        sets.add(new ArrayList<>(1));
      }
      sets.get(number[root]).add(place);
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
