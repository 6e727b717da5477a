package org.meadowmark.core.write.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class DataDictionaryTest {
  /**
   * To renew the file after a change: -Dmeadowmark.renew-dictionary=true, then look at the diff.
   */
  @Test
  void theCommittedPageIsTheGeneratedOne() throws IOException {
    Path page = Path.of(System.getProperty("meadowmark.root"), "docs", "data-dictionary.md");
    if (Boolean.getBoolean("meadowmark.renew-dictionary")) {
      Files.createDirectories(page.getParent());
      Files.writeString(page, DataDictionary.markdown(), StandardCharsets.UTF_8);
    }
    assertThat(Files.readString(page, StandardCharsets.UTF_8))
        .as("docs/data-dictionary.md")
        .isEqualTo(DataDictionary.markdown());
  }

  @Test
  void everyColumnSaysWhatItMeansAndNamesItsUnit() {
    assertThat(Stream.concat(ResultTables.layouts(), ComparisonTables.layouts()))
        .allSatisfy(
            layout ->
                assertThat(layout.columns())
                    .allSatisfy(
                        column -> {
                          assertThat(column.name())
                              .matches("[a-z][a-z0-9_]*(<cause>_(m|pct)|<class>_(pct|ha))?");
                          assertThat(column.description()).endsWith(".");
                          switch (column.unit()) {
                            case "m" -> assertThat(column.name()).endsWith("_m");
                            case "m²" -> assertThat(column.name()).endsWith("_m2");
                            case "m³" -> assertThat(column.name()).endsWith("_m3");
                            case "ha" -> assertThat(column.name()).endsWith("_ha");
                            case "ha·year" -> assertThat(column.name()).endsWith("_ha_years");
                            case "year" -> assertThat(column.name()).endsWith("_years");
                            case "m/year" -> assertThat(column.name()).endsWith("_m_per_year");
                            case "1/ha" -> assertThat(column.name()).endsWith("_per_ha");
                            case "m/ha" -> assertThat(column.name()).endsWith("_m_per_ha");
                            case "1/year" -> assertThat(column.name()).endsWith("_per_year");
                            case "h" -> assertThat(column.name()).endsWith("_hours");
                            case "m/(ha·year)" ->
                                assertThat(column.name()).endsWith("_m_per_ha_year");
                            case "m/(km·year)" ->
                                assertThat(column.name()).endsWith("_m_per_km_year");
                            case "°" -> assertThat(column.name()).endsWith("_deg");
                            case "%" -> assertThat(column.name()).endsWith("_pct");
                            default -> assertThat(column.unit()).isIn("", "1");
                          }
                        }));
  }

  @Test
  void aSeverityClassNeverStandsWithoutItsDenominator() {
    assertThat(ResultTables.layouts())
        .filteredOn(
            layout -> layout.columns().stream().anyMatch(c -> c.name().equals("severity_class")))
        .isNotEmpty()
        .allSatisfy(
            layout ->
                assertThat(layout.columns())
                    .extracting(column -> column.name())
                    .contains("severity_denominator"));
  }
}
