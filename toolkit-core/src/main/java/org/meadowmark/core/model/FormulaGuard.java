package org.meadowmark.core.model;

/**
 * The apostrophe that keeps a spreadsheet from running a text of a CSV file as a formula, put on
 * and taken off so that the same text comes back.
 *
 * <p>A text is guarded if, behind any apostrophes, it starts with {@code = + - @}, their full-width
 * forms, a tab or a line break; it then gets one apostrophe more. Numbers and dates are never
 * guarded. Which characters start a formula: OWASP, <i>CSV Injection</i>, from memory.
 */
public final class FormulaGuard {
  private static final String FORMULA_STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";
  private static final char GUARD = '\'';

  private FormulaGuard() {}

  /**
   * {@return the text as it may stand in a cell}
   *
   * @param text the text, such as a name out of a user's layer
   */
  public static String guarded(String text) {
    return startsFormula(text) ? GUARD + text : text;
  }

  /**
   * {@return the text that {@link #guarded} was given}
   *
   * @param cell text of a cell, with a guard or without
   */
  public static String unguarded(String cell) {
    return isGuarded(cell) ? cell.substring(1) : cell;
  }

  /**
   * {@return whether a cell holds a text with its guard}
   *
   * @param cell text of a cell
   */
  public static boolean isGuarded(String cell) {
    return !cell.isEmpty() && cell.charAt(0) == GUARD && startsFormula(cell.substring(1));
  }

  private static boolean startsFormula(String text) {
    int first = 0;
    while (first < text.length() && text.charAt(first) == GUARD) {
      first++;
    }
    return first < text.length() && FORMULA_STARTS.indexOf(text.charAt(first)) >= 0;
  }
}
