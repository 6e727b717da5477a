package org.meadowmark.cluster.geoparquet;

import java.sql.Date;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SaveMode;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.sedona_sql.UDT.GeometryUDT;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.ResolvedCrs;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.LayerReaders;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.survey.LayerSource;

/**
 * Writes a layer of any format that the toolkit reads as GeoParquet: features as read, nothing
 * checked or repaired, with the id and the place that each had in its file.
 *
 * <p>The layer is read twice: for the types of its attributes, and for the features. Memory holds
 * 50,000 features at a time.
 */
public final class LayerConverter {
  private static final int FEATURES_AT_A_TIME = 50_000;

  private final SparkSession spark;
  private final CrsCatalog catalog = new CrsCatalog();

  /** A converter. */
  public LayerConverter(SparkSession spark) {
    this.spark = spark;
  }

  /**
   * What was converted.
   *
   * @param features features written
   * @param findings features that could not be read, and remarks on the layer
   */
  public record Converted(long features, List<Finding> findings) {}

  /**
   * Converts a layer.
   *
   * @param source the layer
   * @param target folder to write, which must not exist
   * @throws org.meadowmark.core.model.SurveyInputException if the layer cannot be read, or its
   *     reference system is not known or has no code
   */
  public Converted convert(LayerSource source, String target) {
    Types types = new Types();
    LayerReaders.read(source, types);
    Writer writer = new Writer(types, projJson(source, types.header), target);
    LayerReaders.read(source, writer);
    writer.flush(true);
    return new Converted(writer.written, types.findings);
  }

  private String projJson(LayerSource source, LayerHeader header) {
    LayerProblems problems = new LayerProblems(source, header.layer());
    CrsText text =
        source
            .crs()
            .map(CrsText::ofCode)
            .or(header::crs)
            .orElseThrow(
                () ->
                    problems.refused(
                        "the file does not say what coordinate reference system it is in",
                        "state it with crs = \"EPSG:n\" for the layer in the survey file"));
    ResolvedCrs crs =
        catalog.resolve(text, source.role(), FeatureRef.layer(source.fileLabel(), header.layer()));
    if (!crs.label().matches("EPSG:[0-9]+|OGC:CRS84")) {
      throw problems.refused(
          "is in the reference system '" + crs.label() + "', which has no EPSG code",
          "state one that EPSG lists with crs = \"EPSG:n\" for the layer in the survey file");
    }
    return ProjJson.of(crs.crs(), crs.label());
  }

  /** First reading: what types the attributes have. */
  private static final class Types implements FeatureSink {
    private final Map<String, DataType> types = new TreeMap<>();
    private final List<Finding> findings = new ArrayList<>();
    private LayerHeader header;

    @Override
    public void header(LayerHeader read) {
      header = read;
    }

    @Override
    public void feature(SourceFeature feature) {
      feature
          .attributes()
          .forEach((name, value) -> types.merge(name, typeOf(value), Types::common));
    }

    @Override
    public void finding(Finding finding) {
      findings.add(finding);
    }

    DataType of(String attribute) {
      return types.getOrDefault(attribute, DataTypes.StringType);
    }

    private static DataType typeOf(Object value) {
      if (value instanceof Long) {
        return DataTypes.LongType;
      } else if (value instanceof Double) {
        return DataTypes.DoubleType;
      } else if (value instanceof Boolean) {
        return DataTypes.BooleanType;
      } else if (value instanceof LocalDate) {
        return DataTypes.DateType;
      }
      return DataTypes.StringType;
    }

    private static DataType common(DataType one, DataType other) {
      if (one.equals(other)) {
        return one;
      }
      List<DataType> numbers = List.of(DataTypes.LongType, DataTypes.DoubleType);
      return numbers.contains(one) && numbers.contains(other)
          ? DataTypes.DoubleType
          : DataTypes.StringType;
    }
  }

  private final class Writer implements FeatureSink {
    private final Types types;
    private final String projJson;
    private final String target;
    private final List<Row> open = new ArrayList<>();
    private List<String> attributes;
    private StructType schema;
    private long written;

    Writer(Types types, String projJson, String target) {
      this.types = types;
      this.projJson = projJson;
      this.target = target;
    }

    @Override
    public void header(LayerHeader header) {
      attributes = header.attributeNames();
      schema =
          new StructType()
              .add(GeoParquetColumns.FEATURE_ID, DataTypes.StringType, false)
              .add(GeoParquetColumns.FEATURE_ORDER, DataTypes.LongType, false);
      for (String attribute : attributes) {
        schema = schema.add(attribute, types.of(attribute), true);
      }
      schema = schema.add(GeoParquetColumns.GEOMETRY, new GeometryUDT(), true);
    }

    @Override
    public void feature(SourceFeature feature) {
      Object[] cells = new Object[attributes.size() + 3];
      cells[0] = feature.ref().featureId();
      cells[1] = written + open.size() + 1L;
      for (int i = 0; i < attributes.size(); i++) {
        Object value = feature.attributes().get(attributes.get(i));
        cells[i + 2] = value == null ? null : cell(value, types.of(attributes.get(i)));
      }
      cells[cells.length - 1] = feature.geometry().orElse(null);
      open.add(RowFactory.create(cells));
      flush(false);
    }

    @Override
    public void finding(Finding finding) {
      // Known from the first reading.
    }

    void flush(boolean last) {
      if (open.size() < FEATURES_AT_A_TIME && !(last && (written == 0 || !open.isEmpty()))) {
        return;
      }
      spark
          .createDataFrame(new ArrayList<>(open), schema)
          .coalesce(1)
          .write()
          .format("geoparquet")
          .option("geoparquet.crs", projJson)
          .mode(written == 0 ? SaveMode.ErrorIfExists : SaveMode.Append)
          .save(target);
      written += open.size();
      open.clear();
    }

    private static Object cell(Object value, DataType type) {
      if (type.equals(DataTypes.StringType)) {
        return value.toString();
      }
      if (type.equals(DataTypes.DoubleType)) {
        return ((Number) value).doubleValue();
      }
      return value instanceof LocalDate date ? Date.valueOf(date) : value;
    }
  }
}
