package org.meadowmark.core.model;

/**
 * Text of unknown origin made fit to be shown: a name or message must not move the cursor of a
 * terminal, start a new line of a report, or turn the direction of the words around it.
 */
public final class PlainText {
  private static final int LINE_SEPARATOR = 0x2028;
  private static final int PARAGRAPH_SEPARATOR = 0x2029;

  private PlainText() {}

  /**
   * {@return whether {@link #line(String)} would leave the text as it is}
   *
   * @param text any text
   */
  public static boolean isLine(String text) {
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      if (isUnfit(c)) {
        return false;
      }
      i += Character.charCount(c);
    }
    return true;
  }

  /**
   * {@return the text with a blank for each control character (a line end of two counts as one),
   * line or paragraph separator and half of a surrogate pair, and for each character that embeds,
   * overrides or isolates a direction of writing (Unicode Standard Annex 9, table 4, from memory)}
   *
   * @param text any text
   */
  public static String line(String text) {
    if (isLine(text)) {
      return text;
    }
    StringBuilder line = new StringBuilder(text.length());
    text.replace("\r\n", "\n")
        .codePoints()
        .forEach(c -> line.appendCodePoint(isUnfit(c) ? ' ' : c));
    return line.toString();
  }

  /**
   * {@return the same, cut to a length; a cut text ends in an ellipsis}
   *
   * @param text any text
   * @param longest most characters, at least 1
   */
  public static String line(String text, int longest) {
    if (text.length() <= longest) {
      return line(text);
    }
    return line(text.substring(0, longest - 1)) + "…";
  }

  private static boolean isUnfit(int c) {
    return Character.isISOControl(c)
        || c == LINE_SEPARATOR
        || c == PARAGRAPH_SEPARATOR
        || (c >= 0x202A && c <= 0x202E)
        || (c >= 0x2066 && c <= 0x2069)
        || (c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE);
  }
}
