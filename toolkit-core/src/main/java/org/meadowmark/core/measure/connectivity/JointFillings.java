package org.meadowmark.core.measure.connectivity;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Growth of Σᵢ Σⱼ aᵢ·aⱼ·p*ᵢⱼ under fillings that are made one after another, each in the graph that
 * those before it left. Gains of several do not add up: two fillings side by side can restore the
 * same ways, and two in a row along one way more than each alone.
 *
 * <p>A filled gap joins two patches A and B. As for a single filling ({@link FillingGains}), only
 * pairs with one patch nearer to A and the other nearer to B gain. The tree of best paths from the
 * side with fewer patches is walked; from each of its patches a search finds how near the other
 * side was before. A branch that cannot gain is stepped over on both sides (Ausiello, Italiano,
 * Marchetti-Spaccamela and Nanni 1991, Journal of Algorithms 12:615–638).
 *
 * <p>Time of one gap: a search for the trees and one for each patch of the smaller side that gains;
 * nothing outside the component is touched. A search takes O(c + r·log r) with r patches within the
 * cut-off and c links at them. Memory: the component's, and some 30 bytes a patch of it.
 *
 * <p>The same cut-off as for a single filling: a path less probable counts as none. This class
 * itself never changes and may be shared; a {@link Work} belongs to one thread.
 */
public final class JointFillings {
  /** Improvements smaller than this share are rounding. */
  private static final double EQUAL = 1 + 1e-12;

  private final HabitatGraph graph;
  private final Decay.Exponential decay;
  private final double numerator;
  private final double[] alone;
  private final List<int[][]> pairs = new ArrayList<>();
  private final List<Component> components;
  private final int[] componentOf;
  private final int[] local;

  JointFillings(
      HabitatGraph graph,
      Decay.Exponential decay,
      double numerator,
      List<Filling> fillings,
      double[] alone) {
    this.graph = graph;
    this.decay = decay;
    this.numerator = numerator;
    this.alone = alone;
    for (Filling filling : fillings) {
      pairs.add(pairs(filling));
    }
    components = Component.of(graph, decay.limit(), fillings.stream().map(Filling::nodes).toList());
    componentOf = new int[graph.nodeCount()];
    local = new int[graph.nodeCount()];
    for (int c = 0; c < components.size(); c++) {
      int[] nodes = components.get(c).nodes;
      for (int i = 0; i < nodes.length; i++) {
        componentOf[nodes[i]] = c;
        local[nodes[i]] = i;
      }
    }
  }

  private static int[][] pairs(Filling filling) {
    List<int[]> found = new ArrayList<>();
    for (Filling.Join join : filling.joins()) {
      if (join.addedHectares() > 0) {
        throw new IllegalArgumentException("areas of gaps are not counted in joint gains");
      }
      for (int i = 1; i < join.nodes().size(); i++) {
        if (!join.nodes().get(i - 1).equals(join.nodes().get(i))) {
          found.add(new int[] {join.nodes().get(i - 1), join.nodes().get(i)});
        }
      }
    }
    return found.toArray(int[][]::new);
  }

  /** {@return number of fillings} */
  public int size() {
    return pairs.size();
  }

  /**
   * {@return what a filling adds to the numerator where nothing else is filled, in square hectares}
   *
   * @param filling number of the filling, from 0 in the order in which they were given
   */
  public double aloneSquareHectares(int filling) {
    return alone[filling];
  }

  /** {@return the numerator with nothing filled} */
  public double numeratorSquareHectares() {
    return numerator;
  }

  /**
   * {@return part of the landscape that a filling lies in; fillings in different parts do not act
   * on each other} -1 for one that joins nothing.
   *
   * @param filling number of the filling, from 0 in the order in which they were given
   */
  public int partOf(int filling) {
    int[][] ofFilling = pairs.get(filling);
    return ofFilling.length == 0 ? -1 : componentOf[ofFilling[0][0]];
  }

  /**
   * {@return numbers of the patches that a filling joins, each once; none for one that joins
   * nothing}
   *
   * @param filling number of the filling, from 0 in the order in which they were given
   */
  public int[] patchesOf(int filling) {
    return Arrays.stream(pairs.get(filling)).flatMapToInt(Arrays::stream).distinct().toArray();
  }

