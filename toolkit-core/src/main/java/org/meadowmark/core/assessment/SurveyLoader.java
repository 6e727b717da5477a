package org.meadowmark.core.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.meadowmark.core.check.CheckedLayer;
import org.meadowmark.core.check.CheckedSurvey;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.check.LayerChecker;
import org.meadowmark.core.check.LayerCounts;
import org.meadowmark.core.check.LayoutChecker;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.DepthGrid;
import org.meadowmark.core.project.SurveyProjector;
import org.meadowmark.core.read.LayerReader;
import org.meadowmark.core.read.LayerReaders;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.InputWatch;

/**
 * Reads, checks and projects a survey.
 *
 * <p>One run finds as much as it can: a layer that cannot be read does not keep the others from
 * being checked.
 */
public final class SurveyLoader {
  private final SurveyDefinition definition;
  private final ReferenceTables tables;
  private final Progress progress;
  private final Optional<RowStore> store;
  private final LayerReader reader;
  private final FindingLog log = new FindingLog();

  /**
   * Creates a loader for one use.
   *
   * @param definition what to read
   * @param tables species and causes
   * @param progress hears how far the work is
   */
  public SurveyLoader(SurveyDefinition definition, ReferenceTables tables, Progress progress) {
    this(definition, tables, progress, LayerReaders::read, Optional.empty());
  }

  /**
   * Creates a loader for one use that keeps scars elsewhere.
   *
   * @param definition what to read
   * @param tables species and causes
   * @param progress hears how far the work is
   * @param store keeps scars; where there is none they are in memory
   */
  public SurveyLoader(
      SurveyDefinition definition,
      ReferenceTables tables,
      Progress progress,
      Optional<RowStore> store) {
    this(definition, tables, progress, LayerReaders::read, store);
  }

  /**
   * Creates a loader for one use, of layers that are no files.
   *
   * @param definition what to read
   * @param tables species and causes
   * @param progress hears how far the work is
   * @param reader reads every layer but depth grids
   */
  public SurveyLoader(
      SurveyDefinition definition, ReferenceTables tables, Progress progress, LayerReader reader) {
    this(definition, tables, progress, reader, Optional.empty());
  }

  /**
   * Creates a loader for one use, of layers that are no files, that keeps scars elsewhere.
   *
   * @param definition what to read
   * @param tables species and causes
   * @param progress hears how far the work is
   * @param reader reads every layer but depth grids
   * @param store keeps scars; where there is none they are in memory
   */
  public SurveyLoader(
      SurveyDefinition definition,
      ReferenceTables tables,
      Progress progress,
      LayerReader reader,
      Optional<RowStore> store) {
    this.definition = definition;
    this.tables = tables;
    this.progress = progress;
    this.reader = reader;
    this.store = store;
  }

  private RowStore.Rows<Scar> scarRows() {
    return store.map(s -> s.rows(Scar.class)).orElseGet(RowStore::held);
  }

  /**
   * A survey that can be used, and what it was read from.
   *
   * @param loaded what was read; it has no error
   * @param inputs digests of its files, each of the state that was read
   */
  public record Watched(LoadedSurvey loaded, List<FileDigest> inputs) {
    /**
     * Checks and copies the components.
     *
     * @param loaded what was read; it has no error
     * @param inputs digests of its files, each of the state that was read
     */
    public Watched {
      inputs = List.copyOf(inputs);
    }
  }

  /**
   * Loads the survey, watching that its files stay as they are meanwhile.
   *
   * @return the survey and digests of its files
   * @throws SurveyInputException if the input cannot be used
   * @throws org.meadowmark.core.model.MeadowmarkException if a file changed while it was read
   */
  public Watched loadWatched() {
    InputWatch watch = InputWatch.begin(definition);
    LoadedSurvey loaded = load();
    watch.requireUnchanged();
    // What is wrong with a file is said better by its reader than by its digest.
    loaded.orThrow();
    return new Watched(loaded, watch.digests());
  }

  /**
   * Loads the survey; never throws for what is wrong with the input.
   *
   * @return the survey, with everything that was found
   */
  public LoadedSurvey load() {
    needLayer(LayerRole.SCARS);
    needLayer(LayerRole.BEDS);
    noteMissingChannels();
    questionCheckPoints();
    CheckedSurvey checked = readAndCheck();
    Optional<MetricSurvey> survey = log.hasErrors() ? Optional.empty() : place(checked);
    List<LayerCount> counts =
        survey
            .map(s -> LayerCounts.of(checked, s, log))
            .orElseGet(() -> checked.layers().stream().map(CheckedLayer::count).toList());
    return new LoadedSurvey(log.hasErrors() ? Optional.empty() : survey, log.sorted(), counts);
  }

