package org.meadowmark.core.measure;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.meadowmark.benchmarks.InventedSurvey;
import org.meadowmark.core.model.MetricSurvey;
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

/** The first stages of measuring; in this package because they are not public. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5)
@Measurement(iterations = 10)
@Fork(
    value = 2,
    jvmArgs = {"-Xmx4g", "-XX:+UseParallelGC"})
public class FootprintBenchmark {
  @Param({"10000", "100000"})
  public int scars;

  private MetricSurvey survey;
  private List<Footprint> footprints;

  @Setup
  public void invent() {
    survey = InventedSurvey.withScars(scars);
    footprints =
        new FootprintBuilder(survey.scale(), new SurveyedArea(survey.surveyedArea()))
            .buildAll(survey.scars());
  }

  /** Scars buffered and clipped to the surveyed area. */
  @Benchmark
  public Object outlineScars() {
    return new FootprintBuilder(survey.scale(), new SurveyedArea(survey.surveyedArea()))
        .buildAll(survey.scars());
  }

  /** Overlapping footprints joined. */
  @Benchmark
  public Object joinClusters() {
    return new FootprintClusters(footprints, StrTreeQuery.footprints(footprints));
  }
}
