package org.meadowmark.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.cluster.SharedSession.SPARK;
import static org.meadowmark.cluster.SmallSurvey.BED;
import static org.meadowmark.cluster.SmallSurvey.SCAR;
import static org.meadowmark.cluster.SmallSurvey.UTM;
import static org.meadowmark.cluster.SmallSurvey.wkb;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.io.ParseException;
import org.meadowmark.cluster.SharedSession.Said;

/** What is wrong with layers is said, nothing is dropped silently, and nothing is left behind. */
class BadInputTest {
  @TempDir Path folder;

  private Path output;

  @BeforeEach
  void survey() throws IOException {
    output = folder.resolve("output");
    SmallSurvey.file(folder);
  }

  private void layer(String name, String crs, String... geometries) throws ParseException {
    SmallSurvey.layer(folder, name, crs, geometries);
  }

  private Said assess(Object... more) {
    List<Object> all = new ArrayList<>(List.of("assess", folder, "--output", output));
    all.addAll(List.of(more));
    return SharedSession.run(all.toArray());
  }

  private void assertNothingLeft() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .isSubsetOf(
              "survey.toml",
              "scars.parquet",
              ".scars.parquet.crc",
              "beds.parquet",
              ".beds.parquet.crc");
    }
  }

  @Test
  void aLayerThatIsMissingIsNamed() throws Exception {
    layer("scars", UTM, SCAR);
    Said said = assess();
    assertThat(said.code()).isEqualTo(3);
    assertThat(said.err()).contains("beds.parquet").contains("does not exist");
    assertNothingLeft();
  }

  @Test
  void parquetWithoutGeometryIsRefused() throws Exception {
    layer("scars", UTM, SCAR);
    RawGeoParquet.writePlain(
        folder.resolve("beds.parquet"),
        List.of(new RawGeoParquet.Plain("north", wkb(BED))),
        Optional.empty());
    Said said = assess();
    assertThat(said.code()).isEqualTo(3);
    assertThat(said.err()).contains("beds.parquet").contains("without the metadata of GeoParquet");
    assertNothingLeft();
  }

  @Test
  void aSystemWithoutACodeIsRefused() throws Exception {
    layer("scars", UTM, SCAR);
    layer("beds", "{\"type\":\"ProjectedCRS\",\"name\":\"Our own\"}", BED);
    Said said = assess();
    assertThat(said.code()).isEqualTo(3);
    assertThat(said.err()).contains("'Our own', which carries no code").contains("EPSG:n");
  }

  @Test
  void featuresWithoutABayAreRefused() throws Exception {
    layer("scars", UTM, SCAR, SCAR);
    layer("beds", UTM, BED);
    Said said = assess("--bay-column", "bay");
    assertThat(said.code()).isEqualTo(3);
    assertThat(said.err()).contains("scars.parquet: scars: 1 feature(s) have no value in 'bay'");
    Said other = assess("--bay-column", "county");
    assertThat(other.code()).isEqualTo(3);
    assertThat(other.err()).contains("has no column 'county'").contains("it has: bay");
    assertNothingLeft();
  }

  @Test
  void anErrorOnAWorkerEndsTheRunWithTheBay() throws Exception {
    layer("scars", UTM, SCAR);
    layer("beds", UTM, SCAR);
    Said said = assess();
    assertThat(said.code()).as(said.err()).isEqualTo(3);
    assertThat(said.err()).contains("bay Small: ").contains("beds.parquet: beds: ");
    assertNothingLeft();
  }

  @Test
  void aGeometryThatCannotBeReadIsAFindingAndTheRestIsAssessed() throws Exception {
    layer("beds", UTM, BED);
    RawGeoParquet.write(
        folder.resolve("scars.parquet"),
        List.of(
            new RawGeoParquet.Feature("a", 1, wkb(SCAR)),
            new RawGeoParquet.Feature("b", 2, new byte[] {1, 2, 0, 0, 0, 9}),
            new RawGeoParquet.Feature("c", 3, null)),
        RawGeoParquet.geo(UTM));
    Said said = assess();
    assertThat(said.code()).as(said.err()).isZero();
    assertThat(said.out()).contains("1 scars in 1 beds");
    List<Row> findings =
        SPARK
            .read()
            .parquet(output.resolve("findings.parquet").toString())
            .filter("treatment = 'skipped'")
            .orderBy("feature_id")
            .collectAsList();
    assertThat(findings)
        .extracting(row -> row.getAs("feature_id") + " " + row.getAs("code"))
        .containsExactly("b unreadable_feature", "c null_geometry");
    List<Row> counts =
        SPARK
            .read()
            .parquet(output.resolve("layers.parquet").toString())
            .filter("role = 'scars'")
            .selectExpr("read_count", "used_count", "skipped_count")
            .collectAsList();
    assertThat(counts).containsExactly(RowFactory.create(3L, 1L, 2L));
  }

  @Test
  void anOutputThatIsThereIsRefusedBeforeAnythingIsRead() throws Exception {
    Files.createDirectory(output);
    Said said = assess();
    assertThat(said.code()).isEqualTo(4);
    assertThat(said.err()).contains("already exists").contains("--overwrite");
    Said foreign = assess("--overwrite");
    assertThat(foreign.code()).isEqualTo(4);
    assertThat(foreign.err()).contains("has no run-record.json of an earlier run");
  }
}