  private void questionCheckPoints() {
    definition.parameters().positionCheckPoints().stream()
        .filter(points -> points < PositionalAccuracy.FEWEST_CHECK_POINTS)
        .forEach(
            points ->
                log.add(
                    new Finding(
                        FindingCode.FEW_CHECK_POINTS,
                        Finding.Level.WARNING,
                        Finding.Treatment.KEPT,
                        LayerRole.SCARS,
                        FeatureRef.layer(definition.name(), ""),
                        "the positional error was taken from "
                            + Math.round(points)
                            + " check points, and FGDC-STD-007.3-1998 asks for "
                            + PositionalAccuracy.FEWEST_CHECK_POINTS,
                        "measure more, or take the accuracy at 95 % with care")));
  }

  private void needLayer(LayerRole role) {
    if (definition.layers(role).isEmpty()) {
      log.add(
          new Finding(
              FindingCode.NO_FEATURES,
              Finding.Level.ERROR,
              Finding.Treatment.REFUSED,
              role,
              FeatureRef.layer(definition.name(), ""),
              "no layer of " + role.key() + " is given",
              "name one under [layers."
                  + role.key()
                  + "] in the survey file or with --"
                  + role.key()));
    }
  }

  private void noteMissingChannels() {
    if (definition.layers(LayerRole.CHANNELS).isEmpty()) {
      log.add(
          new Finding(
              FindingCode.NO_FEATURES,
              Finding.Level.NOTE,
              Finding.Treatment.KEPT,
              LayerRole.CHANNELS,
              FeatureRef.layer(definition.name(), ""),
              "no layer of channels is given",
              "no channel segment is ranked, and every metre of scar is out of reach of one"));
    }
  }

  private CheckedSurvey readAndCheck() {
    return new CheckedSurvey(
        read(
            LayerRole.SCARS,
            source -> LayerChecker.scars(source, definition.parameters(), tables, log, scarRows())),
        read(LayerRole.BEDS, source -> LayerChecker.beds(source, tables, log)),
        read(LayerRole.CHANNELS, source -> LayerChecker.channels(source, log)),
        read(LayerRole.MANAGEMENT_AREAS, source -> LayerChecker.areas(source, log)),
        read(LayerRole.SURVEYED_AREA, source -> LayerChecker.areas(source, log)),
        read(LayerRole.BARRIERS, source -> LayerChecker.areas(source, log)),
        read(
            definition.layers(LayerRole.DEPTH).stream().filter(s -> !DepthGrid.isGrid(s)).toList(),
            source -> LayerChecker.soundings(source, log)));
  }

  private <T extends Located> List<CheckedLayer<T>> read(
      LayerRole role, Function<LayerSource, LayerChecker<T>> newChecker) {
    return read(definition.layers(role), newChecker);
  }

  private <T extends Located> List<CheckedLayer<T>> read(
      List<LayerSource> sources, Function<LayerSource, LayerChecker<T>> newChecker) {
    List<CheckedLayer<T>> layers = new ArrayList<>();
    for (LayerSource source : sources) {
      progress.begin("Reading " + source.role().key().replace('_', ' '), -1);
      try {
        LayerChecker<T> checker = newChecker.apply(source);
        reader.read(source, checker);
        layers.add(checker.checked());
      } catch (SurveyInputException e) {
        log.add(e.finding());
      } finally {
        progress.end();
      }
    }
    return layers;
  }

  private Optional<MetricSurvey> place(CheckedSurvey checked) {
    List<LayerSource> grids =
        definition.layers(LayerRole.DEPTH).stream().filter(DepthGrid::isGrid).toList();
    try {
      MetricSurvey projected =
          new SurveyProjector(
                  new CrsCatalog(), definition.parameters(), log, progress, this::scarRows)
              .project(checked, grids);
      return Optional.of(
          new LayoutChecker(definition.parameters().sliverToleranceMetres(), log, progress)
              .check(projected));
    } catch (SurveyInputException e) {
      log.add(e.finding());
      return Optional.empty();
    }
  }
}
