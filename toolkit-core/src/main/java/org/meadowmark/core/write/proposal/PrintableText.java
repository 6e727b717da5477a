package org.meadowmark.core.write.proposal;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/** Replaces characters that the typeface lacks, and remembers which. */
final class PrintableText {
  private final PdfFont font;
  private final Set<Integer> lacking = new TreeSet<>();

  PrintableText(PdfFont font) {
    this.font = font;
  }

  /** Replaces them in all text below a node. */
  void replaceIn(Node node) {
    if (node instanceof Text text) {
      text.setData(printable(text.getData()));
      return;
    }
    for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
      replaceIn(child);
    }
  }

  /** The characters that were replaced, as in {@code U+6F22, U+6F23}; empty where none was. */
  String replaced() {
    return lacking.stream().map("U+%04X"::formatted).collect(Collectors.joining(", "));
  }

  private String printable(String text) {
    StringBuilder printable = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              boolean known = font.has(c);
              if (!known) {
                lacking.add(c);
              }
              printable.appendCodePoint(known ? c : PdfFont.PLACEHOLDER);
            });
    return printable.toString();
  }
}
