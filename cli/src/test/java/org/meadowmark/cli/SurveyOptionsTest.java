package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LengthUnit;
import org.meadowmark.core.survey.SurveyDefinition;

class SurveyOptionsTest {
  private final RecordingGateways gateways = new RecordingGateways();

  @TempDir Path folder;

  @BeforeEach
  void writeSurvey() throws IOException {
    Files.writeString(
        folder.resolve("survey.toml"),
        """
        [survey]
        name = "Heron Sound"
        date = 2020-01-01
        [layers.scars]
        file = "scars.gpkg"
        crs = "EPSG:2882"
        [layers.scars.attributes]
        width = "W"
        cause = "C"
        [layers.beds]
        file = "beds.gpkg"
        [parameters]
        segment_length_m = 50
        channel_reach_m = 300
        """);
  }

  @Test
  void theFileHoldsWhereNoOptionIsGiven() {
    SurveyDefinition survey = survey(folder.toString());

    assertThat(survey.name()).isEqualTo("Heron Sound");
    assertThat(survey.date()).hasValue(LocalDate.of(2020, 1, 1));
    assertThat(survey.parameters().segmentLengthMetres()).isEqualTo(50);
    assertThat(survey.layers())
        .extracting(LayerSource::file)
        .containsExactly(folder.resolve("scars.gpkg"), folder.resolve("beds.gpkg"));
  }

  @Test
  void everyOptionStandsAboveTheFile() {
    SurveyDefinition survey =
        survey(
            folder.resolve("survey.toml").toString(),
            "--scars=new.gpkg#lines",
            "--beds=a.shp",
            "--beds=b.shp",
            "--channels=c.gpx",
            "--areas=areas.json",
            "--surveyed=seen.json",
            "--barriers=land.json",
            "--depth=depth.csv",
            "--crs=scars=epsg:32617",
            "--crs=areas=EPSG:4326",
            "--axis-order=management_areas=as-defined",
            "--attribute=scars.width=WIDTH_FT",
            "--width-unit=scars=us-ft",
            "--set=segment_length_m=80",
            "--set=crossing_distances_m=3,4",
            "--analysis-crs=EPSG:32618",
            "--name=Another",
            "--date=2026-06-14");

    assertThat(survey.name()).isEqualTo("Another");
    assertThat(survey.date()).hasValue(LocalDate.of(2026, 6, 14));
    assertThat(survey.layers())
        .extracting(layer -> layer.role().key() + " " + layer.fileLabel())
        .containsExactly(
            "scars new.gpkg",
            "beds a.shp",
            "beds b.shp",
            "channels c.gpx",
            "management_areas areas.json",
            "surveyed_area seen.json",
            "barriers land.json",
            "depth depth.csv");
    LayerSource scars = survey.layers(LayerRole.SCARS).get(0);
    assertThat(scars.layer()).hasValue("lines");
    assertThat(scars.crs()).hasValue("EPSG:32617");
    assertThat(scars.attributes())
        .containsEntry(Field.WIDTH, "WIDTH_FT")
        .containsEntry(Field.CAUSE, "C");
    assertThat(scars.widthUnit()).isEqualTo(LengthUnit.US_SURVEY_FOOT);
    LayerSource areas = survey.layers(LayerRole.MANAGEMENT_AREAS).get(0);
    assertThat(areas.crs()).hasValue("EPSG:4326");
    assertThat(areas.axisOrder()).isEqualTo(AxisOrder.AS_DEFINED);
    assertThat(survey.parameters().segmentLengthMetres()).isEqualTo(80);
    assertThat(survey.parameters().channelReachMetres()).isEqualTo(300);
    assertThat(survey.parameters().crossingDistancesMetres()).containsExactly(3.0, 4.0);
    assertThat(survey.parameters().analysisCrs()).hasValue("EPSG:32618");
  }

  @Test
  void scarsAndBedsAreEnough() {
    SurveyDefinition survey = survey("--scars", "s.gpkg", "--beds", "b.gpkg");

    assertThat(survey.file()).isEmpty();
    assertThat(survey.layers())
        .extracting(LayerSource::fileLabel)
        .containsExactly("s.gpkg", "b.gpkg");
  }

  @Test
  void aFileWhoseNameHoldsTheSeparatorIsFound() throws IOException {
    Path file = Files.createFile(folder.resolve("dock #4.gpkg"));

    SurveyDefinition survey =
        survey("--scars", file.toString(), "--beds", file + "#beds", folder.toString());

    assertThat(survey.layers(LayerRole.SCARS).get(0).file()).isEqualTo(file);
    assertThat(survey.layers(LayerRole.BEDS).get(0).file()).isEqualTo(file);
    assertThat(survey.layers(LayerRole.BEDS).get(0).layer()).hasValue("beds");
  }

