package org.meadowmark.core.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.SurveyDraft.Place;

class SurveyDraftTest {
  @TempDir Path folder;
  private SurveyDraft draft;

  @BeforeEach
  void readFile() throws IOException {
    Path file = folder.resolve("survey.toml");
    Files.writeString(
        file,
        """
        [survey]
        name = "from the file"
        date = 2020-01-01
        [[layers.scars]]
        file = "a.gpkg"
        layer = "lines"
        crs = "EPSG:2882"
        axis_order = "as-defined"
        width_unit = "ft"
        attributes = { width = "W", cause = "C" }
        [[layers.scars]]
        file = "b.gpkg"
        [layers.beds]
        file = "beds.gpkg"
        [parameters]
        segment_length_m = 50
        channel_reach_m = 300
        """);
    draft = SurveyFile.draft(file);
  }

  @Test
  void optionsStandAboveTheFile() {
    SurveyDefinition survey =
        define(
            draft
                .withName("from an option")
                .withDate(LocalDate.of(2026, 6, 14))
                .withCrs(LayerRole.SCARS, "EPSG:32617", "--crs scars")
                .withAxisOrder(LayerRole.BEDS, "as-defined", "--axis-order beds")
                .withAttribute(LayerRole.SCARS, "width", "WIDTH_FT", "--attribute scars.width")
                .withWidthUnit(LayerRole.SCARS, "us-ft", "--width-unit scars")
                .withSetting(new Setting("segment_length_m", List.of("80"), "--set")));

    assertThat(survey.name()).isEqualTo("from an option");
    assertThat(survey.date()).hasValue(LocalDate.of(2026, 6, 14));
    assertThat(survey.layers(LayerRole.SCARS))
        .allSatisfy(
            layer -> {
              assertThat(layer.crs()).hasValue("EPSG:32617");
              assertThat(layer.attributes()).containsEntry(Field.WIDTH, "WIDTH_FT");
              assertThat(layer.widthUnit()).isEqualTo(LengthUnit.US_SURVEY_FOOT);
            })
        .extracting(LayerSource::fileLabel)
        .containsExactly("a.gpkg", "b.gpkg");
    assertThat(survey.layers(LayerRole.SCARS).get(0).attributes()).containsEntry(Field.CAUSE, "C");
    assertThat(survey.layers(LayerRole.BEDS).get(0).axisOrder()).isEqualTo(AxisOrder.AS_DEFINED);
    assertThat(survey.layers(LayerRole.BEDS).get(0).crs()).isEmpty();
    assertThat(survey.parameters().segmentLengthMetres()).isEqualTo(80);
    assertThat(survey.parameters().channelReachMetres()).isEqualTo(300);
  }

  @Test
  void anotherFileTakesThePlaceOfAllLayersOfTheRoleButKeepsTheMapping() {
    Path other = folder.resolve("other.shp");

    SurveyDefinition survey =
        define(
            draft.withPlaces(
                LayerRole.SCARS, List.of(new Place(other, "other.shp", Optional.of("x")))));

    assertThat(survey.layers(LayerRole.SCARS))
        .singleElement()
        .satisfies(
            layer -> {
              assertThat(layer.file()).isEqualTo(other);
              assertThat(layer.fileLabel()).isEqualTo("other.shp");
              assertThat(layer.layer()).hasValue("x");
              assertThat(layer.crs()).isEmpty();
              assertThat(layer.axisOrder()).isEqualTo(AxisOrder.EAST_FIRST);
              assertThat(layer.attributes()).containsEntry(Field.WIDTH, "W");
              assertThat(layer.widthUnit()).isEqualTo(LengthUnit.FOOT);
            });
    assertThat(survey.layers(LayerRole.BEDS)).hasSize(1);
  }

  @Test
  void noFileIsNeeded() {
    SurveyDefinition survey =
        define(
            SurveyDraft.EMPTY
                .withPlaces(LayerRole.BEDS, List.of(place("beds.gpkg")))
                .withPlaces(LayerRole.SCARS, List.of(place("one.gpkg"), place("two.gpkg"))));

    assertThat(survey.file()).isEmpty();
    assertThat(survey.layers())
        .extracting(LayerSource::fileLabel)
        .containsExactly("one.gpkg", "two.gpkg", "beds.gpkg");
  }

  @Test
  void anOptionForALayerThatIsNotThereIsRefused() {
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> draft.withCrs(LayerRole.DEPTH, "EPSG:1", "--crs depth"))
        .withMessage("--crs depth: the survey has no layer of depth; name its file first");
  }

  @Test
  void wrongOptionsAreRefusedWithTheirPlace() {
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> draft.withCrs(LayerRole.SCARS, "32617", "--crs scars"))
        .withMessage("--crs scars: '32617' is no reference system; write it like EPSG:32617");
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> draft.withAttribute(LayerRole.SCARS, "widht", "W", "--attribute"))
        .withMessageStartingWith("--attribute: unknown property 'widht'; did you mean width?");
    assertThatExceptionOfType(MeadowmarkException.class)
        .isThrownBy(() -> draft.withWidthUnit(LayerRole.SCARS, "yd", "--width-unit scars"))
        .withMessageStartingWith("--width-unit scars: unknown unit of length 'yd'; use one of: m");
  }

  private Place place(String name) {
    return new Place(folder.resolve(name), name, Optional.empty());
  }

  private static SurveyDefinition define(SurveyDraft survey) {
    return survey.define(ParametersTable.bundled(), ReferenceTablesReader.bundled());
  }
}
