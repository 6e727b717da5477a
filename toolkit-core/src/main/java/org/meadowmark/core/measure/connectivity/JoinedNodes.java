package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;

/** Pairs of nodes of a component between which the gap is filled: no way lies between them. */
final class JoinedNodes {
  /** No node is joined to another. */
  static final JoinedNodes NONE = new JoinedNodes(0);

  private static final int[] NOBODY = {};

  private final int[][] partners;

  JoinedNodes(int nodeCount) {
    partners = new int[nodeCount][];
  }

  int[] of(int node) {
    return node < partners.length && partners[node] != null ? partners[node] : NOBODY;
  }

  void join(int first, int second) {
    append(first, second);
    append(second, first);
  }

  /** Takes back the last join, which must have been of these. */
  void part(int first, int second) {
    partners[first] = Arrays.copyOf(partners[first], partners[first].length - 1);
    partners[second] = Arrays.copyOf(partners[second], partners[second].length - 1);
  }

  private void append(int node, int partner) {
    int[] before = of(node);
    int[] after = Arrays.copyOf(before, before.length + 1);
    after[before.length] = partner;
    partners[node] = after;
  }
}
