package org.meadowmark.core.assessment;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.meadowmark.core.assessment.comparison.EarlierSurveys;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.SurveyMeasurer;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.partition.MeasuringInParts;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.store.DiskRows;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.folder.OutputFolder;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.InputFiles;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.summary.Summary;

/**
 * A whole assessment: read, check, project, measure, rank, plan, write.
 *
 * <p>Results do not depend on threads or on the order of the input. The parallel work runs in the
 * fork join pool of the calling thread, or in the common pool.
 */
public final class Assessment {
  private final SurveyDefinition definition;
  private final List<SurveyDefinition> earlier;
  private final ReferenceTables tables;
  private final Map<String, String> options;
  private final String toolVersion;
  private final Instant started = Instant.now();
  private final StageMeter meter;
  private final Optional<InParts> inParts;

  /**
   * How to measure a survey that is too large to be measured in one go.
   *
   * @param size how large a part may be
   * @param temporaryFolder folder for temporary files, which hold scars and rows
   */
  public record InParts(PartSize size, Path temporaryFolder) {}

  /**
   * What was written.
   *
   * @param summary the summary for a terminal
   * @param whole totals of the survey
   * @param scarCount scars that were used
   */
  public record Done(String summary, AreaMeasure whole, int scarCount) {}

  /** Digests of what was read, taken at once: later changes of the files are none of the run's. */
  private final List<FileDigest> inputs = new ArrayList<>();

  /**
   * Prepares an assessment.
   *
   * @param definition what to assess
   * @param tables reference tables
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program, for the run record
   * @param progress hears how far the work is
   */
  public Assessment(
      SurveyDefinition definition,
      ReferenceTables tables,
      Map<String, String> options,
      String toolVersion,
      Progress progress) {
    this(definition, List.of(), tables, options, toolVersion, progress);
  }

  /**
   * Prepares an assessment that knows earlier surveys of the place.
   *
   * @param definition what to assess
   * @param earlier earlier surveys, which tell where the ground was scarred before; may be none
   * @param tables reference tables
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program, for the run record
   * @param progress hears how far the work is
   */
  public Assessment(
      SurveyDefinition definition,
      List<SurveyDefinition> earlier,
      ReferenceTables tables,
      Map<String, String> options,
      String toolVersion,
      Progress progress) {
    this(definition, earlier, tables, options, toolVersion, progress, Optional.empty());
  }

  /**
   * Prepares an assessment that may be measured in parts.
   *
   * @param definition what to assess
   * @param earlier earlier surveys, which tell where the ground was scarred before; may be none
   * @param tables reference tables
   * @param options options as the user gave them, for the run record
   * @param toolVersion version of the program, for the run record
   * @param progress hears how far the work is
   * @param inParts how; empty for one go
   */
  public Assessment(
      SurveyDefinition definition,
      List<SurveyDefinition> earlier,
      ReferenceTables tables,
      Map<String, String> options,
      String toolVersion,
      Progress progress,
      Optional<InParts> inParts) {
    this.inParts = inParts;
    this.definition = definition;
    this.earlier = List.copyOf(earlier);
    this.tables = tables;
    this.options = options;
    this.toolVersion = toolVersion;
    this.meter = new StageMeter(progress);
  }

  /**
   * Reads, checks, projects, measures, ranks and plans.
   *
   * @return the survey with everything that is known about it
   * @throws org.meadowmark.core.model.SurveyInputException if the input cannot be used
   */
  public AssessedSurvey assess() {
    LoadedSurvey loaded = load(Optional.empty());
    return assess(
        loaded,
        new SurveyMeasurer(loaded.orThrow(), definition.parameters(), tables, meter).measure());
  }

  private LoadedSurvey load(Optional<RowStore> store) {
    SurveyLoader.Watched read = new SurveyLoader(definition, tables, meter, store).loadWatched();
    inputs.clear();
    inputs.addAll(read.inputs());
    return read.loaded();
  }

  private AssessedSurvey assess(LoadedSurvey loaded, Measurement measurement) {
    return new SurveyAssessor(definition, tables, meter)
        .assess(loaded, measurement, evidence(loaded, measurement));
  }

  private MeasuredEvidence evidence(LoadedSurvey loaded, Measurement measurement) {
    MeasuredEvidence evidence = MeasuredEvidence.of(measurement);
    if (earlier.isEmpty()) {
      return evidence;
    }
    EarlierSurveys surveys = new EarlierSurveys(earlier, tables, meter);
    MeasuredEvidence withEarlier = evidence.withEarlier(surveys.scars(definition, loaded));
    surveys
        .inputs()
        .forEach(
            (survey, files) ->
                files.forEach(
                    file ->
                        inputs.add(
                            new FileDigest(
                                survey + ": " + file.file(), file.bytes(), file.sha256()))));
    return withEarlier;
  }

  /**
   * Assesses and writes the output folder, all of it or nothing.
   *
   * @param folder folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @return the summary for a terminal
   * @throws org.meadowmark.core.model.MeadowmarkException if the input cannot be used or the folder
   *     cannot be written
   */
  public String assessInto(Path folder, boolean overwrite) {
    return run(folder, overwrite).summary();
  }

  /**
   * Does the same and tells what it came to.
   *
   * @param folder folder to write
   * @param overwrite whether an earlier output there may be replaced
   * @return the summary, with totals of the survey
   * @throws org.meadowmark.core.model.MeadowmarkException if the input cannot be used or the folder
   *     cannot be written
   */
  public Done run(Path folder, boolean overwrite) {
    OutputFolder output =
        new OutputFolder(
            folder,
            overwrite,
            Stream.concat(Stream.of(definition), earlier.stream())
                .flatMap(survey -> InputFiles.paths(survey).values().stream())
                .toList());
    if (inParts.isEmpty()) {
      return run(output, assess(), Optional.empty());
    }
    try (RowStore store = DiskRows.in(inParts.get().temporaryFolder())) {
      LoadedSurvey loaded = load(Optional.of(store));
      MeasuringInParts.Outcome outcome =
          new MeasuringInParts(
                  loaded.orThrow(), definition.parameters(), tables, inParts.get().size(), meter)
              .measure(store);
      return run(output, assess(loaded, outcome.measurement()), Optional.of(outcome));
    }
  }

  private Done run(
      OutputFolder output, AssessedSurvey assessed, Optional<MeasuringInParts.Outcome> parts) {
    String summary =
        Summary.text(assessed)
            + parts.map(outcome -> PartsText.summary(outcome) + System.lineSeparator()).orElse("");
    output.write(
        target -> {
          if (parts.isPresent()) {
            Files.writeString(
                target.resolve(PartsText.FILE_NAME),
                PartsText.table(parts.get()),
                StandardCharsets.UTF_8);
          }
          new AssessmentWriter(inputs, options, toolVersion, started, meter)
              .write(assessed, summary, target);
        });
    return new Done(summary, assessed.measurement().whole(), assessed.measurement().scars().size());
  }
}
