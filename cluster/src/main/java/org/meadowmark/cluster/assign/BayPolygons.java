package org.meadowmark.cluster.assign;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.sedona_sql.UDT.GeometryUDT;
import org.apache.spark.sql.types.StructType;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.cluster.geoparquet.GeoParquetLayer;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.survey.LayerSource;

/**
 * Bays as polygons. A feature is of the bay that it meets; of several, of the one that holds the
 * largest share of its area or length, and where shares are equal of the first by name.
 *
 * <p>The join is Sedona's, with the polygons sent to every machine. Polygons are brought to the
 * reference system of each layer, vertex by vertex; shares are taken there.
 */
public final class BayPolygons {
  /** Column with the bay; null for a feature in none. */
  public static final String BAY = "meadowmark_bay";

  private static final String KEY = "meadowmark_row";
  private static final String SHAPE = "meadowmark_shape";
  private static final String OUTLINE = "meadowmark_outline";
  private static final String LESS = "meadowmark_less";
  private static final StructType SHAPES =
      new StructType().add(KEY, "bigint", false).add(SHAPE, new GeometryUDT(), true);
  private static final StructType OUTLINES =
      new StructType().add(BAY, "string", false).add(OUTLINE, new GeometryUDT(), false);
  private static final StructType SHARES =
      new StructType()
          .add(KEY, "bigint", false)
          .add(LESS, "double", false)
          .add(BAY, "string", false);

  private final SparkSession spark;
  private final Map<String, Geometry> outlines;
  private final String crs;

  private BayPolygons(SparkSession spark, Map<String, Geometry> outlines, String crs) {
    this.spark = spark;
    this.outlines = outlines;
    this.crs = crs;
  }

  /**
   * Reads the polygons of a layer.
   *
   * @param spark the session
   * @param place the layer, GeoParquet, a path or an address
   * @param nameColumn column with the names of bays; polygons of one name are one bay
   * @throws org.meadowmark.core.model.SurveyInputException if it cannot be read, has no such
   *     column, or a row has no name or no valid polygon
   */
  public static BayPolygons read(SparkSession spark, String place, String nameColumn) {
    Path path = Path.of(place);
    LayerSource source =
        LayerSource.of(LayerRole.MANAGEMENT_AREAS, path).withFile(path, place, Optional.empty());
    GeoParquetLayer layer = GeoParquetLayer.open(spark, source);
    LayerProblems problems = new LayerProblems(source, layer.name());
    if (!layer.attributes().contains(nameColumn)) {
      throw problems.refused(
          "has no column '" + nameColumn + "' with the names of bays",
          "name one with --bay-name; it has: " + String.join(", ", layer.attributes()));
    }
    Map<String, List<Geometry>> parts = new TreeMap<>(Ids.ORDER);
    for (Row row : layer.rows().collectAsList()) {
      Object name = row.getAs(nameColumn);
      if (name == null || name.toString().isBlank()) {
        throw problems.refused(
            "has a polygon without a name in '" + nameColumn + "'", "give each bay a name");
      }
      Optional<Geometry> shape =
          LayerShapes.shape(row.<byte[]>getAs(layer.geometryColumn()))
              .filter(geometry -> geometry instanceof Polygonal);
      parts
          .computeIfAbsent(name.toString(), key -> new ArrayList<>())
          .add(
              shape.orElseThrow(
                  () ->
                      problems.refused(
                          "has no polygon for the bay '" + name + "'", "draw one for each bay")));
    }
    Map<String, Geometry> outlines = new TreeMap<>(Ids.ORDER);
    parts.forEach((name, polygons) -> outlines.put(name, OverlayNGRobust.union(polygons)));
    if (outlines.isEmpty()) {
      throw problems.refused("has no polygon", "draw one for each bay");
    }
    return new BayPolygons(spark, outlines, LayerShapes.crs(layer));
  }

  /**
   * Says for every feature of a layer which bay it is of.
   *
   * @param layer the layer
   * @return its rows with their columns, and {@link #BAY}
   */
  public Dataset<Row> assign(GeoParquetLayer layer) {
    Dataset<Row> rows = layer.rows().withColumn(KEY, functions.monotonically_increasing_id());
    String geometry = layer.geometryColumn();
    Dataset<Row> shapes =
        rows.select(functions.col(KEY), functions.col("`" + geometry + "`"))
            .map(
                (MapFunction<Row, Row>)
                    row ->
                        RowFactory.create(
                            row.getLong(0), LayerShapes.shape(row.<byte[]>getAs(1)).orElse(null)),
                Encoders.row(SHAPES))
            .filter(functions.col(SHAPE).isNotNull());
    Dataset<Row> best =
        shapes
            .join(
                functions.broadcast(outlines(LayerShapes.crs(layer))),
                functions.expr("ST_Intersects(" + OUTLINE + ", " + SHAPE + ")"))
            .select(KEY, SHAPE, OUTLINE, BAY)
            .map(
                (MapFunction<Row, Row>)
                    row ->
                        RowFactory.create(
                            row.getLong(0), -share(row.getAs(1), row.getAs(2)), row.getString(3)),
                Encoders.row(SHARES))
            .groupBy(KEY)
            .agg(functions.min(functions.struct(LESS, BAY)).getField(BAY).alias(BAY));
    Column[] columns =
        Stream.concat(Arrays.stream(layer.rows().schema().fieldNames()), Stream.of(BAY))
            .map(name -> functions.col("`" + name + "`"))
            .toArray(Column[]::new);
    return rows.join(best, rows.col(KEY).equalTo(best.col(KEY)), "left_outer").select(columns);
  }

  private Dataset<Row> outlines(String layerCrs) {
    List<Row> rows = new ArrayList<>();
    outlines.forEach(
        (name, outline) ->
            rows.add(RowFactory.create(name, LayerShapes.in(outline, crs, layerCrs))));
    return spark.createDataFrame(rows, OUTLINES);
  }

  private static double share(Geometry shape, Geometry outline) {
    if (shape.getDimension() == 0 || outline.covers(shape)) {
      return Double.MAX_VALUE;
    }
    try {
      Geometry inside = OverlayNGRobust.overlay(shape, outline, OverlayNG.INTERSECTION);
      return shape.getDimension() == 2 ? inside.getArea() : inside.getLength();
    } catch (IllegalArgumentException e) {
      // Lines and polygons in one: meeting the bay has to do.
      return 0;
    }
  }
}
