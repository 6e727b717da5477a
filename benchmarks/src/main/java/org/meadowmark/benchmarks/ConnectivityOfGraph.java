package org.meadowmark.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.meadowmark.core.measure.connectivity.CrossingModel;
import org.meadowmark.core.measure.connectivity.HabitatGraph;
import org.meadowmark.core.measure.connectivity.ProbabilisticConnectivity;

/**
 * Equivalent connected area of a graph that another program measured, so that both compute on the
 * same numbers: a file with an area in hectares a line, and one with two positions and a distance
 * in metres a line, both with commas and without a header.
 */
public final class ConnectivityOfGraph {
  private ConnectivityOfGraph() {}

  /**
   * Prints one JSON object.
   *
   * @param args file of areas, file of links, median crossing distance in metres
   */
  public static void main(String[] args) throws IOException {
    double[] areas =
        Files.readAllLines(Path.of(args[0])).stream().mapToDouble(Double::parseDouble).toArray();
    List<String[]> links =
        Files.readAllLines(Path.of(args[1])).stream().map(line -> line.split(",")).toList();
    CrossingModel model = CrossingModel.ofMedianMetres(Double.parseDouble(args[2]));
    long started = System.nanoTime();
    HabitatGraph graph =
        HabitatGraph.ofDistances(
            areas,
            links.stream().mapToInt(link -> Integer.parseInt(link[0])).toArray(),
            links.stream().mapToInt(link -> Integer.parseInt(link[1])).toArray(),
            links.stream().mapToDouble(link -> Double.parseDouble(link[2])).toArray());
    double hectares =
        ProbabilisticConnectivity.of(graph, model, 1).index().equivalentAreaHectares();
    double seconds = (System.nanoTime() - started) / 1e9;
    System.out.printf(
        Locale.ROOT,
        "{\"patches\": %d, \"links\": %d, \"equivalent_area_ha\": %.9f, \"seconds\": %.3f}%n",
        areas.length,
        links.size(),
        hectares,
        seconds);
  }
}
