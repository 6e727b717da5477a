package org.meadowmark.core.rank.evidence;

/** How most scars of a segment lie to its channel. */
public enum ScarPattern {
  /** Along the channel, near its edge, on the inside of a bend: boats cut the corner. */
  CORNER_CUTTING("corner-cutting"),
  /** Along the channel and near its edge, bend or not: boats run beside the channel. */
  ALONG_EDGE("along-edge"),
  /** Across the channel's direction: boats leave it for a short cut. */
  SHORT_CUT("short-cut"),
  /** None of these. */
  NONE("none");

  private final String key;

  ScarPattern(String key) {
    this.key = key;
  }

  /** {@return name used in tables and in {@code device-rules.csv}} */
  public String key() {
    return key;
  }
}
