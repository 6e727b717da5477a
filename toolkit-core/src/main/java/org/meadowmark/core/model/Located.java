package org.meadowmark.core.model;

import org.locationtech.jts.geom.Geometry;

/** A feature of a survey: an id, where it was read, and a geometry. */
public interface Located {
  /** {@return id, unique in its layer} */
  String id();

  /** {@return where it was read} */
  FeatureRef ref();

  /**
   * {@return geometry in the coordinate reference system of the collection that holds the feature}
   */
  Geometry geometry();

  /**
   * {@return the same feature with another geometry, as after a repair or a projection}
   *
   * @param geometry the geometry to have instead, of a type that fits the kind of feature
   */
  Located withGeometry(Geometry geometry);
}
