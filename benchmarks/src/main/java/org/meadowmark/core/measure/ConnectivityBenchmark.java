package org.meadowmark.core.measure;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.benchmarks.InventedSurvey;
import org.meadowmark.core.measure.connectivity.BinaryConnectivity;
import org.meadowmark.core.measure.connectivity.BinaryIndex;
import org.meadowmark.core.measure.connectivity.CrossingModel;
import org.meadowmark.core.measure.connectivity.HabitatGraph;
import org.meadowmark.core.measure.connectivity.PatchImportance;
import org.meadowmark.core.measure.connectivity.ProbabilisticConnectivity;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.ParametersTable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Distances and connectivity of the patches that scars leave; in this package because the graph of
 * patches is not public.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(
    value = 2,
    jvmArgs = {"-Xmx4g", "-XX:+UseParallelGC"})
public class ConnectivityBenchmark {
  private static final double REACH_METRES = 50;
  private static final double MEDIAN_METRES = 10;

  @Param({"10000", "100000"})
  public int scars;

  private List<Polygon> patches;
  private GroundScale scale;
  private HabitatGraph graph;
  private double hectares;

  @Setup
  public void invent() {
    MetricSurvey survey = InventedSurvey.withScars(scars);
    scale = survey.scale();
    patches =
        new SurveyMeasurer(
                survey,
                ParametersTable.bundled().defaults(),
                ReferenceTablesReader.bundled(),
                Progress.NONE)
            .measure().patches().stream().map(Patch::geometry).toList();
    List<PieceGraph.Link> links = links().crossings();
    double[] areas =
        patches.stream()
            .mapToDouble(
                patch -> {
                  Coordinate centre = patch.getEnvelopeInternal().centre();
                  return patch.getArea() / scale.areaFactor(centre.x, centre.y) / 10_000;
                })
            .toArray();
    hectares = Arrays.stream(areas).sum();
    graph =
        HabitatGraph.ofDistances(
            areas,
            links.stream().mapToInt(PieceGraph.Link::first).toArray(),
            links.stream().mapToInt(PieceGraph.Link::second).toArray(),
            links.stream().mapToDouble(PieceGraph.Link::metres).toArray());
  }

  private PieceGraph links() {
    return new PieceGraph.Maker(
            scale, REACH_METRES, Barriers.NONE, Integer.MAX_VALUE, new Sample(2, 1))
        .graph(patches);
  }

  /** Edge-to-edge distances of all pairs up to the largest crossing distance. */
  @Benchmark
  public Object linkPatches() {
    return links();
  }

  /** Equivalent connected area at six median crossing distances. */
  @Benchmark
  public List<ProbabilisticConnectivity> sweepEquivalentArea() {
    List<CrossingModel> models =
        Stream.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0).map(CrossingModel::ofMedianMetres).toList();
    return ProbabilisticConnectivity.sweep(graph, models, hectares);
  }

  /** Importance of every patch, with its three parts. */
  @Benchmark
  public List<PatchImportance> importances() {
    return ProbabilisticConnectivity.of(
            graph, CrossingModel.ofMedianMetres(MEDIAN_METRES), hectares)
        .importances();
  }

  /** Integral index of connectivity at one crossing distance. */
  @Benchmark
  public BinaryIndex integralIndex() {
    return BinaryConnectivity.of(graph, MEDIAN_METRES).index(hectares);
  }
}
