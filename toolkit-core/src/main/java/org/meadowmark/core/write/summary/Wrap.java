package org.meadowmark.core.write.summary;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines at spaces; a word longer than a line is cut. No-break spaces hold. */
final class Wrap {
  private Wrap() {}

  /**
   * Breaks a text.
   *
   * @param text text without line ends
   * @param width most characters in a line
   * @param first put before the first line, within the width
   * @param next put before the other lines, within the width
   */
  static List<String> lines(String text, int width, String first, String next) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(first);
    boolean empty = true;
    for (String word : text.split(" ")) {
      String rest = word;
      if (!empty && length(line) + 1 + length(rest) > width) {
        lines.add(line.toString());
        line = new StringBuilder(next);
        empty = true;
      }
      while (length(line) + length(rest) > width && empty) {
        int room = Math.max(1, width - length(line));
        int cut = rest.offsetByCodePoints(0, room);
        lines.add(line + rest.substring(0, cut));
        line = new StringBuilder(next);
        rest = rest.substring(cut);
      }
      line.append(empty ? "" : " ").append(rest);
      empty = false;
    }
    lines.add(line.toString());
    return lines;
  }

  private static int length(CharSequence text) {
    return Character.codePointCount(text, 0, text.length());
  }
}
