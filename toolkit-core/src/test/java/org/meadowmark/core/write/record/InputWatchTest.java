package org.meadowmark.core.write.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.SurveyDefinition;

class InputWatchTest {
  @TempDir Path folder;
  private Path scars;
  private Path beds;
  private SurveyDefinition survey;

  @BeforeEach
  void write() throws IOException {
    scars = Files.writeString(folder.resolve("scars.shp"), "scars");
    beds = Files.writeString(folder.resolve("beds.gpkg"), "beds");
    survey =
        new SurveyDefinition(
            "a survey",
            Optional.empty(),
            Optional.empty(),
            List.of(LayerSource.of(LayerRole.SCARS, scars), LayerSource.of(LayerRole.BEDS, beds)),
            TestParameters.of());
  }

  @Test
  void unchangedFilesAreDigested() throws IOException {
    Files.writeString(folder.resolve("scars.dbf"), "table");
    Files.writeString(folder.resolve("beds.gpkg-wal"), "log");
    InputWatch watch = InputWatch.begin(survey);
    assertThat(watch.digests())
        .extracting(digest -> Path.of(digest.file()).getFileName().toString())
        .containsExactlyInAnyOrder("scars.shp", "scars.dbf", "beds.gpkg", "beds.gpkg-wal");
  }

  @Test
  void aFileThatGrowsOrIsReplacedIsNoticed() throws IOException {
    InputWatch watch = InputWatch.begin(survey);
    Files.writeString(beds, "more beds");
    assertThatThrownBy(watch::digests)
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("beds.gpkg: was changed while it was read")
        .hasMessageContaining("run again");
  }

  @Test
  void aFileOfTheSameSizeIsNoticedByItsTime() throws IOException {
    InputWatch watch = InputWatch.begin(survey);
    Files.setLastModifiedTime(
        beds, java.nio.file.attribute.FileTime.fromMillis(1_000_000_000_000L));
    assertThatThrownBy(watch::requireUnchanged).hasMessageContaining("was changed");
  }

  @Test
  void aFileThatGoesOrComesIsNoticed() throws IOException {
    InputWatch watch = InputWatch.begin(survey);
    Files.delete(scars);
    assertThatThrownBy(watch::digests)
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("scars.shp: was removed while it was read");
    write();
    InputWatch other = InputWatch.begin(survey);
    Files.writeString(folder.resolve("beds.gpkg-journal"), "change");
    assertThatThrownBy(other::requireUnchanged).hasMessageContaining("beds.gpkg-journal");
  }

  /** What is missing from the start is for the reader to say. */
  @Test
  void missingFilesAndFoldersAreNoChange() {
    SurveyDefinition nowhere =
        new SurveyDefinition(
            "a survey",
            Optional.empty(),
            Optional.empty(),
            List.of(LayerSource.of(LayerRole.SCARS, folder.resolve("no/such.shp"))),
            TestParameters.of());
    InputWatch.begin(nowhere).requireUnchanged();
  }
}
