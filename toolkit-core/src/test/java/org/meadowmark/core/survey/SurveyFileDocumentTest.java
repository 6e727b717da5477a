package org.meadowmark.core.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.reference.ReferenceTablesReader;

/** Keeps {@code docs/survey-file.md} true. */
class SurveyFileDocumentTest {
  private static final Pattern ROW_KEYS = Pattern.compile("(?m)^\\| (`[^|]*`) \\|");

  private String document;

  @BeforeEach
  void read() throws IOException {
    document =
        Files.readString(Path.of(System.getProperty("meadowmark.root"), "docs/survey-file.md"));
  }

  @Test
  void theKeysInTablesAreExactlyThoseOfTheCode() {
    List<String> documented =
        ROW_KEYS
            .matcher(document)
            .results()
            .map(match -> match.group(1).replace("`", ""))
            .flatMap(keys -> Stream.of(keys.split(", ")))
            .toList();

    assertThat(documented)
        .containsExactlyInAnyOrderElementsOf(
            Stream.of(
                    SurveyFile.SURVEY_KEYS,
                    Stream.of(LayerRole.values()).map(LayerRole::key).toList(),
                    SurveyFile.LAYER_KEYS,
                    ParameterName.keys())
                .flatMap(List::stream)
                .toList());
  }

  @Test
  void everyWordOfTheCodeIsThere() {
    SurveyFile.TOP_KEYS.forEach(key -> assertThat(document).contains("## `[" + key + "]`"));
    SurveyFile.fieldKeys().forEach(key -> assertThat(document).contains("`" + key + "`"));
    SurveyFile.AXIS_ORDERS.keySet().forEach(key -> assertThat(document).contains("`" + key + "`"));
    for (LengthUnit unit : LengthUnit.values()) {
      assertThat(document).contains("`" + unit.key() + "`");
    }
  }

  @Test
  void parametersAreThoseOfTheTable() {
    StringBuilder rows = new StringBuilder("| parameter | default | limits | what it does |\n");
    rows.append("|---|---|---|---|\n");
    for (ParameterRow row : ParametersTable.bundled().rows()) {
      rows.append(
          String.format(
              "| `%s` | %s | %s | %s |\n",
              row.name(),
              row.defaultText().isEmpty() ? "none" : with(row.defaultText(), row.unit()),
              limits(row),
              row.description()));
    }

    assertThat(document).contains(rows);
  }

  @Test
  void theExampleIsRead(@TempDir Path folder) throws IOException {
    Matcher example = Pattern.compile("(?s)```toml\n(.*?)```").matcher(document);
    assertThat(example.find()).isTrue();
    Path file = Files.writeString(folder.resolve("survey.toml"), example.group(1));

    SurveyDefinition survey =
        SurveyFile.read(file, ParametersTable.bundled(), ReferenceTablesReader.bundled());

    assertThat(survey.layers(LayerRole.BEDS)).hasSize(2);
    assertThat(survey.parameters().crossingDistancesMetres()).containsExactly(2.0, 5.0, 10.0, 25.0);
  }

  private static String limits(ParameterRow row) {
    return row.minimum().isEmpty() && row.maximum().isEmpty()
        ? ""
        : plain(row.minimum()) + " to " + with(plain(row.maximum()), row.unit());
  }

  private static String with(String value, String unit) {
    return unit.isEmpty() ? value : value + " " + unit;
  }

  private static String plain(OptionalDouble value) {
    return BigDecimal.valueOf(value.orElseThrow()).stripTrailingZeros().toPlainString();
  }
}
