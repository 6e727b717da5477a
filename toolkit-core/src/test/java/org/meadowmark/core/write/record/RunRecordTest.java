package org.meadowmark.core.write.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.ParameterName;
import org.meadowmark.core.survey.ParameterRow;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.InventedSurvey;

class RunRecordTest {
  @TempDir Path folder;

  @Test
  void keysAlwaysComeInTheSameOrder() throws IOException {
    JsonNode root = new ObjectMapper().readTree(runRecord().toJson());
    List<String> keys = new ArrayList<>();
    root.fieldNames().forEachRemaining(keys::add);
    assertThat(keys)
        .containsExactly(
            "program",
            "version",
            "survey",
            "options",
            "parameters",
            "analysis_grid",
            "inputs",
            "layers",
            "findings",
            "scar_attribution",
            "uncertainty",
            "outputs",
            "run");
    assertThat(runRecord().toJson()).isEqualTo(runRecord().toJson()).endsWith("}\n");
  }

  @Test
  void holdsWhatWasReadChosenAndFound() throws IOException {
    JsonNode root = new ObjectMapper().readTree(runRecord().toJson());
    assertThat(root.at("/survey/date").asText()).isEqualTo("2025-04-12");
    assertThat(root.at("/options/--quiet").asText()).isEqualTo("true");
    assertThat(root.at("/analysis_grid/crs").asText()).isEqualTo("EPSG:32617");
    assertThat(root.at("/analysis_grid/corrected_to_ground").asBoolean()).isTrue();
    assertThat(root.at("/layers/0/role").asText()).isEqualTo("scars");
    assertThat(root.at("/layers/0/skipped").asInt()).isEqualTo(2);
    assertThat(root.at("/findings/1/code").asText()).isEqualTo("zero_length");
    assertThat(root.at("/findings/1/count").asInt()).isEqualTo(2);
    assertThat(root.at("/scar_attribution/out_of_reach_m").asDouble()).isEqualTo(40);
    assertThat(root.at("/uncertainty/draws").asInt()).isEqualTo(200);
    assertThat(root.at("/uncertainty/seed").asLong()).isEqualTo(1);
    assertThat(root.at("/uncertainty/position_drawn").asBoolean()).isFalse();
    assertThat(root.at("/uncertainty/position_accuracy_95_m").isNull()).isTrue();
    assertThat(root.at("/run/wall_seconds").asDouble()).isEqualTo(12.5);
    assertThat(root.at("/run/stages/0/peak_heap_bytes").asLong()).isEqualTo(1_000_000);
  }

  @Test
  void noParameterIsLeftOut() throws IOException {
    JsonNode parameters = new ObjectMapper().readTree(runRecord().toJson()).path("parameters");
    assertThat(parameters.size()).isEqualTo(ParameterName.values().length);
    assertThat(parameters.fieldNames())
        .toIterable()
        .containsExactlyElementsOf(
            ParametersTable.bundled().rows().stream().map(ParameterRow::name).toList());
    assertThat(parameters.at("/severity_denominator").asText()).isEqualTo("bed");
    assertThat(parameters.at("/crossing_distances_m/1").asDouble()).isEqualTo(5);
    assertThat(parameters.at("/analysis_crs").isNull()).isTrue();
    assertThat(parameters.at("/minimum_exposure_ha").asDouble()).isEqualTo(0.5);
  }

  /** Source of the digest: FIPS 180-4, SHA-256 of the three letters "abc" (example B.1). */
  @Test
  void digestsAreThoseOfTheStandard() throws IOException {
    Path file = Files.writeString(folder.resolve("abc.txt"), "abc");
    FileDigest digest = FileDigest.of("data/abc.txt", file);
    assertThat(digest.sha256())
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(digest.bytes()).isEqualTo(3);
    assertThat(digest.file()).isEqualTo("data/abc.txt");
    assertThat(FileDigest.of(file.toAbsolutePath().toString(), file).file()).isEqualTo("abc.txt");
  }

  @Test
  void filesThatGoWithALayerAreInputsToo() throws IOException {
    for (String name :
        List.of(
            "beds.shp",
            "beds.DBF",
            "beds.prj",
            "beds2.shp",
            "beds.xml",
            "depth.asc",
            "depth.prj")) {
      Files.writeString(folder.resolve(name), name);
    }
    Path survey = Files.writeString(folder.resolve("survey.toml"), "x");
    LayerSource beds = LayerSource.of(LayerRole.BEDS, folder.resolve("beds.shp"));
    LayerSource relative =
        new LayerSource(
            beds.role(),
            beds.file(),
            "data/beds.shp",
            beds.layer(),
            beds.crs(),
            beds.axisOrder(),
            beds.attributes(),
            beds.valueNames(),
            beds.widthUnit(),
            beds.geometryColumns());
    SurveyDefinition definition =
        new SurveyDefinition(
            "s",
            Optional.empty(),
            Optional.of(survey),
            List.of(
                relative,
                relative,
                LayerSource.of(LayerRole.DEPTH, folder.resolve("depth.asc").toAbsolutePath())),
            InventedSurvey.parameters());
    assertThat(InputFiles.digests(definition))
        .extracting(FileDigest::file)
        .containsExactlyInAnyOrder(
            "data/beds.DBF",
            "data/beds.prj",
            "data/beds.shp",
            "depth.asc",
            "depth.prj",
            "survey.toml");
  }

  @Test
  void versionsComeFromTheLibrariesThemselves() {
    Map<String, String> libraries = Versions.current("0").libraries();
    assertThat(libraries).containsKeys("GeoTools", "JTS", "sqlite-jdbc", "JFreeChart");
    assertThat(libraries.values()).allSatisfy(v -> assertThat(v).matches("\\d+(\\.\\d+)+.*"));
  }

  @Test
  void theMeterNotesStagesInOrderAndPassesProgressOn() {
    List<String> heard = new ArrayList<>();
    Progress listener =
        new Progress() {
          @Override
          public void begin(String stage, long total) {
            heard.add(stage + " of " + total);
          }

          @Override
          public void advance(long steps) {
            heard.add("+" + steps);
          }

          @Override
          public void end() {
            heard.add("end");
          }
        };
    StageMeter meter = new StageMeter(listener);
    meter.begin("first", 3);
    byte[] filler = new byte[30_000_000];
    meter.advance(filler.length / 30_000_000);
    meter.end();
    meter.begin("second", -1);
    meter.end();
    assertThat(meter.stages()).extracting(StageUse::stage).containsExactly("first", "second");
    assertThat(meter.stages().get(0).peakHeapBytes()).isGreaterThanOrEqualTo(30_000_000);
    assertThat(heard).containsExactly("first of 3", "+1", "end", "second of -1", "end");
  }

  private static RunRecord runRecord() {
    Instant start = Instant.parse("2025-05-01T10:00:00Z");
    return new RunRecord(
        InventedSurvey.survey(),
        new RunFacts(
            new Versions("1.2.3", "17.0.1", Map.of("JTS", "1.20.0")),
            Map.of("--quiet", "true"),
            start,
            start.plusMillis(12_500),
            List.of(new StageUse("reading", Duration.ofMillis(1_234), 1_000_000))),
        List.of(new FileDigest("scars.gpkg", 3, "00")),
        List.of(new FileDigest("summary.txt", 3, "01")));
  }
}
