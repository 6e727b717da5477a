package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Things that hang together through pairs, in an order that does not depend on that of the pairs.
 *
 * <p>Four bytes a thing: the union-find of a graph library keeps some two hundred, too many for
 * millions of patches. Paths are halved on the way (Tarjan and van Leeuwen 1984, from memory).
 */
public final class ConnectedSets {
  private final int[] parents;

  /**
   * Starts with each of a number of things on its own.
   *
   * @param count number of things, numbered from 0
   */
  public ConnectedSets(int count) {
    parents = new int[count];
    Arrays.setAll(parents, i -> i);
  }

  private int root(int thing) {
    int at = thing;
    while (parents[at] != at) {
      parents[at] = parents[parents[at]];
      at = parents[at];
    }
    return at;
  }

  /**
   * Says that two things hang together. The smaller root becomes the root of both, so that a root
   * is the first member of its set.
   *
   * @param first number of a thing
   * @param second number of another, or of the same
   */
  public void join(int first, int second) {
    int a = root(first);
    int b = root(second);
    parents[Math.max(a, b)] = Math.min(a, b);
  }

  /**
   * {@return whether two things hang together, through any number of pairs}
   *
   * @param first number of a thing
   * @param second number of another, or of the same
   */
  public boolean areJoined(int first, int second) {
    return root(first) == root(second);
  }

  /**
   * {@return number of the set of each thing; sets are numbered from 0 in order of their first
   * member}
   */
  public int[] numbers() {
    int[] numbers = new int[parents.length];
    int next = 0;
    for (int i = 0; i < numbers.length; i++) {
      int root = root(i);
      numbers[i] = root == i ? next++ : numbers[root];
    }
    return numbers;
  }

  /** {@return members of each set, ascending; sets in order of their first member} */
  public List<List<Integer>> members() {
    List<List<Integer>> members = new ArrayList<>();
    int[] numbers = numbers();
    for (int i = 0; i < numbers.length; i++) {
      if (numbers[i] == members.size()) {
        members.add(new ArrayList<>());
      }
      members.get(numbers[i]).add(i);
    }
    return members;
  }
}
