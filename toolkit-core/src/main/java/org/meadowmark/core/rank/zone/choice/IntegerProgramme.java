package org.meadowmark.core.rank.zone.choice;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.ojalgo.concurrent.Parallelism;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import org.ojalgo.optimisation.integer.IntegerStrategy;

/**
 * Exact choice on a core with loops, by the general mixed-integer solver of ojAlgo.
 *
 * <p>Variables: x of each segment (chosen), z of each junction (touched), y of each cut of the
 * {@link Forest} (the cut hanging joins two parts of a zone). Maximise Σ value·x with
 *
 * <ul>
 *   <li>Σ length·x ≤ limit;
 *   <li>zones: Σ x + Σ z − (hangings of chosen segments that are not cut) − Σ y ≤ most zones, since
 *       a forest has as many parts as it has nodes less edges;
 *   <li>z ≥ x at each junction of a segment, y ≤ x of its segment;
 *   <li>what joins parts makes no loop: for each loop, the y on it and the x on it add up to no
 *       more than their number less one. The loop that each cut closes is there from the start;
 *       others are added when a solution breaks them, and the programme is solved again.
 * </ul>
 *
 * <p>Why this solver: it is general, keeps to the platform (pure Java, no native code), needs no
 * other library, and its branch and bound runs in one thread here, so that the same input gives the
 * same choice. Its work is limited by iterations, not by a clock.
 */
final class IntegerProgramme {
  private static final double HALF = 0.5;
  private static final int MOST_ROUNDS = 50;

  /** A loop: segments on it and cuts on it. */
  private record Loop(TreeSet<Integer> segments, TreeSet<Integer> cuts) {}

  /** Way to a node: segments by position, then junctions; the cut on it, or -1. */
  private record Edge(int to, int cut) {}

  private final Forest forest;
  private final Core core;
  private final ZoneProblem problem;
  private final int iterations;

  private IntegerProgramme(Forest forest, ZoneProblem problem, int iterations) {
    this.forest = forest;
    this.core = forest.core;
    this.problem = problem;
    this.iterations = iterations;
  }

  /**
   * Solves and offers a better choice to the incumbent.
   *
   * @param iterations most iterations of the solver
   * @return whether it is proven that nothing on the core beats the incumbent
   */
  static boolean run(Forest forest, ZoneProblem problem, Incumbent incumbent, int iterations) {
    return new IntegerProgramme(forest, problem, iterations).run(incumbent);
  }

