package org.meadowmark.core.model;

import org.locationtech.jts.geom.Geometry;

/** A feature of a survey: an id, where it was read, and a geometry. */
public interface Located {
  /** Id, unique in its layer. */
  String id();

  /** Where it was read. */
  FeatureRef ref();

  /** Geometry in the coordinate reference system of the collection that holds the feature. */
  Geometry geometry();

  /** The same feature with another geometry, as after a repair or a projection. */
  Located withGeometry(Geometry geometry);
}
