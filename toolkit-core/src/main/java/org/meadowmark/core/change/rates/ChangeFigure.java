package org.meadowmark.core.change.rates;

/** A figure of the grass whose change between two surveys is given. */
public enum ChangeFigure {
  /** Scarred area divided by surveyed bed. */
  SCARRED_SHARE("scarred share of bed", "%", 100),
  /** Pieces of grass. */
  PATCHES("patches", "1", 1),
  /** Pieces of grass for each hectare of mapped grass. */
  PATCH_DENSITY("patches per hectare", "1/ha", 1),
  /** Length of grass edge for each hectare of mapped grass. */
  EDGE_DENSITY("edge density", "m/ha", 1),
  /** Effective mesh size. */
  EFFECTIVE_MESH("effective mesh size", "m²", 1),
  /** Equivalent connected area at the crossing distance of headline figures. */
  CONNECTED_AREA("equivalent connected area", "ha", 1);

  private final String label;
  private final String unit;
  private final double factor;

  ChangeFigure(String label, String unit, double factor) {
    this.label = label;
    this.unit = unit;
    this.factor = factor;
  }

  /** {@return words for tables} */
  public String label() {
    return label;
  }

  /** {@return unit of the values} */
  public String unit() {
    return unit;
  }

  /** What a value of the measurement is multiplied by. */
  double factor() {
    return factor;
  }
}
