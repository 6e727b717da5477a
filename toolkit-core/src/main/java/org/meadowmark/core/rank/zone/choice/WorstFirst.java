package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The plain way to compare with: segments by falling value, ties by position, each taken while it
 * fits in the length and does not make a zone too many. Segments without value are never taken.
 *
 * <p>Time is n log n in segments.
 */
public final class WorstFirst {
  private WorstFirst() {}

  /**
   * {@return positions of the segments taken, ascending}
   *
   * @param problem segments with their values, and the limits
   */
  public static int[] choose(ZoneProblem problem) {
    double[] values = problem.valuesMetres();
    List<Integer> order = new ArrayList<>(IntStream.range(0, values.length).boxed().toList());
    order.sort(Comparator.comparingDouble((Integer i) -> -values[i]));
    int[] zoneOf = new int[values.length];
    Arrays.fill(zoneOf, -1);
    List<List<Integer>> zones = new ArrayList<>();
    int count = 0;
    double length = 0;
    for (int i : order) {
      double longer = length + problem.network().lengthMetres(i);
      if (values[i] == 0) {
        break;
      }
      int[] touched =
          Arrays.stream(problem.network().neighbours(i))
              .map(j -> zoneOf[j])
              .filter(zone -> zone >= 0)
              .distinct()
              .sorted()
              .toArray();
      int after = count + 1 - touched.length;
      if (longer > problem.limitMetres() || after > problem.mostZones()) {
        continue;
      }
      List<Integer> joined = new ArrayList<>(List.of(i));
      for (int zone : touched) {
        joined.addAll(zones.get(zone));
      }
      joined.forEach(member -> zoneOf[member] = zones.size());
      zones.add(joined);
      count = after;
      length = longer;
    }
    return IntStream.range(0, values.length).filter(i -> zoneOf[i] >= 0).toArray();
  }
}
