package org.meadowmark.benchmarks;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.meadowmark.core.measure.SurveyMeasurer;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.rank.ChannelRanker;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.Parameters;
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

/** Measuring and ranking as a whole, with all processors. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(
    value = 2,
    jvmArgs = {"-Xmx4g", "-XX:+UseParallelGC"})
public class SurveyStagesBenchmark {
  @Param({"10000", "100000"})
  public int scars;

  private final Parameters parameters = ParametersTable.bundled().defaults();
  private final ReferenceTables tables = ReferenceTablesReader.bundled();
  private final MeasuredEvidence nothing = new MeasuredEvidence(Map.of(), Optional.empty());
  private MetricSurvey survey;

  @Setup
  public void invent() {
    survey = InventedSurvey.withScars(scars);
  }

  /** Footprints, clusters, beds, patches, gaps and totals by area. */
  @Benchmark
  public Object measure() {
    return new SurveyMeasurer(survey, parameters, tables, Progress.NONE).measure();
  }

  /** Channels cut into segments, scars attributed to them, segments ranked. */
  @Benchmark
  public ChannelRanking rankChannels() {
    return new ChannelRanker(survey, nothing, parameters, tables, Progress.NONE).rank();
  }
}
