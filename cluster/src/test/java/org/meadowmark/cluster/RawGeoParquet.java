package org.meadowmark.cluster;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.example.data.simple.SimpleGroup;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.example.ExampleParquetWriter;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.MessageTypeParser;

/** Files with the metadata of GeoParquet and bytes that no writer of GeoParquet would write. */
final class RawGeoParquet {
  private static final MessageType SCHEMA =
      MessageTypeParser.parseMessageType(
          "message layer {"
              + " required binary meadowmark_feature_id (UTF8);"
              + " required int64 meadowmark_feature_order;"
              + " optional binary geometry; }");

  private RawGeoParquet() {}

  /** A feature: id, place, and bytes or null. */
  record Feature(String id, long order, byte[] geometry) {}

  static void write(Path file, List<Feature> features, String geo) {
    try (ParquetWriter<Group> writer =
        ExampleParquetWriter.builder(new org.apache.hadoop.fs.Path(file.toUri()))
            .withType(SCHEMA)
            .withExtraMetaData(Map.of("geo", geo))
            .build()) {
      for (Feature feature : features) {
        Group group = new SimpleGroup(SCHEMA);
        group.add(0, feature.id());
        group.add(1, feature.order());
        if (feature.geometry() != null) {
          group.add(2, Binary.fromConstantByteArray(feature.geometry()));
        }
        writer.write(group);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
