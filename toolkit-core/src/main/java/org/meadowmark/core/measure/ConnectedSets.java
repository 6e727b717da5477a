package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.IntStream;
import org.jgrapht.alg.util.UnionFind;

/**
 * Things that hang together through pairs, in an order that does not depend on that of the pairs.
 */
final class ConnectedSets {
  private final UnionFind<Integer> sets;
  private final int count;

  /** Starts with each of a number of things on its own. */
  ConnectedSets(int count) {
    this.count = count;
    sets = new UnionFind<>(new LinkedHashSet<>(IntStream.range(0, count).boxed().toList()));
  }

  void join(int first, int second) {
    sets.union(first, second);
  }

  /** Set of each thing; sets are numbered from 0 in order of their first member. */
  int[] numbers() {
    int[] numberOfRoot = new int[count];
    Arrays.fill(numberOfRoot, -1);
    int[] numbers = new int[count];
    int next = 0;
    for (int i = 0; i < count; i++) {
      int root = sets.find(i);
      if (numberOfRoot[root] < 0) {
        numberOfRoot[root] = next++;
      }
      numbers[i] = numberOfRoot[root];
    }
    return numbers;
  }

  /** Members of each set, ascending; sets in order of their first member. */
  List<List<Integer>> members() {
    List<List<Integer>> members = new ArrayList<>();
    int[] numbers = numbers();
    for (int i = 0; i < count; i++) {
      if (numbers[i] == members.size()) {
        members.add(new ArrayList<>());
      }
      members.get(numbers[i]).add(i);
    }
    return members;
  }
}
