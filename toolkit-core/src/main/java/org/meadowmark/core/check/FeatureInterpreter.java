package org.meadowmark.core.check;

import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.survey.Field;

/** Makes a feature of one role from a checked geometry and the attributes. */
interface FeatureInterpreter<T extends Located> {
  /** Kinds of geometry the role takes. */
  GeometryCheck.Kind kind();

  /** Properties the role reads, besides the id. */
  Field[] fields();

  /**
   * Makes the feature.
   *
   * @return empty if it must be left out; remarks say why
   */
  Optional<T> interpret(
      String id,
      FeatureRef ref,
      Geometry geometry,
      LayerAttributes attributes,
      Map<String, Object> values,
      FeatureRemarks remarks);

  /** Called after the last feature: remarks on the layer as a whole. */
  default void finish(LayerAttributes attributes, FeatureRemarks layer) {}
}
