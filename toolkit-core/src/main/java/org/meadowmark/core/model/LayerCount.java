package org.meadowmark.core.model;

import java.util.Comparator;

/**
 * How many features of a layer went which way. {@code read = used + skipped}; repaired features are
 * among the used.
 *
 * @param role layer role
 * @param file file name as given
 * @param layer layer name
 * @param crs reference system of the file, as a label
 * @param read features met in the file, readable or not
 * @param used features that reach the measurement
 * @param repaired used features that were changed first
 * @param skipped features left out
 */
public record LayerCount(
    LayerRole role,
    String file,
    String layer,
    String crs,
    long read,
    long used,
    long repaired,
    long skipped) {
  /** Order for lists: role, file, layer. */
  public static final Comparator<LayerCount> ORDER =
      Comparator.comparing(LayerCount::role)
          .thenComparing(LayerCount::file)
          .thenComparing(LayerCount::layer);
}
