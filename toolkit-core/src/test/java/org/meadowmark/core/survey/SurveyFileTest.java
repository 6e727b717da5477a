package org.meadowmark.core.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.LayerSource.GeometryColumns;

class SurveyFileTest {
  private static final String LAYERS =
      """
      [layers.scars]
      file = "scars.gpkg"
      [layers.beds]
      file = "beds.shp"
      """;

  private final ParametersTable parameters = ParametersTable.bundled();
  private final ReferenceTables tables = ReferenceTablesReader.bundled();

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void nameFile() {
    file = folder.resolve("survey.toml");
  }

  @Test
  void everyKeyIsRead() throws IOException {
    SurveyDefinition survey =
        read(
            """
            [survey]
            name = "Heron Sound, summer"
            date = 2026-06-14
            [layers.depth]
            file = "depth.asc"
            [layers.scars]
            file = "maps/scars.csv"
            layer = "scars"
            crs = "epsg:4326"
            axis_order = "as-defined"
            width_unit = "us-ft"
            x_column = "lon"
            y_column = "lat"
            [layers.scars.attributes]
            id = "scar_id"
            cause = "WHAT"
            [layers.scars.values.cause]
            "Prop" = "propeller"
            "drag, hull" = "hull"
            [[layers.beds]]
            file = "/maps/east.csv"
            wkt_column = "geom"
            [[layers.beds]]
            file = "west.gpkg"
            [parameters]
            crossing_distances_m = [5, 2.5]
            segment_length_m = 50
            ground_scale = false
            """);

    assertThat(survey.name()).isEqualTo("Heron Sound, summer");
    assertThat(survey.date()).hasValue(LocalDate.of(2026, 6, 14));
    assertThat(survey.file()).hasValue(file);
    assertThat(survey.layers())
        .extracting(LayerSource::role)
        .containsExactly(LayerRole.SCARS, LayerRole.BEDS, LayerRole.BEDS, LayerRole.DEPTH);
    assertThat(survey.layers().get(0))
        .isEqualTo(
            new LayerSource(
                LayerRole.SCARS,
                folder.resolve("maps/scars.csv"),
                "maps/scars.csv",
                Optional.of("scars"),
                Optional.of("EPSG:4326"),
                AxisOrder.AS_DEFINED,
                Map.of(Field.ID, "scar_id", Field.CAUSE, "WHAT"),
                Map.of(Field.CAUSE, Map.of("Prop", "propeller", "drag, hull", "hull")),
                LengthUnit.US_SURVEY_FOOT,
                new GeometryColumns(Optional.empty(), Optional.of("lon"), Optional.of("lat"))));
    assertThat(survey.layers(LayerRole.SCARS).get(0).valueNames().get(Field.CAUSE).get("PROP"))
        .isEqualTo("propeller");
    assertThat(survey.layers(LayerRole.BEDS))
        .extracting(LayerSource::file)
        .containsExactly(Path.of("/maps/east.csv"), folder.resolve("west.gpkg"));
    assertThat(survey.layers(LayerRole.BEDS).get(0).geometryColumns().wkt()).hasValue("geom");
    assertThat(survey.parameters().crossingDistancesMetres()).containsExactly(2.5, 5.0);
    assertThat(survey.parameters().segmentLengthMetres()).isEqualTo(50);
    assertThat(survey.parameters().groundScale()).isFalse();
  }

  @Test
  void aFolderStandsForItsSurveyFileAndNamesTheSurvey() throws IOException {
    Files.writeString(file, "\uFEFF" + LAYERS);

    SurveyDefinition survey = SurveyFile.read(folder, parameters, tables);

    assertThat(survey.file()).hasValue(file);
    assertThat(survey.name()).isEqualTo(folder.getFileName().toString());
    assertThat(survey.parameters()).isEqualTo(parameters.defaults());
  }

