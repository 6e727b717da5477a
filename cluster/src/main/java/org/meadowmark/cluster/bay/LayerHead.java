package org.meadowmark.cluster.bay;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Optional;
import org.meadowmark.cluster.geoparquet.GeoParquetLayer;
import org.meadowmark.core.model.CrsText;

/**
 * What the files say about a layer, in a form that can travel between machines.
 *
 * @param name layer name
 * @param attributes attribute names in order
 * @param leftOut columns of kinds that no attribute is of
 * @param crs code of the reference system, or empty
 * @param ofBays whether each row belongs to one bay; else all rows are of every bay
 */
record LayerHead(
    String name,
    ArrayList<String> attributes,
    ArrayList<String> leftOut,
    String crs,
    boolean ofBays)
    implements Serializable {
  /** Stands for a layer that is no table, such as a grid of depths. */
  static final LayerHead NO_TABLE =
      new LayerHead("", new ArrayList<>(), new ArrayList<>(), "", false);

  static LayerHead of(GeoParquetLayer layer, boolean ofBays) {
    return new LayerHead(
        layer.name(),
        new ArrayList<>(layer.attributes()),
        new ArrayList<>(layer.leftOut()),
        layer.crs().map(CrsText::label).orElse(""),
        ofBays);
  }

  Optional<CrsText> crsText() {
    return crs.isEmpty() ? Optional.empty() : Optional.of(CrsText.ofCode(crs));
  }
}
