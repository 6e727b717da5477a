package org.meadowmark.core.model;

import java.util.Objects;
import java.util.Optional;

/**
 * What a file or a user says about a coordinate reference system, not yet looked up.
 *
 * @param code {@code AUTHORITY:NUMBER}, such as {@code EPSG:2882}, where one is given
 * @param wkt well-known text, where it is given
 * @param axisOrder order of the two ordinates of a coordinate as it was read
 */
public record CrsText(Optional<String> code, Optional<String> wkt, AxisOrder axisOrder) {

  /** Order of ordinates. */
  public enum AxisOrder {
    /** Easting or longitude first: the convention of every supported file format. */
    EAST_FIRST,
    /** The order that the authority's definition states: latitude first for EPSG:4326. */
    AS_DEFINED
  }

  /**
   * Refuses a system that neither a code nor a text describes.
   *
   * @param code {@code AUTHORITY:NUMBER}, such as {@code EPSG:2882}, where one is given
   * @param wkt well-known text, where it is given
   * @param axisOrder order of the two ordinates of a coordinate as it was read
   * @throws NullPointerException if anything is null
   * @throws IllegalArgumentException if there is neither a code nor a text
   */
  public CrsText {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(wkt, "wkt");
    Objects.requireNonNull(axisOrder, "axisOrder");
    if (code.isEmpty() && wkt.isEmpty()) {
      throw new IllegalArgumentException("a reference system needs a code or a text");
    }
  }

  /**
   * {@return a system named by an authority's code, easting first}
   *
   * @param code {@code AUTHORITY:NUMBER}, such as {@code EPSG:2882}
   */
  public static CrsText ofCode(String code) {
    return new CrsText(Optional.of(code), Optional.empty(), AxisOrder.EAST_FIRST);
  }

  /**
   * {@return a system given as well-known text, easting first}
   *
   * @param wkt well-known text of a coordinate reference system, not looked at here
   */
  public static CrsText ofWkt(String wkt) {
    return new CrsText(Optional.empty(), Optional.of(wkt), AxisOrder.EAST_FIRST);
  }

  /**
   * {@return the same system with another order of ordinates}
   *
   * @param order which of the two ordinates of a coordinate comes first
   */
  public CrsText withAxisOrder(AxisOrder order) {
    return new CrsText(code, wkt, order);
  }

  /** {@return code where there is one, else the start of the text} */
  public String label() {
    return code.orElseGet(
        () -> {
          String text = wkt.orElseThrow().strip();
          int end = text.indexOf(',');
          return end < 0 ? text : text.substring(0, end) + "…";
        });
  }
}
