package org.meadowmark.cluster.geoparquet;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.DecimalType;
import org.apache.spark.sql.types.StructField;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.read.CrsNames;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.survey.LayerSource;

/**
 * A layer in GeoParquet: a file, or a folder of files with the same columns.
 *
 * <p>The rows are read as plain Parquet and their geometries decoded one by one, so that one that
 * cannot be read is a finding and not the end of the run.
 *
 * @param source the layer as the survey names it
 * @param name name of the file or folder without its ending
 * @param rows its rows
 * @param geometryColumn column with the geometry, well-known binary
 * @param attributes attributes in order; columns of other kinds are left out
 * @param leftOut columns that are left out because no attribute is of their kind
 * @param crs reference system, where the file has one
 */
public record GeoParquetLayer(
    LayerSource source,
    String name,
    Dataset<Row> rows,
    String geometryColumn,
    List<String> attributes,
    List<String> leftOut,
    Optional<CrsText> crs) {
  private static final String BOX = "bbox";
  private static final String GEO = "geo";
  private static final String CRS = "crs";
  private static final ObjectMapper JSON = new ObjectMapper();

  /**
   * Opens a layer; of its rows nothing is read yet.
   *
   * @throws org.meadowmark.core.model.SurveyInputException if it does not exist, is no GeoParquet,
   *     or is in a reference system without a code
   */
  public static GeoParquetLayer open(SparkSession spark, LayerSource source) {
    String place = place(source);
    String name = name(place);
    LayerProblems problems = new LayerProblems(source, name);
    Configuration configuration = spark.sessionState().newHadoopConf();
    refuseMissing(place, configuration, problems);
    List<Row> files;
    Dataset<Row> rows;
    try {
      files = spark.read().format("geoparquet.metadata").load(place).collectAsList();
      rows = spark.read().parquet(place);
    } catch (Exception e) { // Spark declares none of what it throws.
      throw problems.refused(
          "cannot be read as GeoParquet (" + LayerProblems.detail(rootCause(e)) + ")",
          "get a whole copy, or convert the layer again",
          e);
    }
    String geometry = geometryColumn(files, problems);
    Optional<CrsText> crs = crs(files, geometry, source, configuration, problems);
    List<String> attributes = new ArrayList<>();
    List<String> leftOut = new ArrayList<>();
    for (StructField field : rows.schema().fields()) {
      if (field.name().equals(geometry) || isOurs(field.name())) {
        continue;
      }
      if (isAttribute(field.dataType())) {
        attributes.add(field.name());
      } else if (!field.name().equals(BOX)) {
        leftOut.add(field.name());
      }
    }
    return new GeoParquetLayer(
        source, name, rows, geometry, List.copyOf(attributes), List.copyOf(leftOut), crs);
  }

  private static boolean isOurs(String column) {
    return column.equals(GeoParquetColumns.FEATURE_ID)
        || column.equals(GeoParquetColumns.FEATURE_ORDER);
  }

  private static boolean isAttribute(DataType type) {
    return type instanceof DecimalType
        || List.of(
                DataTypes.StringType,
                DataTypes.ByteType,
                DataTypes.ShortType,
                DataTypes.IntegerType,
                DataTypes.LongType,
                DataTypes.FloatType,
                DataTypes.DoubleType,
                DataTypes.BooleanType,
                DataTypes.DateType,
                DataTypes.TimestampType,
                DataTypes.TimestampNTZType)
            .contains(type);
  }

  /** Where the layer is: a file of this machine, or an address such as hdfs://… or s3a://…. */
  static String place(LayerSource source) {
    return source.fileLabel().matches("[a-z][a-z0-9+.-]+://.*")
        ? source.fileLabel()
        : source.file().toAbsolutePath().normalize().toUri().toString();
  }

  private static String name(String place) {
    String last = new Path(place).getName();
    int dot = last.lastIndexOf('.');
    return dot <= 0 ? last : last.substring(0, dot);
  }

  private static void refuseMissing(
      String place, Configuration configuration, LayerProblems problems) {
    try {
      Path path = new Path(place);
      if (!path.getFileSystem(configuration).exists(path)) {
        throw problems.refused("does not exist", "check the name and the folder");
      }
    } catch (IOException e) {
      throw problems.unreadable(e);
    }
  }

  private static Throwable rootCause(Throwable failure) {
    Throwable root = failure;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    return root;
  }

  private static String geometryColumn(List<Row> files, LayerProblems problems) {
    TreeSet<String> columns = new TreeSet<>();
    for (Row file : files) {
      String column = file.getAs("primary_column");
      if (column == null) {
        throw problems.refused(
            "has a file without the metadata of GeoParquet, "
                + new Path(file.<String>getAs("path")).getName(),
            "write the layer as GeoParquet, or convert it again");
      }
      columns.add(column);
    }
    if (columns.size() != 1) {
      throw problems.refused(
          columns.isEmpty()
              ? "is a folder without a Parquet file"
              : "has files with different geometry columns: " + String.join(", ", columns),
          "write the layer as one");
    }
    return columns.first();
  }

  private static Optional<CrsText> crs(
      List<Row> files,
      String geometry,
      LayerSource source,
      Configuration configuration,
      LayerProblems problems) {
    TreeMap<String, Optional<CrsText>> found = new TreeMap<>();
    for (Row file : files) {
      Map<String, Row> columns = file.getJavaMap(file.fieldIndex("columns"));
      String text = columns.get(geometry).getAs(CRS);
      if (text == null) {
        boolean unknown = saysUnknown(file.getAs("path"), geometry, configuration, problems);
        found.put(
            unknown ? "unknown" : "OGC:CRS84",
            unknown ? Optional.empty() : Optional.of(CrsNames.WGS_84));
        continue;
      }
      Optional<CrsText> code = ProjJson.code(text);
      if (code.isEmpty() && source.crs().isEmpty()) {
        throw problems.refused(
            "is in the reference system '" + ProjJson.name(text) + "', which carries no code",
            "state it with crs = \"EPSG:n\" for the layer in the survey file");
      }
      Optional<CrsText> known = code.map(c -> c.label().equals("OGC:CRS84") ? CrsNames.WGS_84 : c);
      found.put(known.map(CrsText::label).orElse("unknown"), known);
    }
    if (found.size() != 1) {
      throw problems.refused(
          "has files in different reference systems: " + String.join(", ", found.keySet()),
          "write the layer in one");
    }
    return found.firstEntry().getValue();
  }

  /** The standard: no {@code crs} means longitude and latitude on WGS 84, a null one none. */
  private static boolean saysUnknown(
      String file, String geometry, Configuration configuration, LayerProblems problems) {
    try (ParquetFileReader reader =
        ParquetFileReader.open(HadoopInputFile.fromPath(new Path(file), configuration))) {
      String geo = reader.getFileMetaData().getKeyValueMetaData().get(GEO);
      JsonNode column = JSON.readTree(geo).path("columns").path(geometry);
      return column.has(CRS) && column.get(CRS).isNull();
    } catch (JsonProcessingException e) {
      throw problems.refused("has metadata that are no JSON", "write the layer again", e);
    } catch (IOException e) {
      throw problems.unreadable(e);
    }
  }
}
