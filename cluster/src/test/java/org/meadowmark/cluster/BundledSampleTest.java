package org.meadowmark.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.cluster.SharedSession.SPARK;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.functions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.cluster.SharedSession.Said;

/** The bundled sample on the cluster and on one machine: the same rows, whatever the parts. */
class BundledSampleTest {
  @TempDir static Path folder;

  private static Map<String, List<String>> expected;
  private static Path layers;

  @BeforeAll
  static void convert() {
    layers = folder.resolve("layers");
    Said said = SharedSession.run("convert", SharedSession.sample(), "--output", layers);
    assertThat(said.code()).as(said.err()).isZero();
    expected = OneMachine.measured(SharedSession.sample());
  }

  @Test
  void shuffledInputInSmallPartsBesideAnotherBayGivesTheRowsOfOneMachine() throws IOException {
    Path shuffled = folder.resolve("shuffled");
    Files.createDirectories(shuffled);
    try (Stream<Path> files = Files.list(layers)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Files.copy(file, shuffled.resolve(file.getFileName().toString()));
      }
    }
    for (String role : List.of("channels", "management_areas", "surveyed_area", "barriers")) {
      copy(role, shuffled, SPARK.read().format("geoparquet").load(place(layers, role)));
    }
    for (String role : List.of("scars", "beds")) {
      Dataset<Row> rows = SPARK.read().format("geoparquet").load(place(layers, role));
      Dataset<Row> twice =
          rows.withColumn("estuary", functions.lit("east"))
              .union(
                  rows.filter("meadowmark_feature_order <= 12")
                      .withColumn("estuary", functions.lit("west")))
              .orderBy(functions.rand(7));
      copy(role, shuffled, twice);
    }
    Path output = folder.resolve("bays");
    Said said =
        SharedSession.run(
            "assess",
            OneMachine.QUICK,
            shuffled,
            "--output",
            output,
            "--bay-column=estuary",
            "--part-scars=150");
    assertThat(said.code()).as(said.err()).isZero();
    assertThat(said.out()).contains("2 bay(s)").doesNotContain(", 2 part(s)");
    assertSame(output, "east");
    assertThat(SPARK.read().parquet(output.resolve("findings.parquet").toString()).count())
        .isPositive();

    List<Row> totals =
        SPARK.read().parquet(output.resolve("bays.parquet").toString()).collectAsList();
    assertThat(totals).extracting(row -> row.getAs("bay")).containsExactly("east", "west", null);
    double grass = totals.get(0).<Double>getAs("grass_area_m2");
    assertThat(totals.get(2).<Double>getAs("grass_area_m2"))
        .isGreaterThan(grass)
        .isEqualTo(grass + totals.get(1).<Double>getAs("grass_area_m2"));
    assertThat(totals.get(2).<Long>getAs("bed_count"))
        .isEqualTo(totals.get(0).<Long>getAs("bed_count") + totals.get(1).<Long>getAs("bed_count"));
  }

  private static String place(Path folder, String role) {
    return folder.resolve(role + ".parquet").toString();
  }

  private static void copy(String role, Path target, Dataset<Row> rows) {
    String crs =
        SPARK
            .read()
            .format("geoparquet.metadata")
            .load(place(layers, role))
            .selectExpr("columns['geometry'].crs")
            .first()
            .getString(0);
    rows.write().format("geoparquet").option("geoparquet.crs", crs).save(place(target, role));
  }

  private static void assertSame(Path output, String bay) {
    List<String> compared = new ArrayList<>();
    expected.forEach(
        (table, rows) -> {
          assertThat(OneMachine.written(SPARK, output, table, bay))
              .as(table)
              .containsExactlyElementsOf(rows);
          if (!rows.isEmpty()) {
            compared.add(table);
          }
        });
    assertThat(compared).contains("beds", "areas", "scars", "patches", "gaps", "scarred_grass");
  }
}
