package org.meadowmark.core.rank.zone;

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
  NONE
}
