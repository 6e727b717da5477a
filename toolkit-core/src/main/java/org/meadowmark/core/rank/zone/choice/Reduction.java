package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.PriorityQueue;

/**
 * Leaves out segments that no best choice needs.
 *
 * <p>A best choice without spare segments has no worthless one at the end of a zone: each joins two
 * that have a value. So these go: a segment longer than the limit; a worthless one whose neighbours
 * all meet each other; a worthless one that is so far from value on its nearest side that twice the
 * way does not fit in the limit. Time is n log n in segments.
 */
final class Reduction {
  private record Reached(double metres, int segment) {}

  private final Core core;
  private final double limit;
  private final boolean[] kept;

  private Reduction(Core core, double limit) {
    this.core = core;
    this.limit = limit;
    this.kept = new boolean[core.size()];
    Arrays.fill(kept, true);
  }

  static Core reduce(Core core, double limit) {
    Reduction reduction = new Reduction(core, limit);
    reduction.dropTooLong();
    double[] away = reduction.metresToValue();
    for (int i = 0; i < core.size(); i++) {
      if (core.values[i] == 0 && core.lengths[i] + 2 * away[i] > limit) {
        reduction.kept[i] = false;
      }
    }
    reduction.dropWorthlessEnds();
    return core.only(reduction.kept);
  }

  private void dropTooLong() {
    for (int i = 0; i < core.size(); i++) {
      kept[i] = core.lengths[i] <= limit;
    }
  }

  /** Shortest way from beside a segment to the far end of one with a value. */
  private double[] metresToValue() {
    double[] metres = new double[core.size()];
    Arrays.fill(metres, Double.POSITIVE_INFINITY);
    PriorityQueue<Reached> open =
        new PriorityQueue<>(
            Comparator.comparingDouble(Reached::metres).thenComparingInt(Reached::segment));
    for (int i = 0; i < core.size(); i++) {
      if (kept[i] && core.values[i] > 0) {
        open.add(new Reached(0, i));
        metres[i] = 0;
      }
    }
    while (!open.isEmpty()) {
      Reached from = open.poll();
      if (from.metres > metres[from.segment]) {
        continue;
      }
      double beside = from.metres + core.lengths[from.segment];
      for (int next : core.near[from.segment]) {
        if (kept[next] && beside < metres[next]) {
          metres[next] = beside;
          open.add(new Reached(beside, next));
        }
      }
    }
    return metres;
  }

  private void dropWorthlessEnds() {
    Deque<Integer> open = new ArrayDeque<>();
    for (int i = 0; i < core.size(); i++) {
      open.add(i);
    }
    while (!open.isEmpty()) {
      int i = open.poll();
      if (kept[i] && core.values[i] == 0 && core.isCorner(i, kept)) {
        kept[i] = false;
        for (int next : core.near[i]) {
          open.add(next);
        }
      }
    }
  }
}
