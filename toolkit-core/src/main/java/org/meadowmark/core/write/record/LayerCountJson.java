package org.meadowmark.core.write.record;

import com.fasterxml.jackson.databind.node.ArrayNode;
import java.util.List;
import org.meadowmark.core.model.LayerCount;

/** Features by layer, in the same words in every JSON file. */
final class LayerCountJson {
  private LayerCountJson() {}

  static void putAll(ArrayNode array, List<LayerCount> counts) {
    for (LayerCount count : counts) {
      array
          .addObject()
          .put("role", count.role().key())
          .put("file", count.file())
          .put("layer", count.layer())
          .put("crs", count.crs())
          .put("read", count.read())
          .put("used", count.used())
          .put("repaired", count.repaired())
          .put("skipped", count.skipped());
    }
  }
}
