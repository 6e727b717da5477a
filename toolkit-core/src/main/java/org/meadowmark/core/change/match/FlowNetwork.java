package org.meadowmark.core.change.match;

import java.util.Arrays;

/**
 * A network with whole capacities and costs, from a source (node 0) to a sink (node 1). As much is
 * sent as the source is given; what is not worth sending takes an arc of its own that costs
 * nothing, so only arcs of negative cost draw anything.
 */
final class FlowNetwork {
  static final int SOURCE = 0;
  static final int SINK = 1;

  private int[] tails = new int[64];
  private int[] heads = new int[64];
  private long[] capacities = new long[64];
  private long[] costs = new long[64];
  private int arcs;
  private int nodes = 2;

  int addNode() {
    return nodes++;
  }

  /** Adds an arc and returns its number. */
  int addArc(int tail, int head, long capacity, long cost) {
    if (arcs == tails.length) {
      tails = Arrays.copyOf(tails, 2 * arcs);
      heads = Arrays.copyOf(heads, 2 * arcs);
      capacities = Arrays.copyOf(capacities, 2 * arcs);
      costs = Arrays.copyOf(costs, 2 * arcs);
    }
    tails[arcs] = tail;
    heads[arcs] = head;
    capacities[arcs] = capacity;
    costs[arcs] = cost;
    return arcs++;
  }

  int nodes() {
    return nodes;
  }

  int arcs() {
    return arcs;
  }

  int tail(int arc) {
    return tails[arc];
  }

  int head(int arc) {
    return heads[arc];
  }

  long capacity(int arc) {
    return capacities[arc];
  }

  long cost(int arc) {
    return costs[arc];
  }

  /** What leaves the source if every arc out of it is full. */
  long supply() {
    long supply = 0;
    for (int arc = 0; arc < arcs; arc++) {
      supply += tails[arc] == SOURCE ? capacities[arc] : 0;
    }
    return supply;
  }
}
