package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;

/** Smallest key first, four children a node, with keys that can be lowered; no boxing. */
public final class NodeHeap {
  private final int[] nodes;
  private final double[] keys;
  private final int[] places;
  private int size;

  /**
   * Creates an empty heap for nodes numbered from 0.
   *
   * @param nodeCount number of nodes
   */
  public NodeHeap(int nodeCount) {
    nodes = new int[nodeCount];
    keys = new double[nodeCount];
    places = new int[nodeCount];
    Arrays.fill(places, -1);
  }

  /** {@return whether no node is left} */
  public boolean isEmpty() {
    return size == 0;
  }

  double smallestKey() {
    return keys[0];
  }

  /**
   * Adds a node, or lowers its key; a larger key than it has is ignored. A node that was taken out
   * is added anew. Time log n.
   *
   * @param node number of the node
   * @param key its key, such as the length of a way to it
   */
  public void offer(int node, double key) {
    int place = places[node];
    if (place < 0) {
      place = size++;
    } else if (key >= keys[place]) {
      return;
    }
    while (place > 0) {
      int parent = (place - 1) >> 2;
      if (keys[parent] <= key) {
        break;
      }
      put(place, nodes[parent], keys[parent]);
      place = parent;
    }
    put(place, node, key);
  }

  /**
   * {@return the node with the smallest key, which is taken out; the heap must not be empty} Time
   * log n.
   */
  public int poll() {
    int smallest = nodes[0];
    places[smallest] = -1;
    size--;
    if (size > 0) {
      sink(nodes[size], keys[size]);
    }
    return smallest;
  }

  private void sink(int node, double key) {
    int place = 0;
    for (int child = 1; child < size; child = 4 * place + 1) {
      int best = child;
      int end = Math.min(child + 4, size);
      for (int c = child + 1; c < end; c++) {
        if (keys[c] < keys[best]) {
          best = c;
        }
      }
      if (keys[best] >= key) {
        break;
      }
      put(place, nodes[best], keys[best]);
      place = best;
    }
    put(place, node, key);
  }

  private void put(int place, int node, double key) {
    nodes[place] = node;
    keys[place] = key;
    places[node] = place;
  }
}
