package org.meadowmark.core.check;

import java.util.List;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.KeptElsewhere;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.Located;

/**
 * The usable features of one layer, still in the file's coordinates.
 *
 * @param crs reference system of the geometries
 * @param features in file order
 * @param count how many were read, repaired and skipped
 * @param <T> kind of feature
 */
public record CheckedLayer<T extends Located>(CrsText crs, List<T> features, LayerCount count) {
  /**
   * Keeps a copy of the features; those that are kept elsewhere stay there.
   *
   * @param crs reference system of the geometries
   * @param features in file order
   * @param count how many were read, repaired and skipped
   * @throws NullPointerException if there is no list, or a feature in it is null
   */
  public CheckedLayer {
    features = KeptElsewhere.copyOf(features);
  }
}
