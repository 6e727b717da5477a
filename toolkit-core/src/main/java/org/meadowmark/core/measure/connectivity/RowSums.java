package org.meadowmark.core.measure.connectivity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Sums over all ordered pairs of nodes of area · area · probability, for several decays at once.
 *
 * <p>Two ways, whichever is expected to take less by counts that the graph alone decides: bounded
 * shortest paths from each node, which serve all decays that take this way, or an {@link
 * Elimination} for a decay, which pays where most of a component is within the cut-off.
 */
final class RowSums {
  /** Below this size a search is over before an elimination is set up. */
  private static final int SMALL = 64;

  private static final int SAMPLE = 16;

  /** Nanoseconds measured, see docs/connectivity-performance.md; only their ratios matter. */
  private static final double SETTLE = 75;

  private static final double DECAY = 15;
  private static final double SWEEP_ARC = 1.2;
  private static final double SWEEP_NODE = 3;

  private static final int SHARE_FOR_SETTING_UP = 8;

  private RowSums() {}

  /**
   * One decay's sums.
   *
   * @param numerator pairs that count, each node with itself included
   * @param missed area · area of the connected pairs beyond the limit
   */
  record Sum(double numerator, double missed) {
    static final Sum NONE = new Sum(0, 0);

    Sum plus(Sum other) {
      return new Sum(numerator + other.numerator, missed + other.missed);
    }
  }

  static Sum[] of(HabitatGraph graph, List<Decay.Exponential> decays) {
    double limit = decays.stream().mapToDouble(Decay::limit).max().orElse(0);
    PatchGroups groups = PatchGroups.of(graph, Double.MAX_VALUE);
    Sum[] sums = new Sum[decays.size()];
    Arrays.fill(sums, Sum.NONE);
    Component.of(graph, limit).parallelStream()
        .map(component -> of(component, decays, groups))
        .toList()
        .forEach(
            ofComponent -> {
              for (int d = 0; d < sums.length; d++) {
                sums[d] = sums[d].plus(ofComponent[d]);
              }
            });
    return sums;
  }

  private static Sum[] of(Component component, List<Decay.Exponential> decays, PatchGroups groups) {
    int group = groups.groupOf(component.nodes[0]);
    double outside =
        groups.patchCount(group) == component.size()
            ? 0
            : Math.max(0, groups.areaHectares(group) - component.area());
    List<Optional<Elimination>> eliminations = eliminations(component, decays);
    boolean[] wanted = new boolean[decays.size()];
    for (int d = 0; d < wanted.length; d++) {
      wanted[d] = eliminations.get(d).isEmpty();
    }
    Sum[] sums = searched(component, decays, wanted, outside);
    for (int d = 0; d < sums.length; d++) {
      if (!wanted[d]) {
        sums[d] = eliminated(component, eliminations.get(d).get(), decays.get(d), outside);
      }
    }
    return sums;
  }

  /** Eliminations for those decays where they are expected to beat one search for all. */
  private static List<Optional<Elimination>> eliminations(
      Component component, List<Decay.Exponential> decays) {
    int n = component.size();
    List<Optional<Elimination>> none = Collections.nCopies(decays.size(), Optional.empty());
    if (n < SMALL) {
      return none;
    }
    List<Optional<Elimination>> eliminations = new ArrayList<>();
    double farthest = 0;
    double farthestSearched = 0;
    double onlySearches = 0;
    double mixed = 0;
    for (Decay.Exponential decay : decays) {
      double settled = settled(component, decay);
      Optional<Elimination> elimination = elimination(component, decay, settled);
      eliminations.add(elimination);
      farthest = Math.max(farthest, settled);
      onlySearches += DECAY * settled;
      if (elimination.isPresent()) {
        mixed += SWEEP_NODE * n + SWEEP_ARC * elimination.get().arcCount();
      } else {
        mixed += DECAY * settled;
        farthestSearched = Math.max(farthestSearched, settled);
      }
    }
    return mixed + SETTLE * farthestSearched < onlySearches + SETTLE * farthest
        ? eliminations
        : none;
  }

