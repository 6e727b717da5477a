package org.meadowmark.core.read.csv;

import java.util.regex.Pattern;
import org.meadowmark.core.model.FormulaGuard;
import org.meadowmark.core.read.DateText;

/**
 * Values of cells by their look: whole numbers, decimals, dates, else text. An apostrophe that
 * keeps a spreadsheet from running a text is no part of the text.
 */
final class CellValues {
  /** No leading zero: {@code 007} is a name, not a number. */
  private static final Pattern WHOLE = Pattern.compile("-?(?:0|[1-9][0-9]{0,17})");

  private static final Pattern DECIMAL =
      Pattern.compile("[+-]?(?:0|[1-9][0-9]*)?(?:\\.[0-9]*)?(?:[eE][+-]?[0-9]{1,4})?");
  private static final Pattern DIGIT_FIRST = Pattern.compile("[+-]?\\.?[0-9].*", Pattern.DOTALL);

  private CellValues() {}

  /** Long, Double, LocalDate or String; null for an empty cell. */
  static Object parse(String cell) {
    String text = cell.strip();
    if (text.isEmpty()) {
      return null;
    }
    if (FormulaGuard.isGuarded(text)) {
      return FormulaGuard.unguarded(text);
    }
    if (WHOLE.matcher(text).matches()) {
      return Long.valueOf(text);
    }
    if (DIGIT_FIRST.matcher(text).matches() && DECIMAL.matcher(text).matches()) {
      double number = Double.parseDouble(text);
      return Double.isFinite(number) ? (Object) number : text;
    }
    return DateText.date(text).<Object>map(date -> date).orElse(text);
  }
}
