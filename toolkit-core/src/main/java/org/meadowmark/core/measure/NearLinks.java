package org.meadowmark.core.measure;

import java.util.Arrays;
import org.meadowmark.core.measure.connectivity.NodeHeap;

/**
 * Lengths of the ways between the pieces in a window that lead over short links, so that a long
 * link can be seen to be useless: a way over third pieces is shorter.
 *
 * <p>Dijkstra's search among the pieces of the window. Not for several threads.
 */
final class NearLinks {
  private static final int NOT_THERE = -1;

  /** A piece with more links than the window has pieces, times this, is met from the others. */
  private static final int MANY = 4;

  private final int[] offsets;
  private final int[] targets;
  private final double[] lengths;
  private final int[] placeOf;
  private NodeHeap heap = new NodeHeap(1024);
  private int heapSize = 1024;
  private double[] ways = new double[1024];
  private int[] window = new int[0];

  /** Short links by piece; shared by the searches of all threads. */
  record Arcs(int[] offsets, int[] targets, double[] lengths) {
    static Arcs of(Links links, int pieceCount) {
      int[] offsets = new int[pieceCount + 1];
      for (int i = 0; i < links.size(); i++) {
        offsets[links.first(i) + 1]++;
        offsets[links.second(i) + 1]++;
      }
      Arrays.parallelPrefix(offsets, Integer::sum);
      int[] next = offsets.clone();
      int[] targets = new int[2 * links.size()];
      double[] lengths = new double[2 * links.size()];
      for (int i = 0; i < links.size(); i++) {
        int a = next[links.first(i)]++;
        targets[a] = links.second(i);
        lengths[a] = links.metres(i);
        int b = next[links.second(i)]++;
        targets[b] = links.first(i);
        lengths[b] = links.metres(i);
      }
      return new Arcs(offsets, targets, lengths);
    }
  }

  NearLinks(Arcs arcs) {
    offsets = arcs.offsets;
    targets = arcs.targets;
    lengths = arcs.lengths;
    placeOf = new int[offsets.length - 1];
    Arrays.fill(placeOf, NOT_THERE);
  }

  /**
   * Searches from a piece.
   *
   * @param source place of the piece in the window
   * @param pieces the window
   * @param limit longest way looked for
   */
  void search(int source, int[] pieces, double limit) {
    for (int piece : window) {
      placeOf[piece] = NOT_THERE;
    }
    window = pieces;
    if (pieces.length > heapSize) {
      heapSize = Math.max(pieces.length, 2 * heapSize);
      heap = new NodeHeap(heapSize);
      ways = new double[heapSize];
    }
    for (int i = 0; i < pieces.length; i++) {
      placeOf[pieces[i]] = i;
      ways[i] = Double.POSITIVE_INFINITY;
    }
    ways[source] = 0;
    heap.offer(source, 0);
    while (!heap.isEmpty()) {
      int place = heap.poll();
      int piece = pieces[place];
      if (offsets[piece + 1] - offsets[piece] > (long) MANY * pieces.length) {
        fromOthers(piece, place, limit);
      } else {
        for (int a = offsets[piece]; a < offsets[piece + 1]; a++) {
          int target = placeOf[targets[a]];
          if (target != NOT_THERE) {
            lower(target, ways[place] + lengths[a], limit);
          }
        }
      }
    }
  }

  private void fromOthers(int piece, int place, double limit) {
    for (int other = 0; other < window.length; other++) {
      int neighbour = window[other];
      if (neighbour == piece) {
        continue;
      }
      for (int a = offsets[neighbour]; a < offsets[neighbour + 1]; a++) {
        if (targets[a] == piece) {
          lower(other, ways[place] + lengths[a], limit);
          break;
        }
      }
    }
  }

  private void lower(int target, double way, double limit) {
    if (way < ways[target] && way <= limit) {
      ways[target] = way;
      heap.offer(target, way);
    }
  }

  /** Length of the way to a piece, by its place in the window; infinite where there is none. */
  double way(int place) {
    return ways[place];
  }
}
