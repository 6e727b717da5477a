package org.meadowmark.core.model;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormulaGuardTest {
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '|',
      value = {
        "=1+1, '=1+1",
        "'=1+1, ''=1+1",
        "@SUM(1), '@SUM(1)",
        "-5, '-5",
        "\uFF1D1, '\uFF1D1",
        "'tis, 'tis",
        "', '",
        "a=1, a=1"
      })
  void guardsWhatASpreadsheetWouldRun(String text, String cell) {
    assertThat(FormulaGuard.guarded(text)).isEqualTo(cell);
    assertThat(FormulaGuard.unguarded(cell)).isEqualTo(text);
  }

  @Property(tries = 500, seed = "20260614")
  void givesTheTextBack(
      @ForAll @CharRange(from = '\'', to = '=') @StringLength(max = 6) String text) {
    assertThat(FormulaGuard.unguarded(FormulaGuard.guarded(text))).isEqualTo(text);
  }
}
