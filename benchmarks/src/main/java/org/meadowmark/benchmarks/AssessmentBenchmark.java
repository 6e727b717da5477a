package org.meadowmark.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyFile;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** A survey folder from files to output folder, without the start of the virtual machine. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Warmup(iterations = 3)
@Measurement(iterations = 5)
@Fork(
    value = 2,
    jvmArgs = {"-Xmx4g", "-XX:+UseParallelGC"})
public class AssessmentBenchmark {
  /** Folder with a survey file; the default is seen from the project's root. */
  @Param("gis-samples/data/quillmere-sound/season-2")
  public String survey;

  private final ReferenceTables tables = ReferenceTablesReader.bundled();
  private SurveyDefinition definition;
  private Path scratch;

  @Setup
  public void prepare() throws IOException {
    definition = SurveyFile.read(Path.of(survey), ParametersTable.bundled(), tables);
    scratch = Files.createTempDirectory("meadowmark-benchmark");
  }

  @TearDown
  public void clear() throws IOException {
    try (Stream<Path> files = Files.walk(scratch)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  @Benchmark
  public String assess() {
    return new Assessment(definition, tables, Map.of(), "benchmark", Progress.NONE)
        .assessInto(scratch.resolve("output"), true);
  }
}
