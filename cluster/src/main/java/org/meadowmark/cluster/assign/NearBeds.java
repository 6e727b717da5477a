package org.meadowmark.cluster.assign;

import java.util.Optional;
import org.apache.spark.api.java.function.FilterFunction;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.sedona_sql.UDT.GeometryUDT;
import org.apache.spark.sql.types.StructType;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.cluster.geoparquet.GeoParquetLayer;

/**
 * Beds of different bays that lie so near each other that an animal could cross: bays are measured
 * apart, so the crossing counts in none.
 *
 * <p>Pairs of boxes come from Sedona's join. Distances are taken on a sphere, in a plane at the
 * latitude of the pair: within one per cent of those on the ground.
 */
public final class NearBeds {
  private static final String WGS_84 = "EPSG:4326";

  /** Mean radius R1 of the Geodetic Reference System 1980 (Moritz 2000, Journal of Geodesy 74). */
  private static final double EARTH_RADIUS_METRES = 6_371_008.7714;

  /** Boxes are a little larger than needed: a degree is shorter on an ellipsoid in places. */
  private static final double BOX_MARGIN = 1.02;

  private static final StructType BEDS =
      new StructType()
          .add("bay", "string", false)
          .add("shape", new GeometryUDT(), true)
          .add("reach", new GeometryUDT(), true);

  private NearBeds() {}

  /**
   * Beds of a layer with their bays.
   *
   * @param rows rows of the layer with a bay each
   * @param layer the layer
   * @param bayColumn column of the rows with the bay
   * @param metres how near
   */
  public static Dataset<Row> beds(
      Dataset<Row> rows, GeoParquetLayer layer, String bayColumn, double metres) {
    String crs = LayerShapes.crs(layer);
    return rows.select(
            functions.col("`" + bayColumn + "`").cast("string"),
            functions.col("`" + layer.geometryColumn() + "`"))
        .map(
            (MapFunction<Row, Row>)
                row -> {
                  Optional<Geometry> shape =
                      LayerShapes.shape(row.<byte[]>getAs(1))
                          .map(geometry -> LayerShapes.in(geometry, crs, WGS_84));
                  return RowFactory.create(
                      row.getString(0),
                      shape.orElse(null),
                      shape.map(geometry -> reach(geometry, metres)).orElse(null));
                },
            Encoders.row(BEDS))
        .filter(functions.col("shape").isNotNull());
  }

  /**
   * Counts pairs of beds of different bays.
   *
   * @param beds see {@link #beds}
   * @param metres how near
   */
  public static long pairs(Dataset<Row> beds, double metres) {
    return beds.as("a")
        .join(beds.as("b"), functions.expr("ST_Intersects(a.reach, b.shape) AND a.bay < b.bay"))
        .selectExpr("a.shape AS first", "b.shape AS second")
        .filter((FilterFunction<Row>) row -> isNear(row.getAs(0), row.getAs(1), metres))
        .count();
  }

  private static Geometry reach(Geometry shape, double metres) {
    Envelope box = shape.getEnvelopeInternal();
    double farthest = Math.max(Math.abs(box.getMinY()), Math.abs(box.getMaxY()));
    double degrees = BOX_MARGIN * Math.toDegrees(metres / EARTH_RADIUS_METRES);
    box.expandBy(degrees / Math.cos(Math.toRadians(farthest)), degrees);
    return shape.getFactory().toGeometry(box);
  }

  private static boolean isNear(Geometry first, Geometry second, double metres) {
    double y = Math.toRadians(EARTH_RADIUS_METRES);
    double x = y * Math.cos(Math.toRadians(first.getEnvelopeInternal().centre().y));
    AffineTransformation plane = AffineTransformation.scaleInstance(x, y);
    return plane.transform(first).isWithinDistance(plane.transform(second), metres);
  }
}
