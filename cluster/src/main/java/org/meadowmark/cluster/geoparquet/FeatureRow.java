package org.meadowmark.cluster.geoparquet;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/**
 * A feature as read from GeoParquet, on its way to the machine that checks its bay.
 *
 * @param id the feature's own id in the layer, or empty
 * @param order place in the layer that it was converted from; 0 where the layer does not say
 * @param geometry geometry in the layer's coordinates, where it has one
 * @param problem why the geometry could not be read, or empty
 * @param values values of its attributes; one that is missing is left out
 */
public record FeatureRow(
    String id, long order, Optional<Geometry> geometry, String problem, List<Value> values) {
  public FeatureRow {
    values = List.copyOf(values);
  }
}
