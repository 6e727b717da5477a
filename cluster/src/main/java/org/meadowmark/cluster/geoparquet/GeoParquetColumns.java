package org.meadowmark.cluster.geoparquet;

/** Columns that the converter adds to those of a layer. */
public final class GeoParquetColumns {
  /** Id that the feature had in the layer it was converted from. */
  public static final String FEATURE_ID = "meadowmark_feature_id";

  /** Place that the feature had in that layer, from 1. */
  public static final String FEATURE_ORDER = "meadowmark_feature_order";

  /** The geometry. */
  public static final String GEOMETRY = "geometry";

  private GeoParquetColumns() {}
}
