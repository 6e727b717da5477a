package org.meadowmark.core.change.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/**
 * Decides which metres of candidate pairs are the same.
 *
 * <p>Every scar is cut into {@link Atoms}. Metres flow from the earlier scars' atoms, through
 * pairs, to the later scars' atoms: none can be used twice, and a pair carries no more than its
 * overlap. The flow that is worth most is taken. A metre is worth (1 − d²/T²)·(1 + s)/2, with d the
 * root mean square distance of the pair, T the tolerance and s the share of the longer of the two
 * scars that the pair covers. The first factor falls with the square of the distance, as the
 * logarithm of a normal error's density does, and is 0 where no match is as good as a match; the
 * second lets a scar be its whole like before it is a fragment.
 *
 * <p>A link smaller than the least share of the shorter scar does not tell that the two are the
 * same. First only pairs that can tell take part. Links that carry too little to tell, between
 * scars of which one is told by nothing else, are dropped, and the flow is found again, now also
 * through small pairs of scars that are told both. That keeps the metres of a border that was drawn
 * elsewhere. What is too small then is dropped for good. Sets of thousands of pairs are solved
 * once.
 *
 * <p>Where two scars run side by side, but one is drawn with more bends, it is longer over the same
 * course. These metres of it are assigned too, if nothing else has them: they are no change.
 *
 * <p>Source: the transportation problem as a flow of least cost, as in Ahuja, Magnanti &amp; Orlin
 * (1993) <i>Network Flows</i>, chapters 1 and 9 (from memory).
 */
final class Assignment {
  private static final double COSTS_PER_WORTH = 10_000;

  /** Sets of more pairs, in piles of scars, keep what the first flow gave them. */
  private static final int MOST_PAIRS_TWICE = 5_000;

  /** What rounding to whole units leaves over here and there: less is no link. */
  private static final long CRUMB_UNITS = 10;

  private final List<ComparedTrace> earlier;
  private final List<ComparedTrace> later;
  private final List<Pair> pairs;
  private final double toleranceMetres;
  private final double leastShare;
  private final FlowSolver solver;
  private final Side[] earlierSides;
  private final Side[] laterSides;

  /** What each pair carries, and from which atoms to which. */
  private final long[] carried;

  private final long[][] taken;
  private final long[][] given;

  /**
   * What a pair carries.
   *
   * @param pair the pair
   * @param earlierMetres metres used up on the earlier scar
   * @param laterMetres metres used up on the later scar
   * @param telling whether that is enough to say that the two are the same
   */
  record Assigned(Pair pair, double earlierMetres, double laterMetres, boolean telling) {}

  /** Pieces of one scar, and how much of each is free. */
  private static final class Side {
    final Atoms atoms;
    final long[] free;

    Side(Atoms atoms) {
      this.atoms = atoms;
      this.free = new long[atoms.size()];
      Arrays.setAll(free, i -> atoms.units(i));
    }

    long freeUnder(double[] cover) {
      long sum = 0;
      for (int i = 0; i < free.length; i++) {
        sum += atoms.isUnder(i, cover) ? free[i] : 0;
      }
      return sum;
    }

    /** Takes up to so many free units under a cover. */
    long take(double[] cover, long wanted) {
      long made = 0;
      for (int i = 0; i < free.length && made < wanted; i++) {
        if (atoms.isUnder(i, cover)) {
          long here = Math.min(free[i], wanted - made);
          free[i] -= here;
          made += here;
        }
      }
      return made;
    }

    void add(long[] units, int sign) {
      for (int i = 0; i < free.length; i++) {
        free[i] += sign * units[i];
      }
    }
  }

  private Assignment(
      List<ComparedTrace> earlier,
      List<ComparedTrace> later,
      List<Pair> pairs,
      double toleranceMetres,
      double leastShare,
      FlowSolver solver) {
    this.earlier = earlier;
    this.later = later;
    this.pairs = pairs;
    this.toleranceMetres = toleranceMetres;
    this.leastShare = leastShare;
    this.solver = solver;
    earlierSides = sides(earlier, Pair::earlier, true);
    laterSides = sides(later, Pair::later, false);
    carried = new long[pairs.size()];
    taken = new long[pairs.size()][];
    given = new long[pairs.size()][];
  }

  /**
   * Assigns metres.
   *
   * @param pairs candidate pairs, in order of earlier and then later scar
   * @return pairs that carry something, in the same order
   */
  static List<Assigned> of(
      List<ComparedTrace> earlier,
      List<ComparedTrace> later,
      List<Pair> pairs,
      double toleranceMetres,
      double leastShare,
      FlowSolver solver) {
    return new Assignment(earlier, later, pairs, toleranceMetres, leastShare, solver).run();
  }

