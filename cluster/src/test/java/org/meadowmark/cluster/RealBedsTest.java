package org.meadowmark.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.cluster.SharedSession.SPARK;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.cluster.SharedSession.Said;
import org.meadowmark.core.check.CheckedSurvey;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.check.LayerChecker;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.SurveyProjector;
import org.meadowmark.core.read.LayerReaders;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.samples.ScarGenerator;
import org.meadowmark.samples.ScarSettings;
import org.meadowmark.samples.SurveyFolderWriter;

/**
 * Invented scars on real beds, on the cluster and on one machine: the same rows. On the beds of the
 * south, unless {@code -Dmeadowmark.all-beds=true} asks for all of them, with as many scars as
 * {@code -Dmeadowmark.scars} says. Skipped where the open seagrass polygons are not beside the
 * project in {@code shared/data}.
 */
class RealBedsTest {
  /** Named like the layer in it, as a folder of GeoParquet names its layer. */
  private static final String BEDS = "sg1999.gpkg";

  private static final boolean ALL = Boolean.getBoolean("meadowmark.all-beds");
  private static final int SCARS = Integer.getInteger("meadowmark.scars", 600);
  private static final int ALL_BEDS = 2_839;
  private static final int SOUTHERN_BEDS = 679;

  @TempDir Path folder;

  @Test
  void partsOfRealBedsGiveTheRowsOfOneMachine() throws IOException, SQLException {
    Path file =
        Path.of(System.getProperty("meadowmark.root", "."))
            .resolve("../shared/data/tampa-bay-seagrass-1999.gpkg")
            .toAbsolutePath()
            .normalize();
    Assumptions.assumeTrue(
        Files.exists(file), () -> "skipped: there is no " + file + " beside the project");
    Path survey = folder.resolve("survey");
    inventScars(ALL ? file : southern(file), SCARS, survey);
    Path layers = folder.resolve("layers");
    Said converted = SharedSession.run("convert", survey, "-o", layers);
    assertThat(converted.code()).as(converted.err()).isZero();
    Path named = folder.resolve("named");
    OneMachine.underNamesOfBefore(
        survey, layers, named, (layer, to) -> Files.move(layer.file(), to));
    Path output = folder.resolve("output");
    Said said =
        SharedSession.run(
            "assess", OneMachine.QUICK, named, "-o", output, "--part-scars", SCARS / 4);
    assertThat(said.code()).as(said.err()).isZero();
    assertThat(said.out())
        .contains((ALL ? ALL_BEDS : SOUTHERN_BEDS) + " beds")
        .doesNotContain(", 1 part(s)");
    String bay = "Invented scars";
    OneMachine.rows(OneMachine.assess(survey, bay))
        .forEach(
            (table, rows) ->
                assertThat(OneMachine.written(SPARK, output, table, bay))
                    .as(table)
                    .containsExactlyElementsOf(rows));
  }

  /** The beds under a name inside the folder, which the converted ones can have too. */
  private static void inventScars(Path beds, int count, Path survey) throws IOException {
    LayerSource source = LayerSource.of(LayerRole.BEDS, beds);
    FindingLog log = new FindingLog();
    LayerChecker<Bed> checker = LayerChecker.beds(source, ReferenceTablesReader.bundled(), log);
    LayerReaders.read(source, checker);
    MetricSurvey projected =
        new SurveyProjector(
                new CrsCatalog(), ParametersTable.bundled().defaults(), log, Progress.NONE)
            .project(
                new CheckedSurvey(
                    List.of(),
                    List.of(checker.checked()),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of()),
                List.of());
    SurveyFolderWriter.write(
        survey,
        "Invented scars",
        ScarGenerator.on(
            projected.beds().stream().map(Bed::geometry).toList(), ScarSettings.of(5, count)),
        projected.gridLabel(),
        new SurveyFolderWriter.BedFile(BEDS, Optional.empty(), Optional.empty(), Optional.empty()));
    Files.createSymbolicLink(survey.resolve(BEDS), beds);
  }

  /** A copy of the beds that keeps those south of a line, in feet of their grid. */
  private Path southern(Path beds) throws IOException, SQLException {
    Path copy = Files.copy(beds, folder.resolve("southern-beds.gpkg"));
    assertThat(copy.toFile().setWritable(true)).isTrue();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy.toUri());
        Statement statement = connection.createStatement()) {
      // The triggers call functions of the program that wrote the file.
      statement.execute("DROP TRIGGER rtree_sg1999_geom_delete");
      statement.execute("DROP TRIGGER trigger_delete_feature_count_sg1999");
      statement.execute(
          "DELETE FROM sg1999 WHERE fid NOT IN"
              + " (SELECT id FROM rtree_sg1999_geom WHERE miny <= 1180000)");
    }
    return copy;
  }
}