  private boolean run(Incumbent incumbent) {
    List<Loop> loops = new ArrayList<>();
    for (int c = 0; c < forest.cuts.size(); c++) {
      loops.add(loopOf(c));
    }
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Model model = new Model(loops, incumbent.covered());
      Optimisation.Result result = model.programme.maximise();
      if (result.getState() == Optimisation.State.INFEASIBLE) {
        return true;
      }
      if (!result.getState().isFeasible()) {
        return false;
      }
      boolean[] chosen = model.chosen(result);
      boolean[] joined = model.joined(result);
      boolean proven = result.getState().isOptimal();
      if (core.zones(chosen).size() <= problem.mostZones()) {
        incumbent.offer(core, chosen);
        double value = 0;
        for (int i = 0; i < chosen.length; i++) {
          value += chosen[i] ? core.values[i] : 0;
        }
        // A choice over the limit by the solver's tolerance is not taken, and then proves nothing.
        return proven && value <= incumbent.covered() * (1 + 2 * Incumbent.SAME);
      }
      Loop broken = brokenLoop(chosen, joined);
      if (broken == null) {
        return false;
      }
      loops.add(broken);
    }
    return false;
  }

  private final class Model {
    final ExpressionsBasedModel programme = new ExpressionsBasedModel();
    final Variable[] x = new Variable[core.size()];
    final Variable[] y = new Variable[forest.cuts.size()];

    Model(List<Loop> loops, double atLeast) {
      programme.options.integer(IntegerStrategy.DEFAULT.withParallelism(Parallelism.ONE));
      programme.options.iterations_abort = iterations;
      programme.options.iterations_suffice = iterations;
      programme.options.time_abort = Long.MAX_VALUE;
      programme.options.time_suffice = Long.MAX_VALUE;
      double scale = Arrays.stream(core.values).max().orElse(1);
      for (int i = 0; i < x.length; i++) {
        x[i] = programme.newVariable("x" + i).binary().weight(core.values[i] / scale);
      }
      for (int c = 0; c < y.length; c++) {
        y[c] = programme.newVariable("y" + c).binary();
      }
      Variable[] z = new Variable[forest.members.length];
      for (int q = 0; q < z.length; q++) {
        z[q] = programme.newVariable("z" + q).lower(0).upper(1);
      }
      limits(z, scale, atLeast);
      for (int q = 0; q < z.length; q++) {
        for (int i : forest.members[q]) {
          Expression touched = programme.newExpression("touched" + q + "by" + i).lower(0);
          touched.set(z[q], 1).set(x[i], -1);
        }
      }
      for (int c = 0; c < y.length; c++) {
        programme
            .newExpression("joins" + c)
            .upper(0)
            .set(y[c], 1)
            .set(x[forest.cuts.get(c).segment()], -1);
      }
      for (Loop loop : loops) {
        int count = loop.segments.size() + loop.cuts.size();
        Expression open = programme.newExpression("loop" + loop).upper(count - 1);
        loop.segments.forEach(i -> open.set(x[i], 1));
        loop.cuts.forEach(c -> open.set(y[c], 1));
      }
    }

    private void limits(Variable[] z, double scale, double atLeast) {
      double metres = Math.max(problem.totalLengthMetres(), 1e-9);
      Expression length = programme.newExpression("length").upper(1);
      Expression zones = programme.newExpression("zones").upper(problem.mostZones());
      Expression value = programme.newExpression("value").lower(atLeast / scale * (1 - 1e-7));
      int[] hangings = new int[x.length];
      for (int[] junction : forest.members) {
        for (int i : junction) {
          hangings[i]++;
        }
      }
      for (int i = 0; i < x.length; i++) {
        length.set(x[i], core.lengths[i] / metres);
        zones.set(x[i], 1 - (hangings[i] - forest.cutsAt[i]));
        value.set(x[i], core.values[i] / scale);
      }
      for (Variable junction : z) {
        zones.set(junction, 1);
      }
      for (Variable cut : y) {
        zones.set(cut, -1);
      }
    }

    boolean[] chosen(Optimisation.Result result) {
      return values(x, result);
    }

    boolean[] joined(Optimisation.Result result) {
      return values(y, result);
    }

    private boolean[] values(Variable[] variables, Optimisation.Result result) {
      boolean[] values = new boolean[variables.length];
      for (int i = 0; i < values.length; i++) {
        BigDecimal value = result.get(programme.indexOf(variables[i]));
        values[i] = value.doubleValue() > HALF;
      }
      return values;
    }
  }

  /** The loop that a cut closes with the forest. */
  private Loop loopOf(int cut) {
    Forest.Cut hang = forest.cuts.get(cut);
    Map<Integer, Edge> up = new HashMap<>();
    for (int i = 0; i < core.size(); i++) {
      int above = forest.junctionAbove[i];
      up.put(i, new Edge(above < 0 ? -1 : core.size() + above, -1));
    }
    for (int q = 0; q < forest.members.length; q++) {
      up.put(core.size() + q, new Edge(forest.segmentAbove[q], -1));
    }
    return closed(hang.segment(), new Edge(core.size() + hang.junction(), cut), up);
  }

  /** A loop among chosen segments, their hangings that are not cut, and the cuts that join. */
  private Loop brokenLoop(boolean[] chosen, boolean[] joined) {
    Map<Integer, List<Edge>> edges = edges(chosen, joined);
    Map<Integer, Edge> up = new HashMap<>();
    for (int start : edges.keySet()) {
      if (up.containsKey(start)) {
        continue;
      }
      up.put(start, new Edge(-1, -1));
      List<Integer> queue = new ArrayList<>(List.of(start));
      for (int at = 0; at < queue.size(); at++) {
        int node = queue.get(at);
        for (Edge edge : edges.get(node)) {
          if (!up.containsKey(edge.to)) {
            up.put(edge.to, new Edge(node, edge.cut));
            queue.add(edge.to);
          } else if (edge.to != up.get(node).to) {
            return closed(node, edge, up);
          }
        }
      }
    }
    return null;
  }

  private Map<Integer, List<Edge>> edges(boolean[] chosen, boolean[] joined) {
    Map<Forest.Cut, Integer> cuts = new HashMap<>();
    for (int c = 0; c < forest.cuts.size(); c++) {
      cuts.put(forest.cuts.get(c), c);
    }
    Map<Integer, List<Edge>> edges = new TreeMap<>();
    for (int q = 0; q < forest.members.length; q++) {
      int junction = core.size() + q;
      for (int i : forest.members[q]) {
        int cut = cuts.getOrDefault(new Forest.Cut(i, q), -1);
        if (chosen[i] && (cut < 0 || joined[cut])) {
          edges.computeIfAbsent(i, n -> new ArrayList<>()).add(new Edge(junction, cut));
          edges.computeIfAbsent(junction, n -> new ArrayList<>()).add(new Edge(i, cut));
        }
      }
    }
    return edges;
  }

  /** The loop that an edge closes in a tree. */
  private Loop closed(int node, Edge edge, Map<Integer, Edge> up) {
    List<Integer> one = wayUp(node, up);
    List<Integer> other = wayUp(edge.to, up);
    while (one.size() > 1
        && other.size() > 1
        && one.get(one.size() - 2).equals(other.get(other.size() - 2))) {
      one.remove(one.size() - 1);
      other.remove(other.size() - 1);
    }
    TreeSet<Integer> segments = new TreeSet<>();
    TreeSet<Integer> cuts = new TreeSet<>();
    if (edge.cut >= 0) {
      cuts.add(edge.cut);
    }
    for (List<Integer> way : List.of(one, other)) {
      for (int i = 0; i < way.size(); i++) {
        if (way.get(i) < core.size()) {
          segments.add(way.get(i));
        }
        if (i + 1 < way.size() && up.get(way.get(i)).cut >= 0) {
          cuts.add(up.get(way.get(i)).cut);
        }
      }
    }
    return new Loop(segments, cuts);
  }

  private static List<Integer> wayUp(int node, Map<Integer, Edge> up) {
    List<Integer> way = new ArrayList<>();
    for (int at = node; at >= 0; at = up.get(at).to) {
      way.add(at);
    }
    return way;
  }
}
