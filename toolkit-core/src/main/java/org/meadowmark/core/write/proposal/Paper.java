package org.meadowmark.core.write.proposal;

/** Paper that sheets are laid out for. */
public enum Paper {
  /** 210 mm by 297 mm, ISO 216. */
  A4("A4"),
  /** 8.5 inches by 11 inches. */
  LETTER("letter");

  private final String css;

  Paper(String css) {
    this.css = css;
  }

  /** Name in a style sheet. */
  String css() {
    return css;
  }
}
