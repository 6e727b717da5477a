package org.meadowmark.core.change.match;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;

/**
 * Decides which metres are the same among scars that hang together through candidate pairs.
 *
 * <p>Every scar is cut into {@link Atoms}. Metres flow from the earlier scars' atoms, through
 * pairs, to the later scars' atoms: none can be used twice, and a pair carries no more than its
 * overlap. The flow that is worth most is taken. A metre is worth (1 − d²/T²)·(1 + s)/2, with d the
 * root mean square distance of the pair, T the tolerance and s the share of the longer of the two
 * scars that the pair covers. The first factor falls with the square of the distance, as the
 * logarithm of a normal error's density does, and is 0 where no match is as good as a match; the
 * second lets a scar be its whole like before it is a fragment.
 *
 * <p>Where two scars run side by side, but one is drawn with more bends, it is longer over the same
 * course. These metres of it are assigned too, if nothing else needs them: they are no change.
 *
 * <p>A link smaller than the least share of the shorter scar does not tell that the two are the
 * same. It stays only where a larger link tells what each of its scars is; else it is dropped and
 * the flow is found again.
 *
 * <p>Source: the transportation problem as a flow of least cost, as in Ahuja, Magnanti &amp; Orlin
 * (1993) <i>Network Flows</i>, chapters 1 and 9 (from memory).
 */
final class Assignment {
  private static final double COSTS_PER_WORTH = 10_000;

  /** Less than that of any metre of a pair, so that slack never takes the place of one. */
  private static final long COST_OF_SLACK = -1;

  private static final int NO_ARC = -1;
  private static final int MOST_ROUNDS = 8;

  /** What rounding to whole units leaves over here and there: less is no link. */
  private static final long CRUMB_UNITS = 10;

  private final List<ComparedTrace> earlier;
  private final List<ComparedTrace> later;
  private final double toleranceMetres;
  private final double leastShare;
  private final FlowSolver solver;

  /**
   * What a pair carries.
   *
   * @param pair the pair
   * @param earlierMetres metres used up on the earlier scar
   * @param laterMetres metres used up on the later scar
   * @param telling whether that is enough to say that the two are the same
   */
  record Assigned(Pair pair, double earlierMetres, double laterMetres, boolean telling) {}

  Assignment(
      List<ComparedTrace> earlier,
      List<ComparedTrace> later,
      double toleranceMetres,
      double leastShare,
      FlowSolver solver) {
    this.earlier = earlier;
    this.later = later;
    this.toleranceMetres = toleranceMetres;
    this.leastShare = leastShare;
    this.solver = solver;
  }

  /** Assigns the pairs of one set that hangs together; pairs that carry nothing are left out. */
  List<Assigned> assign(List<Pair> pairs) {
    List<Pair> left = pairs;
    for (int round = 1; ; round++) {
      List<Assigned> assigned = flow(left);
      Set<Pair> doubtful = doubtful(assigned);
      if (doubtful.isEmpty()) {
        return assigned;
      }
      if (round == MOST_ROUNDS) {
        return assigned.stream().filter(link -> !doubtful.contains(link.pair)).toList();
      }
      left = left.stream().filter(pair -> !doubtful.contains(pair)).toList();
    }
  }

  private static Set<Pair> doubtful(List<Assigned> assigned) {
    Map<Integer, Boolean> earlierTold = new LinkedHashMap<>();
    Map<Integer, Boolean> laterTold = new LinkedHashMap<>();
    for (Assigned link : assigned) {
      earlierTold.merge(link.pair.earlier(), link.telling, Boolean::logicalOr);
      laterTold.merge(link.pair.later(), link.telling, Boolean::logicalOr);
    }
    return assigned.stream()
        .filter(link -> !link.telling)
        .map(Assigned::pair)
        .filter(pair -> !earlierTold.get(pair.earlier()) || !laterTold.get(pair.later()))
        .collect(Collectors.toSet());
  }

