package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;
import java.util.List;

/**
 * Σᵢ Σⱼ aᵢ·aⱼ / (1 + nlᵢⱼ) by breadth-first search from 256 nodes at once, one bit each.
 *
 * <p>Then, Kaufmann, Chirigati, Hoang-Vu, Pham, Kemper, Neumann and Vo (2014), <i>The more the
 * merrier: efficient multi-source graph traversal</i>, Proceedings of the VLDB Endowment 8:449–460.
 *
 * <p>Time: every pair of a component is counted once for each of its ends, O(Σ s²) for components
 * of s nodes, and its links are scanned s/256 times a level at most. Memory O(n) a thread.
 */
final class LinkCountSums {
  private static final int WORDS = 4;
  private static final int WIDTH = WORDS * Long.SIZE;

  private LinkCountSums() {}

  static double of(List<Component> components) {
    return Component.Block.of(components).parallelStream()
        .map(block -> new Search(block.component()).sum(block.from(), block.to()))
        .toList()
        .stream()
        .mapToDouble(Double::doubleValue)
        // Not sum(): the order of addition is part of the result.
        .reduce(0, Double::sum);
  }

  private static final class Search {
    private final Component component;
    private final long[] seen;
    private final long[] next;
    private final long[] bits;
    private final int[] frontier;
    private final int[] reached;
    private final boolean[] isReached;

    Search(Component component) {
      this.component = component;
      int n = component.size();
      seen = new long[WORDS * n];
      next = new long[WORDS * n];
      bits = new long[WORDS * n];
      frontier = new int[n];
      reached = new int[n];
      isReached = new boolean[n];
    }

    double sum(int first, int last) {
      double sum = 0;
      for (int from = first; from < last; from += WIDTH) {
        sum += sumFrom(from, Math.min(last, from + WIDTH));
      }
      return sum;
    }

    private double sumFrom(int from, int to) {
      double sum = 0;
      Arrays.fill(seen, 0);
      int size = 0;
      for (int s = from; s < to; s++) {
        int word = WORDS * s + (s - from) / Long.SIZE;
        Arrays.fill(bits, WORDS * s, WORDS * s + WORDS, 0);
        seen[word] = 1L << (s - from);
        bits[word] = seen[word];
        frontier[size++] = s;
        sum += component.areas[s] * component.areas[s];
      }
      for (int links = 1; size > 0; links++) {
        int reachedCount = spread(size);
        double level = 0;
        size = 0;
        for (int i = 0; i < reachedCount; i++) {
          int v = reached[i];
          isReached[v] = false;
          double area = keepFresh(v, from);
          if (area >= 0) {
            frontier[size++] = v;
            level += component.areas[v] * area;
          }
        }
        sum += level / (1 + links);
      }
      return sum;
    }

    /** Sources that reach a node for the first time are its bits; gives their area, -1 for none. */
    private double keepFresh(int v, int from) {
      double area = 0;
      long any = 0;
      for (int w = 0; w < WORDS; w++) {
        int word = WORDS * v + w;
        long fresh = next[word] & ~seen[word];
        next[word] = 0;
        bits[word] = fresh;
        seen[word] |= fresh;
        any |= fresh;
        int offset = from + w * Long.SIZE;
        for (long rest = fresh; rest != 0; rest &= rest - 1) {
          area += component.areas[offset + Long.numberOfTrailingZeros(rest)];
        }
      }
      return any == 0 ? -1 : area;
    }

    private int spread(int size) {
      int count = 0;
      for (int i = 0; i < size; i++) {
        int u = frontier[i];
        long first = bits[WORDS * u];
        long second = bits[WORDS * u + 1];
        long third = bits[WORDS * u + 2];
        long fourth = bits[WORDS * u + 3];
        for (int a = component.offsets[u]; a < component.offsets[u + 1]; a++) {
          int v = component.targets[a];
          if (!isReached[v]) {
            isReached[v] = true;
            reached[count++] = v;
          }
          next[WORDS * v] |= first;
          next[WORDS * v + 1] |= second;
          next[WORDS * v + 2] |= third;
          next[WORDS * v + 3] |= fourth;
        }
      }
      return count;
    }
  }
}
