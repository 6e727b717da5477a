package org.meadowmark.core.partition;

/**
 * How large a part may be. A group that is larger is a part of its own: it cannot be divided.
 *
 * @param scars most scars
 * @param bedVertices most vertices of beds
 */
public record PartSize(int scars, int bedVertices) {
  /** Common practice, no source: a part takes a few hundred megabytes. */
  public static final PartSize DEFAULT = new PartSize(20_000, 1_000_000);

  /**
   * Checks that a part can hold something.
   *
   * @param scars most scars
   * @param bedVertices most vertices of beds
   * @throws IllegalArgumentException if one of the two is less than 1
   */
  public PartSize {
    if (scars < 1 || bedVertices < 1) {
      throw new IllegalArgumentException("a part holds at least one scar and one vertex");
    }
  }
}
