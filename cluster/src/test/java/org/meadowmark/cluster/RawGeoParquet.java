package org.meadowmark.cluster;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.example.data.simple.SimpleGroup;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.example.ExampleParquetWriter;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.MessageTypeParser;

/**
 * Small files written without Spark: with any metadata of GeoParquet, and with bytes that no writer
 * of GeoParquet would write.
 */
final class RawGeoParquet {
  private static final MessageType OURS =
      MessageTypeParser.parseMessageType(
          "message layer {"
              + " required binary meadowmark_feature_id (UTF8);"
              + " required int64 meadowmark_feature_order;"
              + " optional binary geometry; }");
  private static final MessageType OTHERS =
      MessageTypeParser.parseMessageType(
          "message layer { optional binary bay (UTF8); optional binary geometry; }");

  private RawGeoParquet() {}

  /** A feature of a converted layer: id, place, and bytes or null. */
  record Feature(String id, long order, byte[] geometry) {}

  /** A feature of a layer of another program: bay or null, and bytes. */
  record Plain(String bay, byte[] geometry) {}

  /** Metadata with a reference system, PROJJSON. */
  static String geo(String crs) {
    return "{\"version\":\"1.1.0\",\"primary_column\":\"geometry\",\"columns\":{\"geometry\":"
        + "{\"encoding\":\"WKB\",\"geometry_types\":[],\"crs\":"
        + crs
        + "}}}";
  }

  static void write(Path file, List<Feature> features, String geo) {
    write(file, OURS, features.stream().map(RawGeoParquet::group).toList(), Optional.of(geo));
  }

  /** A layer of another program; it is plain Parquet where there is no metadata. */
  static void writePlain(Path file, List<Plain> features, Optional<String> geo) {
    write(file, OTHERS, features.stream().map(RawGeoParquet::group).toList(), geo);
  }

  private static Group group(Feature feature) {
    Group group = new SimpleGroup(OURS);
    group.add(0, feature.id());
    group.add(1, feature.order());
    if (feature.geometry() != null) {
      group.add(2, Binary.fromConstantByteArray(feature.geometry()));
    }
    return group;
  }

  private static Group group(Plain feature) {
    Group group = new SimpleGroup(OTHERS);
    if (feature.bay() != null) {
      group.add(0, feature.bay());
    }
    group.add(1, Binary.fromConstantByteArray(feature.geometry()));
    return group;
  }

  private static void write(
      Path file, MessageType schema, List<Group> groups, Optional<String> geo) {
    try (ParquetWriter<Group> writer =
        ExampleParquetWriter.builder(new org.apache.hadoop.fs.Path(file.toUri()))
            .withType(schema)
            .withExtraMetaData(geo.map(text -> Map.of("geo", text)).orElse(Map.of()))
            .build()) {
      for (Group group : groups) {
        writer.write(group);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
