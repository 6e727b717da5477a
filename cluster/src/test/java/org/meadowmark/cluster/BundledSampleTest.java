package org.meadowmark.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.cluster.SharedSession.SPARK;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.functions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.cluster.SharedSession.Said;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.project.DepthGrid;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.record.FileDigest;

/**
 * The bundled sample on the cluster and on one machine, shuffled, in small parts and beside another
 * bay: the same rows and the same files.
 */
class BundledSampleTest {
  private static final String OTHER = "../west";

  /** When, how long, on what heap, and the options: the run, and not what came of it. */
  private static final List<String> OF_THE_RUN = List.of("run", "options");

  @TempDir static Path folder;

  private static Path output;
  private static Said said;
  private static AssessedSurvey expected;

  @BeforeAll
  static void assess() {
    Path layers = folder.resolve("layers");
    Said converted = SharedSession.run("convert", SharedSession.sample(), "--output", layers);
    assertThat(converted.code()).as(converted.err()).isZero();
    Path shuffled = folder.resolve("shuffled");
    OneMachine.underNamesOfBefore(
        SharedSession.sample(), layers, shuffled, BundledSampleTest::shuffle);
    output = folder.resolve("bays");
    said =
        SharedSession.run(
            "assess",
            OneMachine.QUICK,
            shuffled,
            "--output",
            output,
            "--bay-column=estuary",
            "--part-scars=150",
            "--bay-folders");
    assertThat(said.code()).as(said.err()).isZero();
    expected = OneMachine.assess(SharedSession.sample(), "Quillmere Sound 2026, east");
  }

  /** Scars and beds twice, as two bays; the other has few of them. */
  private static void shuffle(LayerSource layer, Path to) throws IOException {
    if (layer.role() == LayerRole.DEPTH && DepthGrid.isGrid(layer)) {
      for (String ending : List.of(".asc", ".prj")) {
        String name = layer.file().getFileName().toString().replace(".asc", ending);
        Files.copy(layer.file().resolveSibling(name), to.resolveSibling(name));
      }
      return;
    }
    String file = layer.file().toUri().toString();
    Dataset<Row> rows = SPARK.read().format("geoparquet").load(file);
    if (layer.role() == LayerRole.SCARS || layer.role() == LayerRole.BEDS) {
      rows =
          rows.withColumn("estuary", functions.lit("east"))
              .union(
                  rows.filter("meadowmark_feature_order <= 12")
                      .withColumn("estuary", functions.lit(OTHER)))
              .orderBy(functions.rand(7));
    }
    String crs =
        SPARK
            .read()
            .format("geoparquet.metadata")
            .load(file)
            .selectExpr("columns['geometry'].crs")
            .first()
            .getString(0);
    rows.write().format("geoparquet").option("geoparquet.crs", crs).save(to.toString());
  }

  @Test
  void everyTableHasTheRowsOfOneMachine() {
    assertThat(said.out()).contains("2 bay(s)").doesNotContain(", 2 part(s)");
    List<String> compared = new ArrayList<>();
    OneMachine.rows(expected)
        .forEach(
            (table, rows) -> {
              assertThat(OneMachine.written(SPARK, output, table, "east"))
                  .as(table)
                  .containsExactlyElementsOf(rows);
              if (!rows.isEmpty()) {
                compared.add(table);
              }
            });
    assertThat(compared)
        .contains("beds", "areas", "scars", "patches", "gaps", "scarred_grass")
        .contains("segments", "scar_shares", "zones", "zone_segments", "zone_markers")
        .contains("scar_recovery", "bed_loss", "loss_years", "repair_sites", "findings");
  }

  @Test
  void theFolderOfABayIsThatOfOneMachine() throws IOException {
    Path bay = output.resolve("bays/east");
    JsonNode record = json(bay.resolve("run-record.json"));
    List<FileDigest> inputs = new ArrayList<>();
    record
        .get("inputs")
        .forEach(
            input ->
                inputs.add(
                    new FileDigest(
                        input.get("file").asText(),
                        input.get("bytes").asLong(),
                        input.get("sha256").asText())));
    assertThat(inputs)
        .extracting(FileDigest::file)
        .contains(
            "survey.toml",
            "scars.gpkg (rows of east)",
            "channels.geojson (all rows)",
            "depth.asc",
            "depth.prj");
    Path single = Files.createDirectory(folder.resolve("single"));
    OneMachine.write(expected, inputs, single);
    assertThat(files(bay)).isEqualTo(files(single)).contains("results.gpkg", "report.html");
    for (String file : files(single)) {
      if (!file.equals("run-record.json")) {
        assertThat(bay.resolve(file)).as(file).hasSameBinaryContentAs(single.resolve(file));
      }
    }
    assertThat(withoutRun(record)).isEqualTo(withoutRun(json(single.resolve("run-record.json"))));
  }

  @Test
  void theOtherBayHasAFolderTooAndNothingLeavesTheOutput() throws IOException {
    assertThat(names(output.resolve("bays"))).containsExactly("bay..-west", "east");
    assertThat(output.resolve("bays/bay..-west/results.gpkg")).exists();
    assertThat(names(output)).contains("bays", "bays.parquet");
    assertThat(names(folder)).contains("bays").doesNotContain("west");
    assertThat(names(folder)).noneMatch(name -> name.contains("meadowmark"));
    JsonNode bays = json(output.resolve("run-record.json")).get("bays");
    assertThat(bays)
        .extracting(bay -> bay.get("bay").asText() + " in " + bay.get("folder").asText())
        .containsExactlyInAnyOrder("east in bays/east", OTHER + " in bays/bay..-west");
  }

  @Test
  void totalsAreThoseOfBays() {
    List<Row> totals =
        SPARK.read().parquet(output.resolve("bays.parquet").toString()).collectAsList();
    assertThat(totals).extracting(row -> row.getAs("bay")).containsExactly(OTHER, "east", null);
    double grass = totals.get(0).<Double>getAs("grass_area_m2");
    assertThat(totals.get(2).<Double>getAs("grass_area_m2"))
        .isGreaterThan(grass)
        .isEqualTo(grass + totals.get(1).<Double>getAs("grass_area_m2"));
    for (String count : List.of("bed_count", "segment_count", "zone_count")) {
      assertThat(totals.get(2).<Long>getAs(count))
          .as(count)
          .isEqualTo(totals.get(0).<Long>getAs(count) + totals.get(1).<Long>getAs(count));
    }
    assertThat(totals.get(1).<Long>getAs("segment_count"))
        .isEqualTo(expected.ranking().segments().size());
    assertThat(totals.get(1).<Long>getAs("zone_count"))
        .isEqualTo(expected.zones().zones().size())
        .isPositive();
    assertThat(totals.get(1).<Double>getAs("repair_cost")).as("no budget is set").isNull();
  }

  private static JsonNode json(Path file) throws IOException {
    return new ObjectMapper().readTree(file.toFile());
  }

  private static JsonNode withoutRun(JsonNode record) {
    return ((ObjectNode) record.deepCopy()).remove(OF_THE_RUN);
  }

  private static Set<String> names(Path of) throws IOException {
    try (Stream<Path> inside = Files.list(of)) {
      return new TreeSet<>(inside.map(path -> path.getFileName().toString()).toList());
    }
  }

  private static Set<String> files(Path of) throws IOException {
    try (Stream<Path> inside = Files.walk(of)) {
      return new TreeSet<>(
          inside.filter(Files::isRegularFile).map(path -> of.relativize(path).toString()).toList());
    }
  }
}
