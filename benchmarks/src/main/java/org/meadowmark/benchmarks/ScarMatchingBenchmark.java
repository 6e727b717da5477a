package org.meadowmark.benchmarks;

import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.match.ScarMatcher;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.survey.MatchingParameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.samples.TwoSeasons;
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
 * Scars of two surveys matched, with all processors. 640,000 true scars along 5,009 km of channel
 * make two surveys of about half a million each; each survey's radial error is 1 m. Of every
 * hundred scars 2 or 20 lie in 40 hot spots: 320 or 3,200 scars of 40 m within some 150 m.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 2)
@Fork(
    value = 1,
    jvmArgs = {"-Xmx4g", "-XX:+UseParallelGC"})
public class ScarMatchingBenchmark {
  private static final int ROWS = 90;
  private static final double RADIAL_ERROR_METRES = 1;

  @Param({"64000", "640000"})
  public int scars;

  @Param({"0.02", "0.2"})
  public double hotShare;

  private final MatchingParameters parameters = ParametersTable.bundled().defaults().matching();
  private SeasonSurvey earlier;
  private SeasonSurvey later;

  @Setup
  public void invent() {
    MetricSurvey coast = LongChannels.of(ROWS, scars, hotShare);
    TwoSeasons seasons = TwoSeasons.of(coast.scars(), RADIAL_ERROR_METRES, 1);
    earlier = season(coast, LocalDate.of(2025, 6, 14), seasons.earlier());
    later = season(coast, LocalDate.of(2026, 6, 14), seasons.later());
  }

  private static SeasonSurvey season(MetricSurvey coast, LocalDate date, List<Scar> scars) {
    return new SeasonSurvey(
        date,
        new MetricSurvey(
            coast.gridLabel(),
            coast.gridWkt(),
            scars,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            DepthField.UNKNOWN,
            coast.scale()),
        PositionalAccuracy.ofRadialRmse(RADIAL_ERROR_METRES));
  }

  @Benchmark
  public SeasonMatch match() {
    return new ScarMatcher(parameters).match(earlier, later, Progress.NONE);
  }
}
