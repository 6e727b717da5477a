package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** The best choice found so far. Keeps the first of two that are as good. */
final class Incumbent {
  /** Values closer than this share are the same but for rounding. */
  static final double SAME = 1e-10;

  private final ZoneProblem problem;
  private final Core whole;
  private final double[] values;
  private boolean[] chosen;
  private double covered;

  Incumbent(ZoneProblem problem, Core whole) {
    this.problem = problem;
    this.whole = whole;
    this.values = whole.values;
    this.chosen = new boolean[whole.size()];
  }

  double covered() {
    return covered;
  }

  /** What a choice must be worth to be better than by rounding. */
  double toBeat() {
    return covered + SAME * covered;
  }

  /** Takes a choice over if it is allowed and better. */
  void offer(Core core, boolean[] ofCore) {
    boolean[] offered = new boolean[values.length];
    double length = 0;
    double value = 0;
    for (int i = 0; i < ofCore.length; i++) {
      if (ofCore[i]) {
        for (int segment : core.segments[i]) {
          offered[segment] = true;
        }
        length += core.lengths[i];
        value += core.values[i];
      }
    }
    boolean better = covered == 0 ? value > 0 : value > toBeat();
    if (better
        && length <= problem.limitMetres()
        && core.zones(ofCore).size() <= problem.mostZones()) {
      chosen = offered;
      covered = value;
    }
  }

  /** The choice without segments that add nothing at the ends of a zone. */
  ZoneChoice choice(double upperBound, ZoneChoice.Proof proof) {
    dropWorthlessEnds();
    List<int[]> zones = new ArrayList<>(whole.zones(chosen));
    zones.sort(
        Comparator.comparingDouble((int[] zone) -> -sum(values, zone))
            .thenComparingInt(zone -> zone[0]));
    int[] all = zones.stream().flatMapToInt(Arrays::stream).sorted().toArray();
    double total = sum(values, all);
    return new ZoneChoice(
        zones, sum(whole.lengths, all), total, Math.max(upperBound, total), proof);
  }

  private void dropWorthlessEnds() {
    boolean dropped = true;
    while (dropped) {
      dropped = false;
      for (int i = chosen.length - 1; i >= 0; i--) {
        if (chosen[i] && values[i] == 0 && whole.isCorner(i, chosen)) {
          chosen[i] = false;
          dropped = true;
        }
      }
    }
  }

  private static double sum(double[] of, int[] positions) {
    return Arrays.stream(positions).mapToDouble(i -> of[i]).sum();
  }
}
