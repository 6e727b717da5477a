package org.meadowmark.cluster.bay;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.KeyValueGroupedDataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.storage.StorageLevel;
import org.meadowmark.cluster.assign.BayPolygons;
import org.meadowmark.cluster.assign.NearBeds;
import org.meadowmark.cluster.assign.OutsideFeatures;
import org.meadowmark.cluster.folder.BayFolders;
import org.meadowmark.cluster.geoparquet.FeatureEncoder;
import org.meadowmark.cluster.geoparquet.FeatureRow;
import org.meadowmark.cluster.geoparquet.GeoParquetLayer;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.project.DepthGrid;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.Parameters;
import scala.Tuple2;

/**
 * Assesses bays side by side: features to bays, bays to parts, parts to figures, figures to tables
 * and folders.
 *
 * <p>A bay is a survey of its own: beds and scars of different bays do not change each other's
 * figures. Every figure is the one that the toolkit gives for the bay on one machine.
 */
public final class BaysAssessment implements AutoCloseable {
  private static final int MOST_ERRORS_SHOWN = 5;

  private final SparkSession spark;
  private final SurveySpec survey;
  private final String bayColumn;
  private final PartSize size;
  private final Optional<BayFolders> folders;
  private final Optional<BayPolygons> polygons;
  private final List<Dataset<?>> held = new ArrayList<>();

  /**
   * Prepares.
   *
   * @param spark the session
   * @param survey layers and parameters
   * @param bayColumn column of the layers that names the bay; empty where all is one bay, or where
   *     there are polygons
   * @param polygons bays as polygons, where scars and beds go by their place
   * @param size how large a part may be
   * @param folders writes all files of each bay, where they are wanted
   */
  public BaysAssessment(
      SparkSession spark,
      SurveySpec survey,
      String bayColumn,
      Optional<BayPolygons> polygons,
      PartSize size,
      Optional<BayFolders> folders) {
    this.polygons = polygons;
    this.folders = folders;
    this.spark = spark;
    this.survey = survey;
    this.bayColumn = bayColumn;
    this.size = size;
  }

  /**
   * What was found.
   *
   * @param rows rows of all tables of all bays, see {@link Stage}
   * @param bays bays by name
   * @param folders where the files of each bay lie for now, by bay; empty where none were wanted
   * @param nearBeds pairs of beds of different bays within the largest crossing distance
   * @param outside scars and beds in no bay, see {@link OutsideFeatures}; empty without polygons
   * @param parts number of parts
   * @param largestPartScars scars of the part that has most
   */
  public record Outcome(
      Dataset<Row> rows,
      TreeMap<String, Bay> bays,
      TreeMap<String, String> folders,
      long nearBeds,
      Optional<Dataset<Row>> outside,
      int parts,
      long largestPartScars) {}

  /**
   * A bay.
   *
   * @param grid label of its analysis grid
   * @param scars its scars
   */
  public record Bay(String grid, int scars) {}

  /**
   * Assesses; the rows are held until this is closed.
   *
   * @throws MeadowmarkException if the input of any bay cannot be used
   */
  public Outcome assess() {
    Layers layers = open();
    Dataset<Row> features = hold(layers.features());
    Dataset<Row> loaded =
        hold(
            byBay(features)
                .flatMapGroups(new BayLoader(survey, layers.reader(), size), Stage.encoder()));
    refuseErrors(loaded);
    TreeMap<String, Bay> bays = new TreeMap<>(Ids.ORDER);
    List<Tuple2<String, Tuple2<String, Integer>>> facts =
        ofKind(loaded, Stage.FACTS)
            .toJavaRDD()
            .map(
                row -> {
                  BayFacts read = RowBytes.read(BayFacts.class, row.getAs(Stage.BYTES));
                  return new Tuple2<>(
                      row.getString(0), new Tuple2<>(read.grid(), read.scarCount()));
                })
            .collect();
    facts.forEach(bay -> bays.put(bay._1(), new Bay(bay._2()._1(), bay._2()._2())));
    List<Row> parts =
        ofKind(loaded, Stage.PART)
            .select(Stage.BAY, Stage.NUMBER, Stage.PLACE)
            .orderBy(
                functions.col(Stage.PLACE).desc(),
                functions.col(Stage.BAY),
                functions.col(Stage.NUMBER))
            .collectAsList();
    Dataset<Row> evidence = measure(ofKind(loaded, Stage.PART), parts);
    Dataset<Row> rows =
        hold(
            byBay(features.union(ofKind(loaded, Stage.FACTS)).union(evidence))
                .flatMapSortedGroups(
                    new Column[] {
                      functions.col(Stage.KIND).desc(), functions.col(Stage.NUMBER).asc()
                    },
                    new BayMerger(survey, layers.reader(), folders.orElse(null)),
                    Stage.encoder()));
    return new Outcome(
        rows,
        bays,
        places(rows),
        bays.size() > 1 ? NearBeds.pairs(hold(layers.beds()), reachMetres()) : 0,
        layers.outside(),
        parts.size(),
        parts.isEmpty() ? 0 : parts.get(0).getLong(2));
  }

