package org.meadowmark.core.read;

/**
 * How deep a geometry may be nested. Libraries read nested text and collections by recursion, and
 * later stages walk through them so, until the stack is full.
 */
public final class Nesting {
  /** Most levels; a multi-part geometry inside a collection is two. */
  public static final int DEEPEST = 32;

  /** What is wrong where there are more. */
  public static final String TOO_DEEP = "nested more than " + DEEPEST + " deep";

  private Nesting() {}

  /**
   * {@return whether brackets of two kinds are nested deeper than a number, quoted or not}
   *
   * @param text the text to look through
   * @param open the bracket that opens a level
   * @param close the bracket that closes it
   * @param deepest most levels
   */
  public static boolean deeper(String text, char open, char close, int deepest) {
    int depth = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == open) {
        depth++;
        if (depth > deepest) {
          return true;
        }
      } else if (c == close) {
        depth--;
      }
    }
    return false;
  }
}
