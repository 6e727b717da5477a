package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Sums over all ordered pairs of nodes of area · area · probability, for several decays at once.
 *
 * <p>Shortest paths come from a search bounded by the longest limit, or, where most of a component
 * is within that, from an {@link Elimination}. Whichever is expected to take less is taken, by
 * counts that the graph alone decides.
 */
final class RowSums {
  /** Below this size a search is over before an elimination is set up. */
  private static final int SMALL = 64;

  private static final int SAMPLE = 16;

  /** Nanoseconds measured, see docs/connectivity-performance.md; only their ratios matter. */
  private static final double SEARCH_NODE = 60;

  private static final double SWEEP_ARC = 0.85;
  private static final double SWEEP_NODE = 2;

  /** An elimination may take this share of the time that the searches would. */
  private static final double SHARE_FOR_SETTING_UP = 0.1;

  private RowSums() {}

  /**
   * One decay's sums.
   *
   * @param numerator pairs that count, each node with itself included
   * @param standardError of the numerator; 0 where all pairs were looked at
   * @param missed area · area of the connected pairs beyond the limit
   */
  record Sum(double numerator, double standardError, double missed) {}

  static Sum[] of(HabitatGraph graph, List<? extends Decay> decays) {
    double limit = decays.stream().mapToDouble(Decay::limit).max().orElse(0);
    PatchGroups groups = PatchGroups.of(graph, Double.MAX_VALUE);
    Accumulator total = new Accumulator(decays);
    Component.of(graph, limit).parallelStream()
        .map(component -> of(component, decays, limit, groups))
        .toList()
        .forEach(total::add);
    Sum[] sums = new Sum[decays.size()];
    for (int d = 0; d < sums.length; d++) {
      sums[d] = new Sum(total.numerators[d], 0, total.missed[d]);
    }
    return sums;
  }

  private static Accumulator of(
      Component component, List<? extends Decay> decays, double limit, PatchGroups groups) {
    int group = groups.groupOf(component.nodes[0]);
    double outside =
        groups.patchCount(group) == component.size()
            ? 0
            : Math.max(0, groups.areaHectares(group) - component.area());
    Optional<Elimination> elimination = elimination(component, limit);
    Accumulator total = new Accumulator(decays);
    Component.Block.of(List.of(component)).parallelStream()
        .map(
            block -> {
              Accumulator part = new Accumulator(decays);
              elimination.ifPresentOrElse(
                  found -> part.sweep(block, found, outside),
                  () -> part.search(block, limit, outside));
              return part;
            })
        .toList()
        .forEach(total::add);
    return total;
  }

  /** An elimination where it is expected to beat searches. */
  static Optional<Elimination> elimination(Component component, double limit) {
    int n = component.size();
    if (n < SMALL) {
      return Optional.empty();
    }
    ShortestPaths paths = new ShortestPaths(component);
    double settled = 0;
    for (int i = 0; i < SAMPLE; i++) {
      paths.from((int) ((long) n * i / SAMPLE), limit);
      settled += paths.count / (double) SAMPLE;
    }
    double search = SEARCH_NODE * settled;
    double mostArcs = (search - SWEEP_NODE * n) / SWEEP_ARC;
    return mostArcs < n
        ? Optional.empty()
        : Elimination.of(
            component, limit, (long) mostArcs, (long) (SHARE_FOR_SETTING_UP * n * search));
  }

  private static final class Accumulator {
    final double[] numerators;
    final double[] missed;
    private final List<? extends Decay> decays;

    Accumulator(List<? extends Decay> decays) {
      this.decays = decays;
      numerators = new double[decays.size()];
      missed = new double[decays.size()];
    }

    void add(Accumulator other) {
      for (int d = 0; d < numerators.length; d++) {
        numerators[d] += other.numerators[d];
        missed[d] += other.missed[d];
      }
    }

    void search(Component.Block block, double limit, double outside) {
      Component component = block.component();
      double whole = component.area();
      ShortestPaths paths = new ShortestPaths(component);
      for (int source = block.from(); source < block.to(); source++) {
        double area = component.areas[source];
        if (area == 0) {
          continue;
        }
        paths.from(source, limit);
        for (int d = 0; d < numerators.length; d++) {
          Decay decay = decays.get(d);
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
          numerators[d] += area * row;
          missed[d] +=
              area * (outside + (i == component.size() ? 0 : Math.max(0, whole - reached)));
        }
      }
    }

    void sweep(Component.Block block, Elimination elimination, double outside) {
      Component component = block.component();
      double[] areas = new double[component.size()];
      for (int v = 0; v < areas.length; v++) {
        areas[elimination.ranks[v]] = component.areas[v];
      }
      EliminationRows rows = new EliminationRows(elimination);
      double[] sourceAreas = new double[EliminationRows.LANES];
      for (int from = block.from(); from < block.to(); from += EliminationRows.LANES) {
        int to = Math.min(block.to(), from + EliminationRows.LANES);
        rows.solve(from, to);
        Arrays.fill(sourceAreas, 0);
        System.arraycopy(component.areas, from, sourceAreas, 0, to - from);
        double sourceArea = Arrays.stream(sourceAreas).sum();
        for (int d = 0; d < numerators.length; d++) {
          addRows(d, rows.lengths, areas, sourceAreas);
          missed[d] += outside * sourceArea;
        }
      }
    }

    private void addRows(int d, double[] lengths, double[] areas, double[] sourceAreas) {
      Decay decay = decays.get(d);
      double longest = decay.limit();
      for (int rank = 0; rank < areas.length; rank++) {
        double sum = 0;
        double beyond = 0;
        for (int l = 0; l < EliminationRows.LANES; l++) {
          double length = lengths[rank * EliminationRows.LANES + l];
          if (length <= longest) {
            sum += sourceAreas[l] * decay.of(length);
          } else {
            beyond += sourceAreas[l];
          }
        }
        numerators[d] += areas[rank] * sum;
        missed[d] += areas[rank] * beyond;
      }
    }
  }
}