  /**
   * {@return the numerator with fillings made, worked out anew for the whole landscape; one search
   * a patch}
   *
   * @param filled numbers of the fillings that are made
   */
  public double numeratorSquareHectares(Collection<Integer> filled) {
    return filled.isEmpty() ? numerator : RowSums.of(joined(filled), List.of(decay))[0].numerator();
  }

  private HabitatGraph joined(Collection<Integer> filled) {
    int[][] all = filled.stream().flatMap(f -> Arrays.stream(pairs.get(f))).toArray(int[][]::new);
    return graph.joined(
        Arrays.stream(all).mapToInt(pair -> pair[0]).toArray(),
        Arrays.stream(all).mapToInt(pair -> pair[1]).toArray());
  }

  /**
   * What a filling can add to the numerator at most, whichever of some fillings are made before it.
   *
   * <p>A gap between A and B that is crossed with probability p₀ now: whatever else is filled, a
   * pair gains at most p'(s, A)·p'(B, t)·(1 − p₀), with p' where all are filled, since p(s, t) ≥
   * p(s, A)·p₀·p(B, t) holds before; so all pairs together at most (1 − p₀)·(Σ aₛ·p'(s, A))². A
   * filling that is alone in its part adds what it adds alone.
   *
   * <p>Time: two searches a patch at a gap.
   *
   * @param among the fillings that may be made
   * @return one each, in their order
   */
  public double[] mostGains(List<Integer> among) {
    int[] inPart = new int[components.size()];
    among.stream().filter(f -> partOf(f) >= 0).forEach(f -> inPart[partOf(f)]++);
    HabitatGraph all = joined(among);
    List<Component> filled = Component.of(all, decay.limit());
    int[] filledComponent = new int[graph.nodeCount()];
    int[] filledLocal = new int[graph.nodeCount()];
    for (int c = 0; c < filled.size(); c++) {
      int[] nodes = filled.get(c).nodes;
      for (int i = 0; i < nodes.length; i++) {
        filledComponent[nodes[i]] = c;
        filledLocal[nodes[i]] = i;
      }
    }
    double[] most = new double[among.size()];
    Map<Integer, List<int[]>> byPatch = new TreeMap<>();
    for (int k = 0; k < most.length; k++) {
      int part = partOf(among.get(k));
      if (part >= 0 && inPart[part] == 1) {
        most[k] = alone[among.get(k)];
      } else {
        for (int[] pair : pairs.get(among.get(k))) {
          byPatch.computeIfAbsent(pair[0], patch -> new ArrayList<>()).add(new int[] {k, pair[1]});
        }
      }
    }
    ShortestPaths[] before = new ShortestPaths[components.size()];
    ShortestPaths[] after = new ShortestPaths[filled.size()];
    byPatch.forEach(
        (patch, gaps) -> {
          int part = componentOf[patch];
          if (before[part] == null) {
            before[part] = new ShortestPaths(components.get(part));
          }
          int c = filledComponent[patch];
          if (after[c] == null) {
            after[c] = new ShortestPaths(filled.get(c));
          }
          before[part].from(local[patch], decay.limit());
          after[c].from(filledLocal[patch], decay.limit());
          double reached = 0;
          for (int i = 0; i < after[c].count; i++) {
            int node = after[c].order[i];
            reached += filled.get(c).areas[node] * decay.of(after[c].lengths[node]);
          }
          for (int[] gap : gaps) {
            double length = before[part].lengths[local[gap[1]]];
            double now = length < Double.POSITIVE_INFINITY ? decay.of(length) : 0;
            most[gap[0]] += (1 - now) * reached * reached;
          }
        });
    return most;
  }

  /** {@return work with nothing filled, for one thread} */
  public Work begin() {
    return new Work();
  }

  /** Fillings made one after another. Not for several threads. */
  public final class Work {
    private final Filled[] parts = new Filled[components.size()];
    private final Deque<Integer> made = new ArrayDeque<>();
    private final Deque<Double> gains = new ArrayDeque<>();
    private double sum = numerator;
    private long steps;

    private Work() {}

    /** {@return the numerator with the fillings made} */
    public double numeratorSquareHectares() {
      return sum;
    }

    /** {@return patches looked at so far: a measure of the work done, the same on every machine} */
    public long steps() {
      return steps;
    }