  @Test
  void aDateMayBeText() throws IOException {
    assertThat(read("survey.date = \"2026-02-28\"\n" + LAYERS).date())
        .hasValue(LocalDate.of(2026, 2, 28));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "layer = 1 | layer: unknown key; did you mean layers? use one of: survey, layers, parameters",
        "[survey]\\nnaem = 'x' | survey.naem: unknown key; did you mean name? use one of: name, date",
        "survey = 'x' | survey: is text, not a table; write [survey]",
        "survey.name = 5 | survey.name: is a number, not text; put it in quotes",
        "survey.name = '' | survey.name: is empty; give a value or remove the key",
        "survey.date = 2026-06-14T10:00:00Z | survey.date: '2026-06-14T10:00:00Z' is no date; write it like 2026-06-14",
        "survey.date = '14/06/2026' | survey.date: '14/06/2026' is no date; write it like 2026-06-14",
        "[layers.scar]\\nfile='x' | layers.scar: unknown key; did you mean scars? use one of: scars, beds, channels, management_areas, surveyed_area, barriers, depth",
        "[layers.depth]\\nlayer='x' | layers.depth.file: is missing; name the layer's file",
        "[layers.depth]\\nfile='x'\\ncolour='red' | layers.depth.colour: unknown key; use one of: file, layer, crs, axis_order, width_unit, wkt_column, x_column, y_column, attributes, values",
        "[[layers.depth]]\\nfile='x'\\n[[layers.depth]]\\nfiel='y' | layers.depth[2].fiel: unknown key; did you mean file? use one of: file, layer",
        "layers.depth = ['x'] | layers.depth[1]: is text, not a table; write [[layers.depth]]",
        "[layers.depth]\\nfile='x'\\ncrs='UTM' | layers.depth.crs: 'UTM' is no reference system; write it like EPSG:32617",
        "[layers.depth]\\nfile='x'\\naxis_order='xy' | layers.depth.axis_order: 'xy' is no axis order; use one of: east-first, as-defined",
        "[layers.depth]\\nfile='x'\\nwidth_unit='feet' | layers.depth.width_unit: unknown unit of length 'feet'; use one of: m, cm, mm, in, ft, us-ft",
        "[layers.depth]\\nfile='x'\\nx_column='lon' | layers.depth.x_column: stands alone; give both x_column and y_column",
        "[layers.depth]\\nfile='x'\\nx_column='lon'\\ny_column='lat'\\nwkt_column='g' | layers.depth.wkt_column: stands beside x_column or y_column; give the one or the other two",
        "[layers.depth]\\nfile='x'\\n[layers.depth.attributes]\\nwidht='W' | layers.depth.attributes.widht: unknown key; did you mean width? use one of: id, name, cause, width, date, species, texture, depth",
        "[layers.depth]\\nfile='x'\\n[layers.depth.values.cause]\\na='hull'\\nA='hull' | layers.depth.values.cause.A: differs from another word in case only; keep one of them",
        "[layers.depth]\\nfile='x'\\n[layers.depth.values.cause]\\na='propellor' | layers.depth.values.cause.a: 'propellor' is no cause; did you mean propeller? use one of: propeller, hull",
        "[layers.depth]\\nfile='x'\\n[layers.depth.values.species]\\na='kelp' | layers.depth.values.species.a: 'kelp' is no species; use one of: turtlegrass",
        "[layers.depth]\\nfile='x'\\n[layers.depth.values.muck]\\na='mud' | layers.depth.values.muck.a: 'mud' is no muck; use one of: yes, no",
        "[parameters]\\ncrossing_distance = 3 | parameters.crossing_distance: unknown parameter; did you mean crossing_distance_m",
        "[parameters]\\nsegment_length_m = -1 | parameters.segment_length_m: -1 is out of limits; give a number from 1 m to 100000 m",
        "[parameters]\\nsegment_length_m = inf | parameters.segment_length_m: 'Infinity' is no number",
        "[parameters.segment_length_m]\\nx = 1 | parameters.segment_length_m: is a table, not a value",
        "[parameters]\\ncrossing_distances_m = [[1]] | parameters.crossing_distances_m: holds an array; give plain values",
      })
  void aKeyOrValueThatIsNotAllowedIsRefusedWithItsPath(String text, String message)
      throws IOException {
    // The keys under test come first where they are bare, last where they open a table.
    String toml = text.replace("\\n", "\n");
    assertRefused(toml.startsWith("[") ? LAYERS + toml : toml + "\n" + LAYERS, message);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[survey]\\nname = 'a'\\nname = 'b'\\ndate = 2026-01-01 | line 3: is not TOML: Duplicate key in: name = 'b'; correct the line",
        "[survey]\\nname = 'a'\\n[survey]\\n | line 3: is not TOML: Table redefined in: [survey]; correct the line",
        "[survey]\\nname = \\n | line 2: is not TOML: Newline not permitted here in: name =; correct the line",
        "[survey]\\nname = Heron Sound | line 2: is not TOML: ",
        "[survey\\nname = 'a' | line 1: is not TOML: ",
        "[survey]\\nname = 'a | line 2: is not TOML: Premature end of file in: name = 'a; correct the line",
        "[survey]\\ndate = 06/14/2026 | line 2: is not TOML: ",
      })
  void textThatIsNotTomlIsRefusedWithItsLine(String text, String message) throws IOException {
    assertRefused(text.replace("\\n", "\n"), message);
  }

  @Test
  void scarsAndBedsAreNeeded() throws IOException {
    assertRefused(
        "", "no scars given; name the file with --scars or with 'file' under [layers.scars]");
    assertRefused(
        "[layers.scars]\nfile='x'",
        "no beds given; name the file with --beds or with 'file' under [layers.beds]");
  }

  @Test
  void aFileThatIsNotThereIsRefused() {
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> SurveyFile.draft(folder))
        .withMessage(
            file
                + ": there is no such survey file; give a survey file or a folder with a"
                + " survey.toml");
  }

  @Test
  void anotherEncodingIsRefused() throws IOException {
    Files.write(file, "# é".getBytes(StandardCharsets.ISO_8859_1));

    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> SurveyFile.draft(file))
        .withMessage(file + ": is not UTF-8; save it as UTF-8");
  }

  private SurveyDefinition read(String text) throws IOException {
    Files.writeString(file, text);
    return SurveyFile.read(file, parameters, tables);
  }

  private void assertRefused(String text, String message) throws IOException {
    Files.writeString(file, text);
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> SurveyFile.read(file, parameters, tables))
        .satisfies(
            e ->
                assertThat(e.getMessage())
                    .startsWith(file + ": " + message)
                    .contains("; ")
                    .hasLineCount(1));
  }
}