  private Side[] sides(List<ComparedTrace> scars, ToIntFunction<Pair> scarOf, boolean isEarlier) {
    List<List<double[]>> covers = new ArrayList<>(scars.size());
    scars.forEach(scar -> covers.add(null));
    for (Pair pair : pairs) {
      int scar = scarOf.applyAsInt(pair);
      if (covers.get(scar) == null) {
        covers.set(scar, new ArrayList<>(2));
      }
      covers.get(scar).add(isEarlier ? pair.earlierSpans() : pair.laterSpans());
    }
    Side[] sides = new Side[scars.size()];
    IntStream.range(0, sides.length)
        .parallel()
        .filter(i -> covers.get(i) != null)
        .forEach(
            i -> {
              ComparedTrace scar = scars.get(i);
              double tolerance = toleranceMetres * scar.trace().lengthFactor();
              sides[i] = new Side(Atoms.of(scar, covers.get(i), tolerance));
            });
    return sides;
  }

  private List<Assigned> run() {
    List<Integer> all = IntStream.range(0, pairs.size()).boxed().toList();
    boolean[] isAble = new boolean[pairs.size()];
    all.forEach(p -> isAble[p] = tells(p, Atoms.units(pairs.get(p).commonMetres())));
    List<List<Integer>> sets = sets(all.stream().filter(p -> isAble[p]).toList());
    solve(sets);
    boolean[] dropped = drop();
    boolean[] earlierTold = told(earlier.size(), Pair::earlier);
    boolean[] laterTold = told(later.size(), Pair::later);
    Set<List<Integer>> solved = new HashSet<>(sets);
    List<List<Integer>> again =
        sets(
                all.stream()
                    .filter(
                        p -> {
                          Pair pair = pairs.get(p);
                          return isAble[p]
                              ? !dropped[p]
                              : earlierTold[pair.earlier()] && laterTold[pair.later()];
                        })
                    .toList())
            .stream()
            .filter(set -> set.size() <= MOST_PAIRS_TWICE && !solved.contains(set))
            .toList();
    again.forEach(set -> set.forEach(this::takeBack));
    solve(again);
    drop();
    return within(all.stream().filter(p -> carried[p] > 0).map(this::assigned).toList());
  }

  private List<List<Integer>> sets(List<Integer> places) {
    return LinkedSets.of(places, pairs, earlier.size(), later.size());
  }

  /** Solves sets of pairs that hang together, each by itself. */
  private void solve(List<List<Integer>> sets) {
    sets.parallelStream()
        .forEach(
            set -> {
              if (set.size() == 1) {
                alone(set.get(0));
              } else {
                new Flow(set).run();
              }
            });
  }

  private void alone(int p) {
    Pair pair = pairs.get(p);
    Side from = earlierSides[pair.earlier()];
    Side to = laterSides[pair.later()];
    long units =
        Math.min(
            Atoms.units(pair.commonMetres()),
            Math.min(from.freeUnder(pair.earlierSpans()), to.freeUnder(pair.laterSpans())));
    long[] before = from.free.clone();
    from.take(pair.earlierSpans(), units);
    long[] after = to.free.clone();
    to.take(pair.laterSpans(), units);
    carried[p] = units;
    taken[p] = difference(before, from.free);
    given[p] = difference(after, to.free);
  }

  private static long[] difference(long[] one, long[] other) {
    long[] difference = new long[one.length];
    Arrays.setAll(difference, i -> one[i] - other[i]);
    return difference;
  }

  /** Whether so much of a pair tells that its scars are the same. */
  private boolean tells(int p, long units) {
    Pair pair = pairs.get(p);
    double shorter =
        Math.min(
            earlier.get(pair.earlier()).comparableMetres(),
            later.get(pair.later()).comparableMetres());
    return units >= CRUMB_UNITS && units >= Atoms.units(leastShare * shorter);
  }

  private boolean[] told(int scars, ToIntFunction<Pair> scarOf) {
    boolean[] told = new boolean[scars];
    for (int p = 0; p < carried.length; p++) {
      if (tells(p, carried[p])) {
        told[scarOf.applyAsInt(pairs.get(p))] = true;
      }
    }
    return told;
  }

  /** Takes back what is carried by links too small to tell, unless both scars are told anyway. */
  private boolean[] drop() {
    boolean[] earlierTold = told(earlier.size(), Pair::earlier);
    boolean[] laterTold = told(later.size(), Pair::later);
    boolean[] dropped = new boolean[pairs.size()];
    for (int p = 0; p < carried.length; p++) {
      Pair pair = pairs.get(p);
      boolean stays =
          carried[p] >= CRUMB_UNITS && earlierTold[pair.earlier()] && laterTold[pair.later()];
      if (carried[p] > 0 && !stays) {
        takeBack(p);
        dropped[p] = true;
      }
    }
    return dropped;
  }

  private void takeBack(int p) {
    if (carried[p] > 0) {
      earlierSides[pairs.get(p).earlier()].add(taken[p], 1);
      laterSides[pairs.get(p).later()].add(given[p], 1);
      carried[p] = 0;
      taken[p] = null;
      given[p] = null;
    }
  }

