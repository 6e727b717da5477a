package org.meadowmark.core.change;

import org.meadowmark.core.measure.AreaMeasure.Kind;

/**
 * A management area, what lies outside all of them, or the whole survey.
 *
 * @param kind which of the three
 * @param areaId id of the management area, or empty
 * @param label name for people
 */
public record Scope(Kind kind, String areaId, String label) {
  /** Everything. */
  public static final Scope WHOLE = new Scope(Kind.WHOLE_SURVEY, "", "whole survey");

  /** Outside every management area. */
  public static final Scope OUTSIDE =
      new Scope(Kind.OUTSIDE_MANAGEMENT_AREAS, "", "outside every management area");
}
