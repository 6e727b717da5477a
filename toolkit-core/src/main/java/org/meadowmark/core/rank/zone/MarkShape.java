package org.meadowmark.core.rank.zone;

import java.util.Arrays;
import java.util.Locale;

/**
 * Shapes of regulatory marks: orange on white. Source: 33 CFR 62.33 (text read); a mooring buoy is
 * white with a blue band, 33 CFR 62.35.
 */
public enum MarkShape {
  /** Open-faced vertical diamond: danger. */
  DANGER_DIAMOND,
  /** Diamond with a centred cross: vessels excluded. */
  EXCLUSION_DIAMOND,
  /** Circle: operating restrictions in effect. */
  RESTRICTION_CIRCLE,
  /** Square or rectangle: directions or instructions lettered within. */
  INFORMATION_RECTANGLE,
  /** White buoy with a blue band. */
  MOORING_BUOY,
  /** A mark of the channel itself, by the local system of buoyage. */
  CHANNEL_MARK,
  /** Something other than a mark, or no proposal. */
  NONE;

  /** {@return name used in {@code device-rules.csv} and in tables} */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** {@return whether the mark restricts or warns, and so needs an established legal basis} */
  public boolean isRegulatory() {
    return switch (this) {
      case DANGER_DIAMOND, EXCLUSION_DIAMOND, RESTRICTION_CIRCLE, INFORMATION_RECTANGLE -> true;
      case MOORING_BUOY, CHANNEL_MARK, NONE -> false;
    };
  }

  /**
   * The shape with a key.
   *
   * @throws IllegalArgumentException if there is none
   */
  static MarkShape ofKey(String key) {
    return Arrays.stream(values())
        .filter(shape -> shape.key().equals(key))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no shape of a mark: " + key));
  }
}