  /** Of tries that failed or came late Spark keeps no row, so there is one place a bay. */
  private static TreeMap<String, String> places(Dataset<Row> rows) {
    TreeMap<String, String> places = new TreeMap<>(Ids.ORDER);
    for (Row row : ofKind(rows, Stage.FOLDER).collectAsList()) {
      places.put(row.getString(0), new String(row.<byte[]>getAs(Stage.BYTES), UTF_8));
    }
    return places;
  }

  private static KeyValueGroupedDataset<String, Row> byBay(Dataset<Row> rows) {
    return rows.groupByKey((MapFunction<Row, String>) row -> row.getString(0), Encoders.STRING());
  }

  @Override
  public void close() {
    held.forEach(Dataset::unpersist);
  }

  private Dataset<Row> hold(Dataset<Row> rows) {
    held.add(rows.persist(StorageLevel.DISK_ONLY()));
    return rows;
  }

  private static Dataset<Row> ofKind(Dataset<Row> rows, String kind) {
    return rows.filter(functions.col(Stage.KIND).equalTo(kind));
  }

  private double reachMetres() {
    Parameters parameters = survey.parameters();
    return Stream.concat(
            parameters.crossingDistancesMetres().stream(),
            Stream.of(parameters.crossingDistanceMetres()))
        .max(Double::compare)
        .orElseThrow();
  }

  /**
   * Layers as opened.
   *
   * @param features rows of the features of bays
   * @param reader what reads them
   * @param beds beds with their bays
   * @param outside features in no bay
   */
  private record Layers(
      Dataset<Row> features, BayReader reader, Dataset<Row> beds, Optional<Dataset<Row>> outside) {}

  private Layers open() {
    List<LayerSource> sources = survey.layers();
    List<LayerHead> heads = new ArrayList<>();
    ArrayList<ArrayList<byte[]>> ofEveryBay = new ArrayList<>();
    Dataset<Row> features = spark.createDataset(List.of(), Stage.encoder());
    List<Dataset<Row>> beds = new ArrayList<>();
    List<Dataset<Row>> outside = new ArrayList<>();
    for (int i = 0; i < sources.size(); i++) {
      LayerSource source = sources.get(i);
      ofEveryBay.add(new ArrayList<>());
      if (source.role() == LayerRole.DEPTH && DepthGrid.isGrid(source)) {
        heads.add(LayerHead.NO_TABLE);
        continue;
      }
      GeoParquetLayer layer = GeoParquetLayer.open(spark, source);
      Optional<String> column = column(layer);
      heads.add(LayerHead.of(layer, column.isPresent()));
      Dataset<Row> rows = layer.rows();
      if (column.isPresent() && polygons.isPresent()) {
        Dataset<Row> assigned = hold(polygons.get().assign(layer));
        outside.add(OutsideFeatures.of(assigned, layer));
        rows = assigned.filter(functions.col(BayPolygons.BAY).isNotNull());
      }
      Dataset<Row> encoded = encoded(rows, layer, i, column);
      if (column.isPresent() || bayColumn.isEmpty() && polygons.isEmpty()) {
        features = features.union(encoded);
      } else {
        for (Row row : encoded.collectAsList()) {
          ofEveryBay.get(i).add(row.getAs(Stage.BYTES));
        }
      }
      if (column.isPresent() && source.role() == LayerRole.BEDS) {
        beds.add(NearBeds.beds(rows, layer, column.get(), reachMetres()));
      }
    }
    Broadcast<ArrayList<ArrayList<byte[]>>> shared =
        JavaSparkContext.fromSparkContext(spark.sparkContext()).broadcast(ofEveryBay);
    return new Layers(
        features,
        new BayReader(survey, heads, shared),
        beds.stream().reduce(Dataset::union).orElseGet(spark::emptyDataFrame),
        outside.stream().reduce(Dataset::union).map(this::hold));
  }

