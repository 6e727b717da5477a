package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * A core laid out as rooted trees of segments and junctions, with what had to be cut.
 *
 * <p>A junction is a set of segments that are all neighbours of each other; every pair of
 * neighbours is in one. A segment hangs on its junctions. Where this makes a loop, one hanging is
 * cut: at the segment that is least attractive, so that cuts lie where hardly any zone goes.
 */
final class Forest {
  /** A segment that no longer hangs on one of its junctions. */
  record Cut(int segment, int junction) {}

  final Core core;
  final int[][] members;
  final List<Cut> cuts = new ArrayList<>();

  /** Number of cuts at each segment. */
  final int[] cutsAt;

  /** Segments, parents before children. */
  final int[] order;

  /** Junction above each segment; -1 for a root. */
  final int[] junctionAbove;

  /** Segment above each junction. */
  final int[] segmentAbove;

  /** Segments below each junction. */
  final int[][] below;

  /** Junctions below each segment. */
  final int[][] junctionsBelow;

  /**
   * Lays out a core.
   *
   * @param attraction of each segment; loops are cut where it is least
   */
  Forest(Core core, double[] attraction) {
    this(core, (segment, junction) -> attraction[segment]);
  }

  /** Attraction of hanging a segment on a junction. */
  interface Attraction {
    double of(int segment, int junction);
  }

  /** Lays out a core; loops are cut at the hanging with least attraction. */
  Forest(Core core, Attraction attraction) {
    this(core, attraction, true);
  }

  /**
   * A core without some of its meetings, so that what is chosen on it is a choice of the core.
   *
   * @param attraction loops lose the hanging with least attraction
   */
  static Forest withoutLoops(Core core, Attraction attraction) {
    return new Forest(core, attraction, false);
  }

  private Forest(Core core, Attraction attraction, boolean keepsCuts) {
    this.core = core;
    int count = core.size();
    members = junctions(core);
    cutsAt = new int[count];
    List<List<Integer>> hanging = new ArrayList<>();
    List<List<Integer>> holding = new ArrayList<>();
    IntStream.range(0, count).forEach(i -> hanging.add(new ArrayList<>()));
    IntStream.range(0, members.length).forEach(q -> holding.add(new ArrayList<>()));
    Sets sets = new Sets(count + members.length);
    for (Cut hang : byAttraction(attraction)) {
      if (sets.join(hang.segment, count + hang.junction)) {
        hanging.get(hang.segment).add(hang.junction);
        holding.get(hang.junction).add(hang.segment);
      } else if (keepsCuts) {
        cuts.add(hang);
        cutsAt[hang.segment]++;
      }
    }
    hanging.forEach(junctions -> junctions.sort(null));
    holding.forEach(segments -> segments.sort(null));
    order = new int[count];
    junctionAbove = new int[count];
    segmentAbove = new int[members.length];
    below = new int[members.length][];
    junctionsBelow = new int[count][];
    layOut(hanging, holding);
  }

  private void layOut(List<List<Integer>> hanging, List<List<Integer>> holding) {
    int count = core.size();
    boolean[] seen = new boolean[count];
    int end = 0;
    int at = 0;
    for (int root = 0; root < count; root++) {
      if (seen[root]) {
        continue;
      }
      seen[root] = true;
      junctionAbove[root] = -1;
      order[end++] = root;
      for (; at < end; at++) {
        int segment = order[at];
        int above = junctionAbove[segment];
        junctionsBelow[segment] =
            hanging.get(segment).stream().filter(q -> q != above).mapToInt(q -> q).toArray();
        for (int junction : junctionsBelow[segment]) {
          segmentAbove[junction] = segment;
          below[junction] =
              holding.get(junction).stream().filter(i -> i != segment).mapToInt(i -> i).toArray();
          for (int child : below[junction]) {
            seen[child] = true;
            junctionAbove[child] = junction;
            order[end++] = child;
          }
        }
      }
    }
  }