  @Test
  void aTableOfTheUsersChangesTheDefaults() throws IOException {
    Path tables = Files.createDirectory(folder.resolve("tables"));
    String parameters = gateways.run("tables", "parameters").out();
    Files.writeString(
        tables.resolve("parameters.csv"),
        parameters.replace("crossing_distance_m,10,", "crossing_distance_m,7,"));

    assertThat(survey(folder.toString(), "--tables", tables.toString()).parameters())
        .satisfies(p -> assertThat(p.crossingDistanceMetres()).isEqualTo(7));
  }

  @Test
  void theRunKnowsItsOptionsAsGiven() {
    survey(folder.toString(), "--set", "segment_length_m=80", "--beds=a.shp", "--beds=b.shp");

    assertThat(gateways.assessed.get(0).options())
        .containsEntry("SURVEY", folder.toString())
        .containsEntry("--set", "segment_length_m=80")
        .containsEntry("--beds", "a.shp b.shp")
        .containsEntry("--output", "out")
        .doesNotContainKeys("--scars", "--quiet");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--crs=32617 | Value for option '--crs' (ROLE=CODE) should be in KEY=VALUE format but was 32617",
        "--crs=scar=EPSG:1 | --crs scar: unknown role 'scar'; use one of: scars, beds, channels, areas, surveyed, barriers, depth",
        "--crs=depth=EPSG:1 | --crs depth: the survey has no layer of depth; name its file first",
        "--crs=scars=UTM | --crs scars: 'UTM' is no reference system; write it like EPSG:32617",
        "--attribute=width=W | --attribute width: names no property; write it like scars.width=WIDTH_FT",
        "--attribute=scars.widht=W | --attribute scars.widht: unknown property 'widht'; did you mean width? use one of: id, name, cause, width, date, species, texture, depth",
        "--width-unit=scars=yd | --width-unit scars: unknown unit of length 'yd'; use one of: m, cm, mm, in, ft, us-ft",
        "--axis-order=scars=xy | --axis-order scars: 'xy' is no axis order; use one of: east-first, as-defined",
        "--set=segment_length_m=0 | --set segment_length_m: 0 is out of limits; give a number from 1 m to 100000 m",
        "--analysis-crs=best | --analysis-crs: 'best' is no reference system; write it like EPSG:32617",
        "--date=yesterday | Invalid value for option '--date': 'yesterday' is no date; write it like 2026-06-14",
        "--threads=0 | Invalid value for option '--threads': 0 is less than 1",
        "--scars=x.gpkg# | Invalid value for option '--scars' (FILE[#LAYER]): 'x.gpkg#' names no layer after the #",
        "--scar=x | Unknown option: '--scar=x'; did you mean --scars? See 'meadowmark",
        "more | Unmatched argument at index 3: 'more'",
      })
  void aWrongOptionIsAUsageError(String option, String message) {
    Terminal.Outcome outcome = gateways.run("assess", folder.toString(), "--output=out", option);

    assertThat(outcome.err())
        .startsWith("error: " + message)
        .endsWith("ee 'meadowmark assess --help'\n");
    assertThat(outcome.err()).hasLineCount(1);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.exitCode()).isEqualTo(2);
    assertThat(gateways.assessed).isEmpty();
  }

  @Test
  void missingPiecesAreUsageErrors() {
    assertUsageError(
        "No survey given: name a survey file or folder, or --scars and --beds", "--output=out");
    assertUsageError("no beds given; name the file with --beds", "--output=out", "--scars=s.gpkg");
    assertUsageError("Missing required option: '--output=DIR'", folder.toString());
  }

  private void assertUsageError(String message, String... options) {
    String[] arguments = new String[options.length + 1];
    arguments[0] = "assess";
    System.arraycopy(options, 0, arguments, 1, options.length);
    Terminal.Outcome outcome = gateways.run(arguments);
    assertThat(outcome.err()).startsWith("error: " + message).hasLineCount(1);
    assertThat(outcome.exitCode()).isEqualTo(2);
  }

  private SurveyDefinition survey(String... options) {
    List<String> arguments = new ArrayList<>(List.of("assess", "--output", "out"));
    arguments.addAll(List.of(options));
    Terminal.Outcome outcome = gateways.run(arguments.toArray(String[]::new));
    assertThat(outcome.err()).isEqualTo("Results are in out\n");
    assertThat(outcome.exitCode()).isZero();
    return gateways.assessed.get(0).survey();
  }
}
