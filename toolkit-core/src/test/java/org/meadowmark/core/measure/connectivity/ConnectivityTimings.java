package org.meadowmark.core.measure.connectivity;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.jgrapht.alg.interfaces.ShortestPathAlgorithm;
import org.jgrapht.alg.shortestpath.DijkstraShortestPath;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.WeightedMultigraph;

/**
 * Times behind {@code docs/connectivity-performance.md}, run by hand: names of shapes and of tasks,
 * in any order, no name for all of a kind.
 */
final class ConnectivityTimings {
  private static final double MEDIAN_METRES = 10;
  private static final int GAPS = 10_000;
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final OperatingSystemMXBean PROCESS =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private ConnectivityTimings() {}

  private enum Shape {
    /** A large patch, 3,000 small ones 0.4 m from it, 2,000 in chains that start at those. */
    BED {
      @Override
      ReferenceGraph graph() {
        Random random = new Random(1);
        double[] areas = random.doubles(5_000, 0.0005, 0.02).toArray();
        areas[0] = 40;
        ReferenceGraph graph = new ReferenceGraph(areas);
        for (int i = 1; i <= 3_000; i++) {
          graph.link(0, i, 0.4);
          if (i > 1 && random.nextInt(3) == 0) {
            graph.link(i - 1, i, 0.4 + random.nextDouble());
          }
        }
        for (int i = 3_001; i < 5_000; i++) {
          boolean starts = (i - 3_001) % 20 == 0;
          graph.link(starts ? 1 + random.nextInt(3_000) : i - 1, i, 0.4);
        }
        return graph;
      }
    },
    /** Pieces 8 m wide with gaps of 0.2 to 0.6 m and every link up to 50 m, 168 a piece. */
    MOSAIC_60 {
      @Override
      ReferenceGraph graph() {
        return mosaic(60);
      }
    },
    GRID_100 {
      @Override
      ReferenceGraph graph() {
        return grid(100, 0.05);
      }
    },
    /** All gaps alike: nearly every pair has many equal paths. */
    EVEN_100 {
      @Override
      ReferenceGraph graph() {
        return grid(100, 0);
      }
    },
    GRID_200 {
      @Override
      ReferenceGraph graph() {
        return grid(200, 0.05);
      }
    };

    abstract ReferenceGraph graph();
  }

  /** Pieces in rows and columns, 0.4 m apart give or take. */
  private static ReferenceGraph grid(int side, double spreadMetres) {
    Random random = new Random(2);
    ReferenceGraph graph =
        new ReferenceGraph(random.doubles((long) side * side, 0.001, 0.02).toArray());
    for (int i = 0; i < side * side; i++) {
      if (i % side > 0) {
        graph.link(i - 1, i, 0.4 + spreadMetres * (2 * random.nextDouble() - 1));
      }
      if (i >= side) {
        graph.link(i - side, i, 0.4 + spreadMetres * (2 * random.nextDouble() - 1));
      }
    }
    return graph;
  }

  private static ReferenceGraph mosaic(int side) {
    Random random = new Random(4);
    ReferenceGraph graph =
        new ReferenceGraph(random.doubles((long) side * side, 0.001, 0.02).toArray());
    for (int i = 0; i < side * side; i++) {
      for (int row = 0; row <= 6; row++) {
        for (int column = row == 0 ? 1 : -6; column <= 6; column++) {
          int x = i % side + column;
          int y = i / side + row;
          double metres = Math.hypot(between(row, random), between(column, random));
          if (x >= 0 && x < side && y < side && metres <= 50) {
            graph.link(i, y * side + x, metres);
          }
        }
      }
    }
    return graph;
  }

  private static double between(int cells, Random random) {
    return cells == 0 ? 0 : Math.abs(cells) * 8.4 - 8.2 + 0.4 * random.nextDouble();
  }

