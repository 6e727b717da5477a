package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.check.CheckedLayer;
import org.meadowmark.core.check.CheckedSurvey;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.check.LayerChecker;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.SurveyProjector;
import org.meadowmark.core.read.LayerReaders;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.write.folder.OutputFolder;
import org.meadowmark.samples.Estuary;
import org.meadowmark.samples.EstuaryGenerator;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.InventedScars;
import org.meadowmark.samples.SampleProgram;
import org.meadowmark.samples.ScarGenerator;
import org.meadowmark.samples.ScarSettings;
import org.meadowmark.samples.SurveyFolderWriter;
import org.meadowmark.samples.SurveyFolderWriter.BedFile;

/** The sample generators, behind the gateway. */
final class SampleWriter implements SampleGateway {

  @Override
  public String inventEstuary(EstuarySettings settings, Path output, Progress progress) {
    TemporaryPlace.check();
    OutputFolder.neverReplaced(output);
    progress.begin("Inventing the estuary", -1);
    Estuary estuary = EstuaryGenerator.generate(settings);
    progress.end();
    progress.begin("Writing the surveys", -1);
    SampleProgram.writeSample(output, estuary);
    progress.end();
    return String.format(
        Locale.ROOT,
        "%s: %d scars over %d seasons, %d beds, %d channels, seed %d",
        estuary.name(),
        settings.scars(),
        settings.seasons(),
        estuary.beds().size(),
        estuary.channels().size(),
        settings.seed());
  }

  @Override
  public String inventScars(
      ScarSettings settings, LayerSource beds, Path output, Progress progress) {
    TemporaryPlace.check();
    OutputFolder.neverReplaced(output);
    MetricSurvey survey = read(beds, progress);
    List<Geometry> shapes = survey.beds().stream().map(Bed::geometry).toList();
    progress.begin("Inventing channels and scars", -1);
    InventedScars scars = invent(settings, beds, shapes);
    progress.end();
    progress.begin("Writing the survey", -1);
    BedFile bedFile =
        new BedFile(pathFrom(output, beds.file()), beds.layer(), beds.crs(), Optional.empty());
    SurveyFolderWriter.write(
        output,
        "Invented scars on " + beds.file().getFileName(),
        scars,
        survey.gridLabel(),
        bedFile);
    progress.end();
    return String.format(
        Locale.ROOT,
        "%d scars and %d channels on %d beds of %s in %s, seed %d",
        settings.scars(),
        scars.channels().size(),
        shapes.size(),
        beds.fileLabel(),
        survey.gridLabel(),
        settings.seed());
  }

  private static InventedScars invent(
      ScarSettings settings, LayerSource beds, List<Geometry> shapes) {
    try {
      return ScarGenerator.on(shapes, settings);
    } catch (IllegalArgumentException e) {
      throw new MeadowmarkException(
          beds.fileLabel() + ": " + e.getMessage() + "; check that it is the right layer", e);
    }
  }

  private static MetricSurvey read(LayerSource beds, Progress progress) {
    FindingLog log = new FindingLog();
    progress.begin("Reading beds", -1);
    LayerChecker<Bed> checker = LayerChecker.beds(beds, ReferenceTablesReader.bundled(), log);
    LayerReaders.read(beds, checker);
    CheckedLayer<Bed> layer = checker.checked();
    progress.end();
    CheckedSurvey survey =
        new CheckedSurvey(
            List.of(), List.of(layer), List.of(), List.of(), List.of(), List.of(), List.of());
    return new SurveyProjector(
            new CrsCatalog(), ParametersTable.bundled().defaults(), log, progress)
        .project(survey, List.of());
  }

  /** Path of the beds from the survey folder, so that both can be moved together. */
  private static String pathFrom(Path folder, Path beds) {
    Path from = folder.toAbsolutePath().normalize();
    Path to = beds.toAbsolutePath().normalize();
    boolean sameRoot = from.getRoot().equals(to.getRoot());
    return (sameRoot ? from.relativize(to) : to).toString().replace('\\', '/');
  }
}
