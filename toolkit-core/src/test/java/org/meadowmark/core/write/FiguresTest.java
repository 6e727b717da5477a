package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "0.0123456, 0.012",
    "0.996, 1.0",
    "1.234, 1.23",
    "9.999, 10.0",
    "12.345, 12.3",
    "999.4, 999",
    "999.5, 1_000",
    "12345.6, 12_346",
    "1234567.8, 1_234_568",
    "-1234.5, −1_234",
    "0.00000001, 0.000000",
  })
  void keepsTheDigitsThatMatter(double value, String text) {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.GERMANY);
    try {
      assertThat(Figures.number(value)).isEqualTo(text.replace('_', Figures.THIN_SPACE));
    } finally {
      Locale.setDefault(before);
    }
  }

  @ParameterizedTest
  @CsvSource({"5, 5 m", "0.25, 0.25 m", "1500, 1_500 m", "20, 20 m"})
  void printsChosenLengthsAsTheyAre(double metres, String text) {
    assertThat(Figures.chosenLength(metres))
        .isEqualTo(text.replace('_', Figures.THIN_SPACE).replace(' ', Figures.UNIT_SPACE));
  }

  @ParameterizedTest
  @CsvSource({"0.05, 5 %", "0.2, 20 %", "0.125, 12.5 %", "1, 100 %"})
  void printsChosenSharesAsTheyAre(double share, String text) {
    assertThat(Figures.chosenPercent(share)).isEqualTo(text.replace(' ', Figures.UNIT_SPACE));
  }

  @ParameterizedTest
  @CsvSource({"9999, 9_999 m²", "10000, 1.00 ha", "123456789, 12_346 ha"})
  void turnsToHectares(double squareMetres, String text) {
    assertThat(Figures.area(squareMetres))
        .isEqualTo(text.replace('_', Figures.THIN_SPACE).replace(' ', Figures.UNIT_SPACE));
  }

  @ParameterizedTest
  @CsvSource({"0, 0 %", "0.00001, < 0.01 %", "0.0005, 0.050 %", "0.042, 4.20 %", "1, 100 %"})
  void neverPrintsATinyShareAsZero(double share, String text) {
    assertThat(Figures.percent(share)).isEqualTo(text.replace(' ', Figures.UNIT_SPACE));
  }
}
