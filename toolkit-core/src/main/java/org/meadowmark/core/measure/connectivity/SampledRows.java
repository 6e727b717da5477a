package org.meadowmark.core.measure.connectivity;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Estimates of what {@link RowSums} adds up, from a sample of rows. */
final class SampledRows {
  private static final int SOURCES_AT_ONCE = 4;

  /** What a search finds from a source, for each decay. */
  private record Row(double[] sums, double[] beyond) {}

  private final List<Component> components;
  private final int[] componentOfNode;
  private final int[] placeOfNode;
  private final PatchGroups groups;
  private final List<? extends Decay> decays;
  private final double limit;

  private SampledRows(HabitatGraph graph, List<? extends Decay> decays) {
    this.decays = decays;
    limit = decays.stream().mapToDouble(Decay::limit).max().orElse(0);
    components = Component.withAllLinks(graph, limit);
    groups = PatchGroups.of(graph, Double.MAX_VALUE);
    componentOfNode = new int[graph.nodeCount()];
    placeOfNode = new int[graph.nodeCount()];
    for (int c = 0; c < components.size(); c++) {
      int[] nodes = components.get(c).nodes;
      for (int i = 0; i < nodes.length; i++) {
        componentOfNode[nodes[i]] = c;
        placeOfNode[nodes[i]] = i;
      }
    }
  }

  static RowSums.Sum[] of(HabitatGraph graph, List<? extends Decay> decays, Sample sample) {
    int[] sources = draw(graph, sample);
    SampledRows search = new SampledRows(graph, decays);
    int chunks = (sources.length + SOURCES_AT_ONCE - 1) / SOURCES_AT_ONCE;
    List<Row> rows =
        IntStream.range(0, chunks)
            .parallel()
            .mapToObj(c -> search.rows(sources, c * SOURCES_AT_ONCE))
            .toList()
            .stream()
            .flatMap(List::stream)
            .toList();
    double area = graph.totalAreaHectares();
    RowSums.Sum[] sums = new RowSums.Sum[decays.size()];
    for (int d = 0; d < sums.length; d++) {
      sums[d] = sum(rows, d, area);
    }
    return sums;
  }

  private static RowSums.Sum sum(List<Row> rows, int decay, double area) {
    double sum = 0;
    double beyond = 0;
    double squares = 0;
    for (int i = 0; i < rows.size(); i++) {
      sum += rows.get(i).sums[decay];
      beyond += rows.get(i).beyond[decay];
      if (i > 0) {
        double difference = rows.get(i).sums[decay] - rows.get(i - 1).sums[decay];
        squares += difference * difference;
      }
    }
    int n = rows.size();
    return new RowSums.Sum(
        area * sum / n,
        n < 2 ? 0 : area * Math.sqrt(squares / (2.0 * n * (n - 1))),
        area * beyond / n);
  }

  /** Nodes at equal steps along the sum of areas; a large one may come several times. */
  private static int[] draw(HabitatGraph graph, Sample sample) {
    double total = graph.totalAreaHectares();
    if (!(total > 0)) {
      return new int[0];
    }
    double start = new SplittableRandom(sample.seed()).nextDouble();
    int[] sources = new int[sample.sources()];
    double sum = 0;
    int found = 0;
    int last = 0;
    for (int node = 0; node < graph.nodeCount() && found < sources.length; node++) {
      if (graph.areaHectares(node) == 0) {
        continue;
      }
      last = node;
      sum += graph.areaHectares(node);
      while (found < sources.length && (found + start) * total / sources.length < sum) {
        sources[found++] = node;
      }
    }
    while (found < sources.length) {
      sources[found++] = last;
    }
    return sources;
  }

  private List<Row> rows(int[] sources, int from) {
    List<Row> rows = new ArrayList<>();
    ShortestPaths paths = null;
    int searched = -1;
    for (int i = from; i < Math.min(sources.length, from + SOURCES_AT_ONCE); i++) {
      int source = sources[i];
      if (i > from && source == sources[i - 1]) {
        rows.add(rows.get(rows.size() - 1));
        continue;
      }
      if (componentOfNode[source] != searched) {
        searched = componentOfNode[source];
        paths = new ShortestPaths(components.get(searched));
      }
      paths.from(placeOfNode[source], limit);
      rows.add(row(components.get(searched), paths, groups.areaHectares(groups.groupOf(source))));
    }
    return rows;
  }

  private Row row(Component component, ShortestPaths paths, double connected) {
    double[] sums = new double[decays.size()];
    double[] beyond = new double[decays.size()];
    for (int d = 0; d < sums.length; d++) {
      Decay decay = decays.get(d);
      double reached = 0;
      for (int i = 0; i < paths.count; i++) {
        int node = paths.order[i];
        double length = paths.lengths[node];
        if (length > decay.limit()) {
          break;
        }
        reached += component.areas[node];
        sums[d] += component.areas[node] * decay.of(length);
      }
      beyond[d] = Math.max(0, connected - reached);
    }
    return new Row(sums, beyond);
  }
}