  /** An elimination, unless searches are expected to take less for this decay alone. */
  static Optional<Elimination> elimination(Component component, Decay.Exponential decay) {
    return component.size() < SMALL
        ? Optional.empty()
        : elimination(component, decay, settled(component, decay));
  }

  private static Optional<Elimination> elimination(
      Component component, Decay.Exponential decay, double settled) {
    int n = component.size();
    double mostArcs = ((SETTLE + DECAY) * settled - SWEEP_NODE * n) / SWEEP_ARC;
    return mostArcs < n
        ? Optional.empty()
        : Elimination.of(
            component, decay, (long) mostArcs, (long) (n * mostArcs / SHARE_FOR_SETTING_UP));
  }

  /** Mean number of nodes within the limit, from a sample. */
  private static double settled(Component component, Decay.Exponential decay) {
    ShortestPaths paths = new ShortestPaths(component);
    double settled = 0;
    for (int i = 0; i < SAMPLE; i++) {
      paths.from((int) ((long) component.size() * i / SAMPLE), decay.limit());
      settled += paths.count / (double) SAMPLE;
    }
    return settled;
  }

  private static Sum eliminated(
      Component component, Elimination elimination, Decay.Exponential decay, double outside) {
    return Component.Block.of(List.of(component)).parallelStream()
        .map(
            block -> {
              EliminationRows rows = new EliminationRows(component, elimination, decay);
              Sum sum = Sum.NONE;
              for (int from = block.from(); from < block.to(); from += EliminationRows.LANES) {
                int to = Math.min(block.to(), from + EliminationRows.LANES);
                rows.solve(from, to);
                for (int source = from; source < to; source++) {
                  double area = component.areas[source];
                  sum =
                      sum.plus(
                          new Sum(
                              area * rows.sums[source - from],
                              area * (outside + rows.missed[source - from])));
                }
              }
              return sum;
            })
        .toList()
        .stream()
        .reduce(Sum.NONE, Sum::plus);
  }

  private static Sum[] searched(
      Component component, List<Decay.Exponential> decays, boolean[] wanted, double outside) {
    Sum[] sums = new Sum[decays.size()];
    Arrays.fill(sums, Sum.NONE);
    double limit = 0;
    for (int d = 0; d < wanted.length; d++) {
      limit = wanted[d] ? Math.max(limit, decays.get(d).limit()) : limit;
    }
    if (limit > 0) {
      double longest = limit;
      Component.Block.of(List.of(component)).parallelStream()
          .map(block -> searched(block, decays, wanted, longest, outside))
          .toList()
          .forEach(
              ofBlock -> {
                for (int d = 0; d < sums.length; d++) {
                  sums[d] = sums[d].plus(ofBlock[d]);
                }
              });
    }
    return sums;
  }

  private static Sum[] searched(
      Component.Block block,
      List<Decay.Exponential> decays,
      boolean[] wanted,
      double limit,
      double outside) {
    Component component = block.component();
    double whole = component.area();
    ShortestPaths paths = new ShortestPaths(component);
    Sum[] sums = new Sum[decays.size()];
    Arrays.fill(sums, Sum.NONE);
    for (int source = block.from(); source < block.to(); source++) {
      double area = component.areas[source];
      if (area == 0) {
        continue;
      }
      paths.from(source, limit);
      for (int d = 0; d < decays.size(); d++) {
        if (wanted[d]) {
          sums[d] = sums[d].plus(row(component, paths, decays.get(d), whole, outside, area));
        }
      }
    }
    return sums;
  }

  private static Sum row(
      Component component,
      ShortestPaths paths,
      Decay.Exponential decay,
      double whole,
      double outside,
      double area) {
    double longest = decay.limit();
    double row = 0;
    double reached = 0;
    int i = 0;
    for (; i < paths.count; i++) {
      int node = paths.order[i];
      double length = paths.lengths[node];
      if (length > longest) {
        break;
      }
      reached += component.areas[node];
      row += component.areas[node] * decay.of(length);
    }
    double missed = i == component.size() ? 0 : Math.max(0, whole - reached);
    return new Sum(area * row, area * (outside + missed));
  }
}
