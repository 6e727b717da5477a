package org.meadowmark.core.model;

/** The hectare, for areas that are measured in square metres and given in hectares. */
public final class Hectare {
  /** Square metres in one hectare. */
  public static final double SQUARE_METRES = 10_000;

  private Hectare() {}
}
