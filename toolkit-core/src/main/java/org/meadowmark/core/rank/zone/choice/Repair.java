package org.meadowmark.core.rank.zone.choice;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Makes an allowed choice of one that breaks the limits, and fills what they leave: keeps the zones
 * worth most, takes the worst ends off until the length fits, then adds the best neighbours and new
 * zones that fit.
 */
final class Repair {
  /** A choice farther over the limit is not worth mending. */
  private static final double MOST_LENGTH = 3;

  private final Core core;
  private final ZoneProblem problem;
  private final int[] byRate;

  Repair(Core core, ZoneProblem problem) {
    this.core = core;
    this.problem = problem;
    this.byRate =
        IntStream.range(0, core.size())
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> -rate(i)))
            .mapToInt(i -> i)
            .toArray();
  }

  private double rate(int segment) {
    return core.values[segment] / Math.max(core.lengths[segment], 1e-9);
  }

  /** An allowed choice, or nothing chosen where that is not near. */
  boolean[] mended(PricedForest priced) {
    boolean[] chosen = priced.chosen();
    if (priced.chosenMetres() > MOST_LENGTH * problem.limitMetres()) {
      return new boolean[chosen.length];
    }
    keepBestZones(chosen);
    double length = trim(chosen);
    fill(chosen, length);
    return chosen;
  }

  private void keepBestZones(boolean[] chosen) {
    List<int[]> zones = core.zones(chosen);
    if (zones.size() <= problem.mostZones()) {
      return;
    }
    Arrays.fill(chosen, false);
    zones.stream()
        .sorted(
            Comparator.comparingDouble(
                (int[] zone) -> -Arrays.stream(zone).mapToDouble(i -> core.values[i]).sum()))
        .limit(problem.mostZones())
        .forEach(zone -> Arrays.stream(zone).forEach(i -> chosen[i] = true));
  }

  private double trim(boolean[] chosen) {
    int[] members = IntStream.range(0, chosen.length).filter(i -> chosen[i]).toArray();
    double length = Arrays.stream(members).mapToDouble(i -> core.lengths[i]).sum();
    while (length > problem.limitMetres()) {
      int worst = -1;
      for (int i : members) {
        if (chosen[i] && core.isCorner(i, chosen) && (worst < 0 || rate(i) < rate(worst))) {
          worst = i;
        }
      }
      if (worst < 0) {
        Arrays.fill(chosen, false);
        return 0;
      }
      chosen[worst] = false;
      length -= core.lengths[worst];
    }
    return length;
  }

  private void fill(boolean[] chosen, double startLength) {
    double length = startLength;
    int zones = core.zones(chosen).size();
    boolean added = true;
    while (added) {
      added = false;
      for (int i : byRate) {
        if (core.values[i] == 0) {
          break;
        }
        if (!chosen[i] && length + core.lengths[i] <= problem.limitMetres()) {
          boolean touches = Arrays.stream(core.near[i]).anyMatch(j -> chosen[j]);
          if (touches || zones < problem.mostZones()) {
            chosen[i] = true;
            length += core.lengths[i];
            zones = core.zones(chosen).size();
            added = true;
            break;
          }
        }
      }
    }
  }
}
