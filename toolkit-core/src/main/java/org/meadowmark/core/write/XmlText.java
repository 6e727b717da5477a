package org.meadowmark.core.write;

/** Text that may stand in XML. */
public final class XmlText {
  /** Stands for a character that XML forbids. */
  private static final char REPLACEMENT = '\uFFFD';

  private XmlText() {}

  /**
   * {@return replaces what no XML document may hold, even escaped: control characters other than
   * tab and line ends, halves of surrogate pairs, U+FFFE and U+FFFF} Source: XML 1.0, production 2
   * (Char).
   *
   * @param text any text; each character that is forbidden becomes U+FFFD
   */
  public static String legal(String text) {
    StringBuilder legal = new StringBuilder(text.length());
    text.codePoints().forEach(c -> legal.appendCodePoint(isLegal(c) ? c : REPLACEMENT));
    return legal.toString();
  }

  private static boolean isLegal(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || (c >= 0x20 && c <= 0xD7FF)
        || (c >= 0xE000 && c <= 0xFFFD)
        || c >= 0x10000;
  }
}