    /**
     * {@return what a filling would add to the numerator now, in square hectares; the fillings made
     * stay as they are}
     *
     * @param filling number of the filling, from 0 in the order in which they were given
     */
    public double gain(int filling) {
      double gain = make(filling);
      undo(filling);
      return gain;
    }

    /**
     * Makes a filling, and works out what it adds.
     *
     * @param filling number of the filling, from 0 in the order in which they were given
     */
    public void add(int filling) {
      double gain = make(filling);
      made.push(filling);
      gains.push(gain);
      sum += gain;
    }

    /**
     * Makes a filling whose gain now is known, without working it out again.
     *
     * @param filling number of the filling, from 0 in the order in which they were given
     * @param gain what {@link #gain} gives for it now, in square hectares; taken as it is
     */
    public void add(int filling, double gain) {
      for (int[] pair : pairs.get(filling)) {
        part(filling).joined.join(local[pair[0]], local[pair[1]]);
      }
      made.push(filling);
      gains.push(gain);
      sum += gain;
    }

    /** Takes back the filling made last. */
    public void removeLast() {
      undo(made.pop());
      sum -= gains.pop();
    }

    private Filled part(int filling) {
      int part = partOf(filling);
      if (parts[part] == null) {
        parts[part] = new Filled(components.get(part), decay);
      }
      return parts[part];
    }

    private double make(int filling) {
      double gain = 0;
      for (int[] pair : pairs.get(filling)) {
        Filled part = part(filling);
        long before = part.steps;
        gain += part.gain(local[pair[0]], local[pair[1]]);
        steps += part.steps - before;
        part.joined.join(local[pair[0]], local[pair[1]]);
      }
      return gain;
    }

    private void undo(int filling) {
      int[][] ofFilling = pairs.get(filling);
      for (int i = ofFilling.length - 1; i >= 0; i--) {
        part(filling).joined.part(local[ofFilling[i][0]], local[ofFilling[i][1]]);
      }
    }
  }

  /** A component with gaps filled. */
  private static final class Filled {
    private final Component component;
    private final Decay.Exponential decay;
    private final double smallest;
    private final JoinedNodes joined;
    private final ShortestPaths toGap;
    private final ShortestPaths fromSource;
    private long steps;

    Filled(Component component, Decay.Exponential decay) {
      this.component = component;
      this.decay = decay;
      smallest = decay.cutoff() * (1 - 1e-9);
      joined = new JoinedNodes(component.size());
      toGap = new ShortestPaths(component, joined);
      fromSource = new ShortestPaths(component, joined);
    }

    double gain(int first, int second) {
      toGap.from(new int[] {first, second}, decay.limit());
      steps += toGap.count;
      JoinTrees trees = JoinTrees.of(toGap, decay, false);
      int middle = trees.ends()[0];
      int end = trees.nodes().length;
      boolean isFirstSmaller = middle <= end - middle;
      double gain = 0;
      int i = isFirstSmaller ? 0 : middle;
      int sourcesEnd = isFirstSmaller ? middle : end;
      int targets = isFirstSmaller ? middle : 0;
      while (i < sourcesEnd) {
        double fromThis = gain(trees, i, targets, isFirstSmaller ? end : middle);
        gain += Math.max(0, fromThis);
        i = fromThis < 0 ? trees.ends()[i] : i + 1;
      }
      return 2 * gain;
    }

    /** Gain of a source's pairs with the targets; -1 where the way over the gap is no better. */
    private double gain(JoinTrees trees, int source, int from, int to) {
      int node = trees.nodes()[source];
      fromSource.from(node, decay.limit());
      steps += fromSource.count;
      double toGap = trees.probabilities()[source];
      double gain = 0;
      boolean isBetter = false;
      int i = from;
      while (i < to) {
        int target = trees.nodes()[i];
        double over = toGap * trees.probabilities()[i];
        double length = fromSource.lengths[target];
        double before = length < Double.POSITIVE_INFINITY ? decay.of(length) : 0;
        if (over > before * EQUAL && over >= smallest) {
          gain += component.areas[target] * (over - before);
          isBetter = true;
          i++;
        } else {
          i = trees.ends()[i];
        }
      }
      return isBetter ? component.areas[node] * gain : -1;
    }
  }
}