  /** Column with the bay of each row; empty where a layer counts for every bay. */
  private Optional<String> column(GeoParquetLayer layer) {
    LayerRole role = layer.source().role();
    boolean needed = role == LayerRole.SCARS || role == LayerRole.BEDS;
    if (polygons.isPresent()) {
      return needed ? Optional.of(BayPolygons.BAY) : Optional.empty();
    }
    if (layer.attributes().contains(bayColumn)) {
      return Optional.of(bayColumn);
    }
    if (needed && !bayColumn.isEmpty()) {
      throw new MeadowmarkException(
          layer.source().fileLabel()
              + ": "
              + layer.name()
              + ": has no column '"
              + bayColumn
              + "' that names the bay; it has: "
              + String.join(", ", layer.attributes()));
    }
    return Optional.empty();
  }

  private Dataset<Row> encoded(
      Dataset<Row> rows, GeoParquetLayer layer, int number, Optional<String> column) {
    String named = survey.name();
    int bay = column.map(name -> rows.schema().fieldIndex(name)).orElse(-1);
    if (column.isPresent()) {
      refuseWithoutBay(rows, layer, column.get());
    }
    FeatureEncoder encoder = new FeatureEncoder(layer);
    return rows.map(
        (MapFunction<Row, Row>)
            row ->
                Stage.row(
                    bay < 0 ? named : row.get(bay).toString(),
                    Stage.FEATURE,
                    number,
                    0,
                    RowBytes.of(encoder.encode(row), FeatureRow.class)),
        Stage.encoder());
  }

  private static void refuseWithoutBay(Dataset<Row> rows, GeoParquetLayer layer, String column) {
    Column name = functions.col("`" + column + "`").cast("string");
    long without = rows.filter(name.isNull().or(functions.trim(name).equalTo(""))).count();
    if (without > 0) {
      throw new MeadowmarkException(
          layer.source().fileLabel()
              + ": "
              + layer.name()
              + ": "
              + without
              + " feature(s) have no value in '"
              + column
              + "'; give each the name of its bay");
    }
  }

  private static void refuseErrors(Dataset<Row> loaded) {
    Dataset<Row> errors = ofKind(loaded, Stage.ERROR);
    long count = errors.count();
    if (count == 0) {
      return;
    }
    List<String> messages = new ArrayList<>();
    for (Row row :
        errors.orderBy(Stage.BAY, Stage.BYTES).limit(MOST_ERRORS_SHOWN).collectAsList()) {
      messages.add(
          "bay " + row.getString(0) + ": " + new String(row.<byte[]>getAs(Stage.BYTES), UTF_8));
    }
    throw new MeadowmarkException(
        String.join(" | ", messages)
            + (count > messages.size()
                ? " (and " + (count - messages.size()) + " more errors)"
                : ""));
  }

  private Dataset<Row> measure(Dataset<Row> parts, List<Row> largestFirst) {
    List<Tuple2<String, Integer>> order =
        largestFirst.stream().map(row -> new Tuple2<>(row.getString(0), row.getInt(1))).toList();
    SurveySpec spec = survey;
    JavaRDD<Row> evidence =
        parts
            .toJavaRDD()
            .mapToPair(row -> new Tuple2<>(new Tuple2<>(row.getString(0), row.getInt(2)), row))
            .partitionBy(new PartPlaces(order))
            .values()
            .map(
                row ->
                    Stage.row(
                        row.getString(0),
                        Stage.EVIDENCE,
                        row.getInt(2),
                        row.getLong(3),
                        RowBytes.read(PartInput.class, row.getAs(Stage.BYTES))
                            .measure(spec)
                            .toBytes()));
    return spark.createDataset(evidence.rdd(), Stage.encoder());
  }
}
