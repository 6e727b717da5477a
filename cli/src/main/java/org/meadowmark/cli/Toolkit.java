package org.meadowmark.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.Supplier;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.assessment.SurveyLoader;
import org.meadowmark.core.assessment.comparison.ComparisonRun;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.write.record.FindingsReport;
import org.meadowmark.core.write.record.InputWatch;

/** The core, behind the gateways. */
final class Toolkit {
  private Toolkit() {}

  /** See {@link AssessGateway}. */
  static String assess(AssessGateway.Request request, Progress progress) {
    return onThreads(
        request.threads(),
        () ->
            new Assessment(
                    request.survey(),
                    request.earlier(),
                    request.tables(),
                    request.options(),
                    ToolVersion.text(),
                    progress)
                .assessInto(request.output(), request.overwrite()));
  }

  /** See {@link PartsGateway}. */
  static Assessment.Done assessInParts(PartsGateway.Request request, Progress progress) {
    return onThreads(
        request.threads(),
        () ->
            new Assessment(
                    request.survey(),
                    List.of(),
                    request.tables(),
                    request.options(),
                    ToolVersion.text(),
                    progress,
                    Optional.of(request.inParts()))
                .run(request.output(), request.overwrite()));
  }

  /** See {@link CompareGateway}. */
  static String compare(CompareGateway.Request request, Progress progress) {
    return onThreads(
        request.threads(),
        () ->
            new ComparisonRun(
                    request.surveys(),
                    request.tables(),
                    request.despite(),
                    request.markers(),
                    request.options(),
                    ToolVersion.text(),
                    progress)
                .compareInto(request.output(), request.overwrite()));
  }

  /** See {@link CheckGateway}. */
  static FindingsReport check(CheckGateway.Request request, Progress progress) {
    InputWatch watch = InputWatch.begin(request.survey());
    LoadedSurvey loaded =
        onThreads(
            request.threads(),
            () -> new SurveyLoader(request.survey(), request.tables(), progress).load());
    watch.requireUnchanged();
    return new FindingsReport(loaded.findings(), loaded.counts());
  }

  /** Parallel streams inside the work use the pool that the work runs in. */
  static <T> T onThreads(int threads, Supplier<T> work) {
    TemporaryPlace.check();
    ForkJoinPool pool = new ForkJoinPool(threads);
    try {
      return CompletableFuture.supplyAsync(work, pool).join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw e.getCause() instanceof RuntimeException failure ? failure : e;
    } finally {
      pool.shutdown();
    }
  }
}
