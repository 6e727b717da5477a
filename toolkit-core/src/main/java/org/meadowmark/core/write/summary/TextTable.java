package org.meadowmark.core.write.summary;

import java.util.ArrayList;
import java.util.List;

/**
 * A table of text no wider than a terminal: the first column is left-aligned and wrapped into the
 * room that the others leave, the others are right-aligned.
 */
final class TextTable {
  private static final int GAP = 2;
  private static final int NARROWEST_FIRST = 9;

  private final List<List<String>> rows = new ArrayList<>();

  TextTable(String... header) {
    rows.add(List.of(header));
  }

  void add(String... cells) {
    if (cells.length != rows.get(0).size()) {
      throw new IllegalArgumentException("a row needs " + rows.get(0).size() + " cells");
    }
    rows.add(List.of(cells));
  }

  /** The table as lines, each at most so many characters. */
  List<String> lines(int width) {
    int[] widths = new int[rows.get(0).size()];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], length(row.get(i)));
      }
    }
    int others = 0;
    for (int i = 1; i < widths.length; i++) {
      others += GAP + widths[i];
    }
    int first = Math.min(widths[0], Math.max(NARROWEST_FIRST, width - others));
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      addRow(lines, rows.get(i), first, widths);
      if (i == 0) {
        lines.add("-".repeat(first + others));
      }
    }
    return lines;
  }

  private static void addRow(List<String> lines, List<String> row, int first, int[] widths) {
    List<String> names = Wrap.lines(row.get(0), first, "", "  ");
    StringBuilder line = new StringBuilder(padded(names.get(0), first));
    for (int i = 1; i < widths.length; i++) {
      line.append(" ".repeat(GAP + widths[i] - length(row.get(i)))).append(row.get(i));
    }
    lines.add(line.toString().stripTrailing());
    lines.addAll(names.subList(1, names.size()));
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(Math.max(0, width - length(text)));
  }

  private static int length(String text) {
    return text.codePointCount(0, text.length());
  }
}
