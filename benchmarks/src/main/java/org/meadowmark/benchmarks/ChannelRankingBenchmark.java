package org.meadowmark.benchmarks;

import java.util.concurrent.TimeUnit;
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

/**
 * Long channels ranked from first to last, with all processors: cut, attributed, exposed, tested,
 * scored, drawn. 90 rows are 5,009 km.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 2)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx4g", "-XX:+UseParallelGC"})
public class ChannelRankingBenchmark {
  @Param("90")
  public int rows;

  @Param("1000000")
  public int scars;

  private final Parameters parameters = ParametersTable.bundled().defaults();
  private final ReferenceTables tables = ReferenceTablesReader.bundled();
  private MetricSurvey survey;
  private MeasuredEvidence measured;

  @Setup
  public void invent() {
    survey = LongChannels.of(rows, scars);
    measured = LongChannels.measured(survey);
  }

  @Benchmark
  public ChannelRanking rank() {
    return new ChannelRanker(survey, measured, parameters, tables, Progress.NONE).rank();
  }
}