  private enum Task {
    INDEX {
      @Override
      Object run(ReferenceGraph graph) {
        return connectivity(graph.distances()).index().equivalentAreaHectares();
      }
    },
    SWEEP {
      @Override
      Object run(ReferenceGraph graph) {
        return ProbabilisticConnectivity.sweep(
                graph.distances(),
                Arrays.stream(new double[] {1, 2, 5, 10, 20, 50})
                    .mapToObj(CrossingModel::ofMedianMetres)
                    .toList(),
                1)
            .stream()
            .map(connectivity -> connectivity.index().equivalentAreaHectares())
            .toList();
      }
    },
    BINARY {
      @Override
      Object run(ReferenceGraph graph) {
        return BinaryConnectivity.of(graph.distances(), 1).index(1).equivalentAreaHectares();
      }
    },
    IMPORTANCE {
      @Override
      Object run(ReferenceGraph graph) {
        return connectivity(graph.distances()).importances().stream()
            .mapToDouble(PatchImportance::connectorPercent)
            .max();
      }
    },
    GAINS {
      @Override
      Object run(ReferenceGraph graph) {
        List<double[]> links = new ArrayList<>(graph.links);
        Collections.shuffle(links, new Random(3));
        return connectivity(graph.distances())
            .gains(
                links.stream()
                    .limit(GAPS)
                    .map(link -> Filling.ofGap((int) link[0], (int) link[1]))
                    .toList())
            .stream()
            .mapToDouble(FillingGain::equivalentAreaGainHectares)
            .max();
      }
    },
    /** Shortest paths alone from 200 patches, one thread: the library's, then both of ours. */
    LIBRARY {
      @Override
      Object run(ReferenceGraph graph) {
        double limit = CrossingModel.ofMedianMetres(MEDIAN_METRES).decay(graph.distances()).limit();
        WeightedMultigraph<Integer, DefaultWeightedEdge> library =
            new WeightedMultigraph<>(DefaultWeightedEdge.class);
        IntStream.range(0, graph.size()).forEach(library::addVertex);
        for (double[] link : graph.links) {
          library.setEdgeWeight(library.addEdge((int) link[0], (int) link[1]), link[2]);
        }
        Component component =
            Component.of(graph.distances(), limit).stream()
                .max(Comparator.comparingInt(Component::size))
                .orElseThrow();
        int sources = Math.min(200, component.size());
        double libraryMilliseconds =
            milliseconds(
                () -> {
                  double sum = 0;
                  for (int s = 0; s < sources; s++) {
                    ShortestPathAlgorithm.SingleSourcePaths<Integer, DefaultWeightedEdge> paths =
                        new DijkstraShortestPath<>(library, limit).getPaths(component.nodes[s]);
                    for (int node : component.nodes) {
                      double weight = paths.getWeight(node);
                      sum += weight <= limit ? weight : 0;
                    }
                  }
                  return sum;
                });
        ShortestPaths ours = new ShortestPaths(component);
        double ownMilliseconds =
            milliseconds(
                () -> {
                  double sum = 0;
                  for (int s = 0; s < sources; s++) {
                    ours.from(s, limit);
                    for (int i = 0; i < ours.count; i++) {
                      sum += ours.lengths[ours.order[i]];
                    }
                  }
                  return sum;
                });
        double sweptMilliseconds =
            RowSums.elimination(component, limit)
                .map(
                    elimination -> {
                      EliminationRows rows = new EliminationRows(elimination);
                      return milliseconds(
                          () -> {
                            for (int s = 0; s < sources; s += EliminationRows.LANES) {
                              rows.solve(s, Math.min(sources, s + EliminationRows.LANES));
                            }
                            return rows.lengths[0];
                          });
                    })
                .orElse(Double.NaN);
        return String.format(
            Locale.ROOT,
            "a source: library %.3f ms, search %.3f ms, elimination %.3f ms",
            libraryMilliseconds / sources,
            ownMilliseconds / sources,
            sweptMilliseconds / sources);
      }
    };

    abstract Object run(ReferenceGraph graph);
  }

  private static ProbabilisticConnectivity connectivity(HabitatGraph graph) {
    return ProbabilisticConnectivity.of(graph, CrossingModel.ofMedianMetres(MEDIAN_METRES), 1);
  }

  /** Processor time of this thread, best of three. */
  private static double milliseconds(Supplier<Double> work) {
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < 3; i++) {
      long start = THREADS.getCurrentThreadCpuTime();
      if (Double.isNaN(work.get())) {
        throw new IllegalStateException("no result");
      }
      best = Math.min(best, (THREADS.getCurrentThreadCpuTime() - start) / 1e6);
    }
    return best;
  }

  public static void main(String[] args) {
    List<String> names = Arrays.stream(args).map(name -> name.toUpperCase(Locale.ROOT)).toList();
    for (Shape shape : Shape.values()) {
      if (Arrays.stream(Shape.values()).noneMatch(any -> names.contains(any.name()))
          || names.contains(shape.name())) {
        ReferenceGraph graph = shape.graph();
        for (Task task : Task.values()) {
          if (Arrays.stream(Task.values()).noneMatch(any -> names.contains(any.name()))
              || names.contains(task.name())) {
            long start = System.nanoTime();
            long startOfWork = PROCESS.getProcessCpuTime();
            Object result = task.run(graph);
            System.out.printf(
                Locale.ROOT,
                "%s %s: %.2f s, %.2f s of processor, %s%n",
                shape,
                task,
                (System.nanoTime() - start) / 1e9,
                (PROCESS.getProcessCpuTime() - startOfWork) / 1e9,
                result);
          }
        }
      }
    }
  }
}
