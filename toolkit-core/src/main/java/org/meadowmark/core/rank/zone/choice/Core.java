package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** The part of a network that can still matter, with positions of its own. */
final class Core {
  /** Positions in the whole network; more than one where segments were joined. */
  final int[][] segments;

  final double[] values;
  final double[] lengths;
  final int[][] near;

  private Core(int[][] segments, double[] values, double[] lengths, int[][] near) {
    this.segments = segments;
    this.values = values;
    this.lengths = lengths;
    this.near = near;
  }

  static Core of(ZoneProblem problem) {
    int count = problem.network().size();
    int[][] segments = new int[count][];
    double[] lengths = new double[count];
    int[][] near = new int[count][];
    for (int i = 0; i < count; i++) {
      segments[i] = new int[] {i};
      lengths[i] = problem.network().lengthMetres(i);
      near[i] = problem.network().neighbours(i);
    }
    return new Core(segments, problem.valuesMetres(), lengths, near);
  }

  int size() {
    return segments.length;
  }

  boolean areNear(int one, int other) {
    return Arrays.binarySearch(near[one], other) >= 0;
  }

  Core only(boolean[] kept) {
    int[] place = new int[size()];
    int count = 0;
    for (int i = 0; i < size(); i++) {
      place[i] = kept[i] ? count++ : -1;
    }
    int[][] keptSegments = new int[count][];
    double[] keptValues = new double[count];
    double[] keptLengths = new double[count];
    int[][] keptNear = new int[count][];
    for (int i = 0; i < size(); i++) {
      if (kept[i]) {
        keptSegments[place[i]] = segments[i];
        keptValues[place[i]] = values[i];
        keptLengths[place[i]] = lengths[i];
        keptNear[place[i]] =
            Arrays.stream(near[i]).filter(j -> kept[j]).map(j -> place[j]).toArray();
      }
    }
    return new Core(keptSegments, keptValues, keptLengths, keptNear);
  }

  /** The same with some segments, which hang together, joined to one in place of the first. */
  Core joined(int[] together) {
    int first = Arrays.stream(together).min().orElseThrow();
    boolean[] kept = new boolean[size()];
    Arrays.fill(kept, true);
    TreeSet<Integer> around = new TreeSet<>();
    double value = 0;
    double length = 0;
    List<int[]> all = new ArrayList<>();
    for (int i : together) {
      kept[i] = i == first;
      value += values[i];
      length += lengths[i];
      all.add(segments[i]);
      Arrays.stream(near[i]).forEach(around::add);
    }
    Arrays.stream(together).forEach(around::remove);
    int[][] joinedNear = near.clone();
    joinedNear[first] = around.stream().mapToInt(i -> i).toArray();
    for (int i : around) {
      joinedNear[i] =
          IntStream.concat(Arrays.stream(near[i]), IntStream.of(first))
              .sorted()
              .distinct()
              .toArray();
    }
    int[][] joinedSegments = segments.clone();
    joinedSegments[first] = all.stream().flatMapToInt(Arrays::stream).sorted().toArray();
    double[] joinedValues = values.clone();
    joinedValues[first] = value;
    double[] joinedLengths = lengths.clone();
    joinedLengths[first] = length;
    return new Core(joinedSegments, joinedValues, joinedLengths, joinedNear).only(kept);
  }

  /** Connected sets of chosen segments, each ascending, by first member. */
  List<int[]> zones(boolean[] chosen) {
    boolean[] seen = new boolean[size()];
    List<int[]> zones = new ArrayList<>();
    int[] queue = new int[size()];
    for (int i = 0; i < size(); i++) {
      if (chosen[i] && !seen[i]) {
        int end = 0;
        queue[end++] = i;
        seen[i] = true;
        for (int at = 0; at < end; at++) {
          for (int next : near[queue[at]]) {
            if (chosen[next] && !seen[next]) {
              seen[next] = true;
              queue[end++] = next;
            }
          }
        }
        int[] zone = Arrays.copyOf(queue, end);
        Arrays.sort(zone);
        zones.add(zone);
      }
    }
    return zones;
  }

  /** Whether the rest of a connected set stays connected without a member, seen from its side. */
  boolean isCorner(int segment, boolean[] chosen) {
    int[] around = near[segment];
    for (int a = 0; a < around.length; a++) {
      for (int b = a + 1; chosen[around[a]] && b < around.length; b++) {
        if (chosen[around[b]] && !areNear(around[a], around[b])) {
          return false;
        }
      }
    }
    return true;
  }
}
