package org.meadowmark.core.read;

import java.util.List;
import java.util.Optional;
import org.meadowmark.core.model.CrsText;

/**
 * What a file says about a layer before its features.
 *
 * @param layer layer name
 * @param attributeNames names in file order, geometry columns left out
 * @param crs reference system stated by the file or fixed by its format; empty where there is none
 * @param featureCount number of features if the file states it, else -1
 */
public record LayerHeader(
    String layer, List<String> attributeNames, Optional<CrsText> crs, long featureCount) {
  /**
   * Keeps a copy of the names.
   *
   * @param layer layer name
   * @param attributeNames names in file order, geometry columns left out
   * @param crs reference system stated by the file or fixed by its format; empty where there is
   *     none
   * @param featureCount number of features if the file states it, else -1
   * @throws NullPointerException if the list or a name in it is null
   */
  public LayerHeader {
    attributeNames = List.copyOf(attributeNames);
  }
}