  private List<Assigned> flow(List<Pair> pairs) {
    if (pairs.isEmpty()) {
      return List.of();
    }
    if (pairs.size() == 1) {
      Pair pair = pairs.get(0);
      double common = pair.commonMetres();
      return List.of(
          assigned(
              pair,
              common,
              common + earlierSlack(pair, common),
              common + laterSlack(pair, common)));
    }
    return new Flow(pairs).run();
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

  private Assigned assigned(Pair pair, double common, double earlierMetres, double laterMetres) {
    double shorter =
        Math.min(
            earlier.get(pair.earlier()).comparableMetres(),
            later.get(pair.later()).comparableMetres());
    return new Assigned(pair, earlierMetres, laterMetres, common >= leastShare * shorter);
  }

  private long cost(Pair pair) {
    double longer =
        Math.max(
            earlier.get(pair.earlier()).comparableMetres(),
            later.get(pair.later()).comparableMetres());
    double share = Math.min(1, pair.commonMetres() / longer);
    return -Math.max(1, Math.round(COSTS_PER_WORTH * pair.closeness() * (1 + share) / 2));
  }

  /** Pieces of one scar in the network. */
  private static final class Side {
    final Atoms atoms;
    final int[] nodes;

    Side(Atoms atoms, FlowNetwork network) {
      this.atoms = atoms;
      this.nodes = new int[atoms.size()];
      for (int i = 0; i < nodes.length; i++) {
        nodes[i] = network.addNode();
      }
    }
  }

  /** One flow through some pairs. */
  private final class Flow {
    private final List<Pair> pairs;
    private final FlowNetwork network = new FlowNetwork();
    private final Map<Integer, Side> earlierSides;
    private final Map<Integer, Side> laterSides;

    Flow(List<Pair> pairs) {
      this.pairs = pairs;
      earlierSides = sides(earlier, Pair::earlier, true);
      laterSides = sides(later, Pair::later, false);
    }

    private Map<Integer, Side> sides(
        List<ComparedTrace> scars, ToIntFunction<Pair> scarOf, boolean isEarlier) {
      Map<Integer, List<double[]>> covers = new LinkedHashMap<>();
      for (Pair pair : pairs) {
        covers
            .computeIfAbsent(scarOf.applyAsInt(pair), scar -> new ArrayList<>())
            .add(isEarlier ? pair.earlierSpans() : pair.laterSpans());
      }
      Map<Integer, Side> sides = new LinkedHashMap<>();
      covers.forEach(
          (index, spans) -> {
            ComparedTrace scar = scars.get(index);
            double tolerance = toleranceMetres * scar.trace().lengthFactor();
            Side side = new Side(Atoms.of(scar, spans, tolerance), network);
            for (int i = 0; i < side.nodes.length; i++) {
              if (isEarlier) {
                network.addArc(FlowNetwork.SOURCE, side.nodes[i], side.atoms.units(i), 0);
              } else {
                network.addArc(side.nodes[i], FlowNetwork.SINK, side.atoms.units(i), 0);
              }
            }
            sides.put(index, side);
          });
      return sides;
    }

    List<Assigned> run() {
      int[] through = new int[pairs.size()];
      int[] earlierMore = new int[pairs.size()];
      int[] laterMore = new int[pairs.size()];
      for (int p = 0; p < pairs.size(); p++) {
        Pair pair = pairs.get(p);
        int in = network.addNode();
        int out = network.addNode();
        through[p] = network.addArc(in, out, Atoms.units(pair.commonMetres()), cost(pair));
        fromEarlier(pair, in);
        toLater(pair, out);
        earlierMore[p] = NO_ARC;
        laterMore[p] = NO_ARC;
        long slack = Atoms.units(earlierSlack(pair, pair.commonMetres()));
        if (slack > 0) {
          int spare = network.addNode();
          fromEarlier(pair, spare);
          earlierMore[p] = network.addArc(spare, FlowNetwork.SINK, slack, COST_OF_SLACK);
        }
        slack = Atoms.units(laterSlack(pair, pair.commonMetres()));
        if (slack > 0) {
          int spare = network.addNode();
          laterMore[p] = network.addArc(FlowNetwork.SOURCE, spare, slack, COST_OF_SLACK);
          toLater(pair, spare);
        }
      }
      long[] flow = solver.solve(network);
      List<Assigned> assigned = new ArrayList<>();
      for (int p = 0; p < pairs.size(); p++) {
        if (flow[through[p]] >= CRUMB_UNITS) {
          assigned.add(
              carried(
                  pairs.get(p),
                  flow[through[p]],
                  earlierMore[p] == NO_ARC ? 0 : flow[earlierMore[p]],
                  laterMore[p] == NO_ARC ? 0 : flow[laterMore[p]]));
        }
      }
      return within(within(assigned, true), false);
    }

    private void fromEarlier(Pair pair, int node) {
      Side side = earlierSides.get(pair.earlier());
      for (int i = 0; i < side.nodes.length; i++) {
        if (side.atoms.isUnder(i, pair.earlierSpans())) {
          network.addArc(side.nodes[i], node, side.atoms.units(i), 0);
        }
      }
    }

    private void toLater(Pair pair, int node) {
      Side side = laterSides.get(pair.later());
      for (int i = 0; i < side.nodes.length; i++) {
        if (side.atoms.isUnder(i, pair.laterSpans())) {
          network.addArc(node, side.nodes[i], side.atoms.units(i), 0);
        }
      }
    }

    private Assigned carried(Pair pair, long units, long earlierMore, long laterMore) {
      double common =
          units == Atoms.units(pair.commonMetres())
              ? pair.commonMetres()
              : units / Atoms.UNITS_PER_METRE;
      return assigned(
          pair,
          common,
          common + Math.min(earlierMore / Atoms.UNITS_PER_METRE, earlierSlack(pair, common)),
          common + Math.min(laterMore / Atoms.UNITS_PER_METRE, laterSlack(pair, common)));
    }

    /**
     * Takes off what rounding to whole units put on top of a scar's length: under a millimetre a
     * link.
     */
    private List<Assigned> within(List<Assigned> links, boolean isEarlier) {
      Map<Integer, Double> used = new LinkedHashMap<>();
      for (Assigned link : links) {
        used.merge(
            isEarlier ? link.pair.earlier() : link.pair.later(),
            isEarlier ? link.earlierMetres : link.laterMetres,
            Double::sum);
      }
      return links.stream()
          .map(
              link -> {
                int index = isEarlier ? link.pair.earlier() : link.pair.later();
                ComparedTrace scar = isEarlier ? earlier.get(index) : later.get(index);
                double share = Math.min(1, scar.comparableMetres() / used.get(index));
                return isEarlier
                    ? new Assigned(
                        link.pair, share * link.earlierMetres, link.laterMetres, link.telling)
                    : new Assigned(
                        link.pair, link.earlierMetres, share * link.laterMetres, link.telling);
              })
          .toList();
    }
  }
}