  private Assigned assigned(int p) {
    Pair pair = pairs.get(p);
    double common =
        carried[p] == Atoms.units(pair.commonMetres())
            ? pair.commonMetres()
            : carried[p] / Atoms.UNITS_PER_METRE;
    long earlierMore =
        earlierSides[pair.earlier()].take(
            pair.earlierSpans(), Atoms.units(earlierSlack(pair, common)));
    long laterMore =
        laterSides[pair.later()].take(pair.laterSpans(), Atoms.units(laterSlack(pair, common)));
    return new Assigned(
        pair,
        common + earlierMore / Atoms.UNITS_PER_METRE,
        common + laterMore / Atoms.UNITS_PER_METRE,
        tells(p, carried[p]));
  }

  /** Metres that the earlier scar takes for the same course beyond those of the later one. */
  private static double earlierSlack(Pair pair, double metres) {
    return pair.pace() < 1
        ? Math.min(pair.earlierMetres() - pair.commonMetres(), metres * (1 / pair.pace() - 1))
        : 0;
  }

  private static double laterSlack(Pair pair, double metres) {
    return pair.pace() > 1
        ? Math.min(pair.laterMetres() - pair.commonMetres(), metres * (pair.pace() - 1))
        : 0;
  }

  /** Takes off what rounding to whole units put on top of a scar: under a millimetre a link. */
  private List<Assigned> within(List<Assigned> links) {
    double[] earlierUsed = new double[earlier.size()];
    double[] laterUsed = new double[later.size()];
    for (Assigned link : links) {
      earlierUsed[link.pair.earlier()] += link.earlierMetres;
      laterUsed[link.pair.later()] += link.laterMetres;
    }
    return links.stream()
        .map(
            link -> {
              int from = link.pair.earlier();
              int to = link.pair.later();
              return new Assigned(
                  link.pair,
                  Math.min(1, earlier.get(from).comparableMetres() / earlierUsed[from])
                      * link.earlierMetres,
                  Math.min(1, later.get(to).comparableMetres() / laterUsed[to]) * link.laterMetres,
                  link.telling);
            })
        .toList();
  }

  private long cost(Pair pair) {
    double longer =
        Math.max(
            earlier.get(pair.earlier()).comparableMetres(),
            later.get(pair.later()).comparableMetres());
    double share = Math.min(1, pair.commonMetres() / longer);
    return -Math.max(1, Math.round(COSTS_PER_WORTH * pair.closeness() * (1 + share) / 2));
  }

  /** One flow through pairs that hang together. */
  private final class Flow {
    private final List<Integer> places;
    private final FlowNetwork network = new FlowNetwork();
    private final Map<Integer, int[]> earlierNodes = new LinkedHashMap<>();
    private final Map<Integer, int[]> laterNodes = new LinkedHashMap<>();

    Flow(List<Integer> places) {
      this.places = places;
    }

    void run() {
      int[] through = new int[places.size()];
      int[] firstIn = new int[places.size()];
      int[] firstOut = new int[places.size()];
      for (int k = 0; k < through.length; k++) {
        Pair pair = pairs.get(places.get(k));
        int[] from =
            earlierNodes.computeIfAbsent(pair.earlier(), scar -> nodes(earlierSides[scar], true));
        int[] to = laterNodes.computeIfAbsent(pair.later(), scar -> nodes(laterSides[scar], false));
        int in = network.addNode();
        int out = network.addNode();
        through[k] = network.addArc(in, out, Atoms.units(pair.commonMetres()), cost(pair));
        firstIn[k] = network.arcs();
        Side source = earlierSides[pair.earlier()];
        for (int i = 0; i < from.length; i++) {
          if (source.atoms.isUnder(i, pair.earlierSpans())) {
            network.addArc(from[i], in, source.free[i], 0);
          }
        }
        firstOut[k] = network.arcs();
        Side sink = laterSides[pair.later()];
        for (int i = 0; i < to.length; i++) {
          if (sink.atoms.isUnder(i, pair.laterSpans())) {
            network.addArc(out, to[i], sink.free[i], 0);
          }
        }
      }
      long[] flow = solver.solve(network);
      for (int k = 0; k < through.length; k++) {
        int p = places.get(k);
        if (flow[through[k]] > 0) {
          Pair pair = pairs.get(p);
          long[] from = used(earlierSides[pair.earlier()], pair.earlierSpans(), flow, firstIn[k]);
          long[] to = used(laterSides[pair.later()], pair.laterSpans(), flow, firstOut[k]);
          carried[p] = flow[through[k]];
          taken[p] = from;
          given[p] = to;
        }
      }
    }

    private int[] nodes(Side side, boolean isEarlier) {
      int[] nodes = new int[side.free.length];
      for (int i = 0; i < nodes.length; i++) {
        nodes[i] = network.addNode();
        if (isEarlier) {
          network.addArc(FlowNetwork.SOURCE, nodes[i], side.free[i], 0);
        } else {
          network.addArc(nodes[i], FlowNetwork.SINK, side.free[i], 0);
        }
      }
      return nodes;
    }

    private long[] used(Side side, double[] cover, long[] flow, int firstArc) {
      long[] used = new long[side.free.length];
      int arc = firstArc;
      for (int i = 0; i < used.length; i++) {
        if (side.atoms.isUnder(i, cover)) {
          used[i] = flow[arc++];
        }
      }
      side.add(used, -1);
      return used;
    }
  }
}
