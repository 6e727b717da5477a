package org.meadowmark.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.read.SourceFeature;

class SurveyFolderWriterTest {
  private static final Estuary SMALL =
      EstuaryGenerator.generate(EstuarySettings.SAMPLE.withSize(300, 120));

  @TempDir Path folder;

  @Test
  void everyLayerThatTheSurveyFileNamesIsThereWithItsAttributes() throws IOException {
    for (int season = 0; season < 2; season++) {
      Path survey = folder.resolve("survey" + season);
      SurveyFolderWriter.write(survey, SMALL, season);
      JsonNode toml = new TomlMapper().readTree(survey.resolve("survey.toml").toFile());
      assertThat(toml.at("/survey/name").asText()).startsWith(Names.PLACE);
      assertThat(toml.at("/survey/date").asText()).isEqualTo((2025 + season) + "-06-14");
      JsonNode layers = toml.get("layers");
      for (LayerRole role : LayerRole.values()) {
        JsonNode layer = layers.get(role.key());
        assertThat(layer).as(role.key()).isNotNull();
        Path file = survey.resolve(layer.get("file").asText());
        assertThat(file).exists();
        if (role != LayerRole.DEPTH) {
          GeoFiles.Content content = GeoFiles.read(file, role);
          assertThat(content.findings()).isEmpty();
          assertThat(content.features()).isNotEmpty();
          assertThat(content.header().crs()).isPresent();
          layer
              .get("attributes")
              .forEach(
                  name -> assertThat(content.header().attributeNames()).contains(name.asText()));
        }
      }
    }
  }

  @Test
  void widthsAndWordsFollowTheSeasonsOwnStyle() {
    SurveyFolderWriter.write(folder.resolve("one"), SMALL, 0);
    SurveyFolderWriter.write(folder.resolve("two"), SMALL, 1);
    List<SourceFeature> one =
        GeoFiles.read(folder.resolve("one/scars.gpkg"), LayerRole.SCARS).features();
    List<SourceFeature> two =
        GeoFiles.read(folder.resolve("two/scars.gpkg"), LayerRole.SCARS).features();
    assertThat(one).anyMatch(f -> "prop".equals(f.attributes().get("cause")));
    assertThat(two).noneMatch(f -> "prop".equals(f.attributes().get("cause")));
    List<SampleScar> made = SMALL.scars(1).toList();
    assertThat(two).hasSize(made.size());
    for (int i = 0; i < made.size(); i++) {
      assertThat(two.get(i).attributes().get("truth_id")).isEqualTo(made.get(i).truthId());
      assertThat(two.get(i).geometry().orElseThrow().equalsExact(made.get(i).geometry())).isTrue();
      if (made.get(i).widthMetres().isPresent()) {
        assertThat((Double) two.get(i).attributes().get("width_cm"))
            .isEqualTo(Math.rint(100 * made.get(i).widthMetres().getAsDouble()));
      }
    }
  }

  @Test
  void theFirstSurveyHasItsMistakes() {
    SurveyFolderWriter.write(folder.resolve("one"), SMALL, 0);
    List<SourceFeature> scars =
        GeoFiles.read(folder.resolve("one/scars.gpkg"), LayerRole.SCARS).features();
    assertThat(scars).filteredOn(f -> f.geometry().isEmpty()).hasSize(1);
    assertThat(scars).filteredOn(f -> "proppeller".equals(f.attributes().get("cause"))).hasSize(1);
    assertThat(scars)
        .filteredOn(
            f ->
                f.geometry().map(g -> g.getDimension() == 1).orElse(false)
                    && !f.attributes().containsKey("width_m"))
        .hasSize(1);
    List<String> texts =
        scars.stream().flatMap(f -> f.geometry().stream()).map(Geometry::toText).toList();
    assertThat(texts.size() - texts.stream().distinct().count()).isEqualTo(1);
  }

  @Test
  void nothingIsOverwrittenAndNothingHalfMadeIsLeft() throws IOException {
    Path taken = Files.createDirectory(folder.resolve("taken"));
    assertThatThrownBy(() -> SurveyFolderWriter.write(taken, SMALL, 0))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("taken")
        .hasMessageContaining("exists");
    assertThat(taken).isEmptyDirectory();
    assertThatThrownBy(
            () ->
                SurveyFolderWriter.publish(
                    folder.resolve("broken"),
                    temporary -> {
                      Files.writeString(temporary.resolve("half"), "x");
                      throw new IOException("disk full");
                    }))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("disk full");
    Path file = Files.createFile(folder.resolve("file"));
    assertThatThrownBy(() -> SurveyFolderWriter.write(file.resolve("such"), SMALL, 0))
        .isInstanceOf(MeadowmarkException.class);
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactlyInAnyOrder(taken, file);
    }
  }

  @Test
  void scarsOnExistingBedsMakeASurvey() throws IOException {
    Geometry bed =
        new GeometryFactory().createPoint(new Coordinate(500_000, 3_300_000)).buffer(800);
    InventedScars scars = ScarGenerator.on(List.of(bed), ScarSettings.of(3, 250));
    Path survey = folder.resolve("real");
    SurveyFolderWriter.write(
        survey,
        "Beds \"as they are\"",
        scars,
        "EPSG:32617",
        new SurveyFolderWriter.BedFile(
            "../beds.gpkg", Optional.of("grass"), Optional.of("EPSG:2882"), Optional.of("CODE")));
    JsonNode toml = new TomlMapper().readTree(survey.resolve("survey.toml").toFile());
    assertThat(toml.at("/survey/name").asText()).isEqualTo("Beds \"as they are\"");
    assertThat(toml.at("/layers/beds/file").asText()).isEqualTo("../beds.gpkg");
    assertThat(toml.at("/layers/beds/layer").asText()).isEqualTo("grass");
    assertThat(toml.at("/layers/beds/crs").asText()).isEqualTo("EPSG:2882");
    assertThat(toml.at("/layers/beds/attributes/texture").asText()).isEqualTo("CODE");
    assertThat(GeoFiles.read(survey.resolve("scars.gpkg"), LayerRole.SCARS).features())
        .hasSize(250);
    assertThat(
            GeoFiles.read(survey.resolve("scars.gpkg"), LayerRole.SCARS)
                .header()
                .crs()
                .orElseThrow()
                .code())
        .contains("EPSG:32617");
  }
}