  /** Attraction before anything better is known: value, and where there is none nearness to it. */
  static double[] firstAttraction(Core core) {
    double[] metres = Reduction.metresToValue(core);
    double[] attraction = core.values.clone();
    for (int i = 0; i < attraction.length; i++) {
      attraction[i] = attraction[i] > 0 ? attraction[i] : -metres[i];
    }
    return attraction;
  }

  private static int[][] junctions(Core core) {
    Set<Long> covered = new HashSet<>();
    List<int[]> junctions = new ArrayList<>();
    for (int first = 0; first < core.size(); first++) {
      for (int second : core.near[first]) {
        if (second > first && !covered.contains(pair(core, first, second))) {
          int[] junction = grown(core, first, second);
          for (int a = 0; a < junction.length; a++) {
            for (int b = a + 1; b < junction.length; b++) {
              covered.add(pair(core, junction[a], junction[b]));
            }
          }
          junctions.add(junction);
        }
      }
    }
    return junctions.toArray(int[][]::new);
  }

  private static int[] grown(Core core, int first, int second) {
    List<Integer> junction = new ArrayList<>(List.of(first, second));
    for (int candidate : core.near[first]) {
      if (candidate != second && junction.stream().allMatch(i -> core.areNear(i, candidate))) {
        junction.add(candidate);
      }
    }
    return junction.stream().mapToInt(i -> i).sorted().toArray();
  }

  private static long pair(Core core, int low, int high) {
    return (long) low * core.size() + high;
  }

  private List<Cut> byAttraction(Attraction attraction) {
    List<Cut> hangs = new ArrayList<>();
    for (int q = 0; q < members.length; q++) {
      for (int segment : members[q]) {
        hangs.add(new Cut(segment, q));
      }
    }
    hangs.sort(
        Comparator.comparingDouble((Cut hang) -> -attraction.of(hang.segment, hang.junction))
            .thenComparingInt(Cut::segment)
            .thenComparingInt(Cut::junction));
    return hangs;
  }

  /** Disjoint sets with path halving. */
  private static final class Sets {
    private final int[] parent;

    Sets(int count) {
      parent = IntStream.range(0, count).toArray();
    }

    boolean join(int one, int other) {
      int a = find(one);
      int b = find(other);
      parent[Math.max(a, b)] = Math.min(a, b);
      return a != b;
    }

    private int find(int start) {
      int at = start;
      while (parent[at] != at) {
        parent[at] = parent[parent[at]];
        at = parent[at];
      }
      return at;
    }
  }

  /** Segments of the loop that a cut closes with the forest, ascending. */
  int[] loop(Cut cut) {
    return Arrays.stream(loopNodes(cut)).filter(node -> node < core.size()).toArray();
  }

  /**
   * The same with the loop's junctions, which follow the segments: that of 0 is the core's size.
   */
  int[] loopNodes(Cut cut) {
    List<Integer> one = wayUp(cut.segment);
    List<Integer> other = wayUp(core.size() + cut.junction);
    while (one.size() > 1
        && other.size() > 1
        && one.get(one.size() - 2).equals(other.get(other.size() - 2))) {
      one.remove(one.size() - 1);
      other.remove(other.size() - 1);
    }
    return IntStream.concat(
            one.stream().mapToInt(node -> node), other.stream().mapToInt(node -> node))
        .distinct()
        .sorted()
        .toArray();
  }

  /** Nodes up to the root: segments by position, then junctions. */
  private List<Integer> wayUp(int start) {
    List<Integer> way = new ArrayList<>();
    int node = start;
    while (node >= 0) {
      way.add(node);
      int count = core.size();
      if (node >= count) {
        node = segmentAbove[node - count];
      } else {
        node = junctionAbove[node] < 0 ? -1 : count + junctionAbove[node];
      }
    }
    return way;
  }
}
