package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.meadowmark.core.write.Tables.FULL;
import static org.meadowmark.core.write.Tables.NOTHING;
import static org.meadowmark.core.write.Tables.row;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.write.ResultTable.GeometryKind;

class CsvTableWriterTest {
  @TempDir Path folder;

  @Test
  void writesHeaderValuesAndGeometry() throws IOException {
    ResultTable table =
        Tables.of(
            "t", GeometryKind.LINESTRING, row(FULL, "LINESTRING (0 0.5, 10 20)"), row(NOTHING));
    assertThat(written(table, true))
        .isEqualTo(
            "name,scar_count,area_m2,surveyed,scarred,wkt\r\n"
                + "Étang,3,59.91,2024-06-30,true,\"LINESTRING (0 0.5, 10 20)\"\r\n"
                + ",,,,,\r\n");
    Files.delete(folder.resolve("t.csv"));
    assertThat(written(table, false)).contains("Étang,3,59.91,2024-06-30,true\r\n");
  }

  @Test
  void isTheSameInEveryLocale() throws IOException {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(written(Tables.of("t", GeometryKind.NONE, row(FULL)), false))
          .contains("Étang,3,59.91,2024-06-30,true");
    } finally {
      Locale.setDefault(before);
    }
  }

  /** The characters that the OWASP page on CSV injection lists. */
  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx"})
  void textThatLooksLikeAFormulaGetsAnApostrophe(String text) throws IOException {
    ResultTable table =
        Tables.of("t", GeometryKind.NONE, row(Arrays.asList(text, -1L, -0.5, null, null)));
    assertThat(written(table, false)).contains("'" + text).contains(",-1,-0.5,");
  }

  @Test
  void quotesAsTheStandardSays() throws IOException {
    ResultTable table =
        Tables.of(
            "t", GeometryKind.NONE, row(Arrays.asList("a \"b\", c\nd", null, null, null, null)));
    assertThat(written(table, false)).contains("\"a \"\"b\"\", c\nd\",,,,\r\n");
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0.0",
    "5, 5.0",
    "0.1, 0.1",
    "1e10, 10000000000.0",
    "1e-7, 0.0000001",
    "-2.5e-5, -0.000025",
    "123456789.125, 123456789.125",
    // Release notes of JDK 19: Double.toString gives 1.9999999999999998E23 in earlier releases.
    "2e23, 200000000000000000000000.0"
  })
  void decimalsArePlainAndShort(double number, String expected) {
    assertThat(CsvTableWriter.plainDecimal(number)).isEqualTo(expected);
  }

  @Property
  void decimalsReadBackAsTheSameNumber(@ForAll double number) {
    String text = CsvTableWriter.plainDecimal(number);
    assertThat(text).doesNotContainIgnoringCase("e").contains(".");
    assertThat(Double.parseDouble(text)).isEqualTo(number == 0 ? 0.0 : number);
  }

  @Test
  void refusesAnExistingFile() throws IOException {
    ResultTable table = Tables.of("t", GeometryKind.NONE, row(FULL));
    written(table, false);
    assertThatThrownBy(() -> written(table, false))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("--overwrite");
  }

  private String written(ResultTable table, boolean withGeometry) throws IOException {
    Path file = folder.resolve("t.csv");
    CsvTableWriter.write(file, false, table, withGeometry);
    return Files.readString(file);
  }
}
