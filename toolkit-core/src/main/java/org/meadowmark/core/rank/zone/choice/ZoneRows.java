package org.meadowmark.core.rank.zone.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The choice as an integer programme: columns that are 0 or 1, and rows that each say that a sum is
 * at most so much.
 *
 * <p>A column stands for each segment <i>x</i>; one for each place where two segments meet,
 * <i>z</i>, which may be 1 only where both are chosen; and for a junction of three or more one for
 * itself, <i>w</i>, and one for each segment that hangs on it, <i>z</i> ≤ <i>x</i>, <i>z</i> ≤
 * <i>w</i>. As long as what is joined has no loop, Σ<i>x</i> + Σ<i>w</i> − Σ<i>z</i> is the number
 * of zones. That it has none is said, for any set of segments and junctions and any segment
 * <i>j</i> in it, by Σ<i>z</i> − Σ<i>w</i> ≤ Σ<i>x</i> − <i>x</i><sub>j</sub> over the set
 * (generalised subtour elimination: Goemans, M. X. (1994), Mathematical Programming 63:157–182,
 * from memory). There are too many such rows, so those are added that a solution breaks.
 */
final class ZoneRows {
  /** A sum of columns that is at most so much. */
  record Row(int[] columns, double[] factors, double most) {}

  private static final double BROKEN = 1e-4;

  final Core core;
  final double limitMetres;
  final int mostZones;
  final int columns;
  final List<Row> rows = new ArrayList<>();
  private final int[][] members;

  /** Column of the meeting of two, or of a junction of more; then those that hang on it. */
  private final int[] firstColumn;

  private final Set<List<Integer>> had = new HashSet<>();

  ZoneRows(Core core, ZoneProblem problem) {
    this.core = core;
    this.limitMetres = problem.limitMetres();
    this.mostZones = problem.mostZones();
    this.members = new Forest(core, core.values).members;
    this.firstColumn = new int[members.length];
    int next = core.size();
    for (int q = 0; q < members.length; q++) {
      firstColumn[q] = next;
      next += members[q].length == 2 ? 1 : 1 + members[q].length;
    }
    columns = next;
    addLimits();
    addMeetings();
  }

  private void addLimits() {
    int count = core.size();
    rows.add(new Row(IntStream.range(0, count).toArray(), core.lengths.clone(), limitMetres));
    double[] factors = new double[columns];
    Arrays.fill(factors, 0, count, 1);
    for (int q = 0; q < members.length; q++) {
      boolean isPair = members[q].length == 2;
      Arrays.fill(factors, firstColumn[q], end(q), -1);
      factors[firstColumn[q]] = isPair ? -1 : 1;
    }
    rows.add(new Row(IntStream.range(0, columns).toArray(), factors, mostZones));
  }

  private int end(int junction) {
    return junction + 1 < firstColumn.length ? firstColumn[junction + 1] : columns;
  }

  private void addMeetings() {
    for (int q = 0; q < members.length; q++) {
      int first = firstColumn[q];
      boolean isPair = members[q].length == 2;
      for (int m = 0; m < members[q].length; m++) {
        int hang = isPair ? first : first + 1 + m;
        addAtMost(hang, members[q][m]);
        if (!isPair) {
          addAtMost(hang, first);
        }
      }
    }
  }

  private void addAtMost(int column, int other) {
    rows.add(new Row(new int[] {column, other}, new double[] {1, -1}, 0));
  }

  /**
   * Adds rows for loops that a solution breaks, most broken first.
   *
   * @param most rows to add
   * @return how many were added
   */
  int addBrokenLoops(double[] solution, int most) {
    record Broken(Row row, double by) {}
    List<Broken> broken = new ArrayList<>();
    for (Forest forest :
        List.of(
            new Forest(core, (segment, junction) -> solution[hang(segment, junction)]),
            new Forest(core, Arrays.copyOf(solution, core.size())))) {
      for (Forest.Cut cut : forest.cuts) {
        if (solution[cut.segment()] > BROKEN) {
          Row row = row(forest.loopNodes(cut), solution);
          double by = excess(row, solution);
          if (by > BROKEN) {
            broken.add(new Broken(row, by));
          }
        }
      }
    }
    broken.sort(Comparator.comparingDouble((Broken each) -> -each.by));
    int added = 0;
    for (Broken each : broken) {
      if (added < most && had.add(Arrays.stream(each.row.columns).boxed().toList())) {
        rows.add(each.row);
        added++;
      }
    }
    return added;
  }

  /** Column of a segment's hanging on a junction. */
  int hang(int segment, int junction) {
    int first = firstColumn[junction];
    return members[junction].length == 2
        ? first
        : first + 1 + Arrays.binarySearch(members[junction], segment);
  }

  /** Adds a row for each zone of a choice, so that it counts as one. */
  void addZones(boolean[] chosen) {
    double[] solution = new double[columns];
    for (int i = 0; i < chosen.length; i++) {
      solution[i] = chosen[i] ? 1 : 0;
    }
    for (int[] zone : core.zones(chosen)) {
      boolean[] inside = new boolean[core.size()];
      Arrays.stream(zone).forEach(i -> inside[i] = true);
      IntStream junctions =
          IntStream.range(0, members.length)
              .filter(q -> Arrays.stream(members[q]).filter(i -> inside[i]).count() > 1)
              .map(q -> core.size() + q);
      rows.add(row(IntStream.concat(Arrays.stream(zone), junctions).toArray(), solution));
    }
  }

  /** Of a set, and its segment that the solution has least of. */
  private Row row(int[] nodes, double[] solution) {
    int count = core.size();
    int[] segments = Arrays.stream(nodes).filter(node -> node < count).toArray();
    boolean[] inside = new boolean[count];
    Arrays.stream(segments).forEach(i -> inside[i] = true);
    int least = segments[0];
    for (int i : segments) {
      least = solution[i] < solution[least] ? i : least;
    }
    List<Integer> of = new ArrayList<>();
    List<Double> factors = new ArrayList<>();
    for (int i : segments) {
      if (i != least) {
        of.add(i);
        factors.add(-1.0);
      }
    }
    for (int node : nodes) {
      if (node >= count) {
        addJunction(node - count, inside, of, factors);
      }
    }
    return new Row(
        of.stream().mapToInt(column -> column).toArray(),
        factors.stream().mapToDouble(factor -> factor).toArray(),
        0);
  }

  private void addJunction(int junction, boolean[] inside, List<Integer> of, List<Double> factors) {
    int first = firstColumn[junction];
    of.add(first);
    if (members[junction].length == 2) {
      factors.add(1.0);
      return;
    }
    factors.add(-1.0);
    for (int m = 0; m < members[junction].length; m++) {
      if (inside[members[junction][m]]) {
        of.add(first + 1 + m);
        factors.add(1.0);
      }
    }
  }

  private static double excess(Row row, double[] solution) {
    double sum = -row.most;
    for (int c = 0; c < row.columns.length; c++) {
      sum += row.factors[c] * solution[row.columns[c]];
    }
    return sum;
  }
}
