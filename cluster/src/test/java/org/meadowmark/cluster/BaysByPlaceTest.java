package org.meadowmark.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.cluster.SharedSession.SPARK;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.cluster.RawGeoParquet.Plain;
import org.meadowmark.cluster.SharedSession.Said;

/**
 * Bays as polygons in longitude and latitude, layers on a grid. The border between two of them is
 * the meridian 81° W, which is easting 500,000 m in zone 17 of UTM.
 */
class BaysByPlaceTest {
  private static final String CRS84 =
      "{\"name\":\"lonlat\",\"id\":{\"authority\":\"OGC\",\"code\":\"CRS84\"}}";
  private static final String WEST =
      "POLYGON ((-81.01 27.11, -81 27.11, -81 27.13, -81.01 27.13, -81.01 27.11))";
  private static final String EAST =
      "POLYGON ((-81 27.11, -80.99 27.11, -80.99 27.13, -81 27.13, -81 27.11))";

  @TempDir Path folder;

  @BeforeEach
  void survey() throws Exception {
    SmallSurvey.file(folder);
    SmallSurvey.layer(
        folder,
        "beds",
        SmallSurvey.UTM,
        bed(499_900, 499_990, 3_000_000),
        bed(500_039, 500_100, 3_000_000),
        bed(499_950, 500_200, 3_000_300));
    SmallSurvey.layer(
        folder,
        "scars",
        SmallSurvey.UTM,
        "LINESTRING (499910 3000010, 499920 3000010)",
        "LINESTRING (500050 3000010, 500060 3000010)",
        "LINESTRING (499980 3000310, 500040 3000310)",
        "LINESTRING (510000 3000000, 510010 3000000)",
        "LINESTRING EMPTY");
  }

  private static String bed(int west, int east, int south) {
    return String.format(
        "POLYGON ((%1$d %3$d, %2$d %3$d, %2$d %4$d, %1$d %4$d, %1$d %3$d))",
        west, east, south, south + 50);
  }

  private void bays(Plain... bays) {
    RawGeoParquet.writePlain(
        folder.resolve("bays.parquet"), List.of(bays), Optional.of(RawGeoParquet.geo(CRS84)));
  }

  private Said assess(Object... more) {
    Object[] all = new Object[more.length + 6];
    Object[] first = {
      "assess", folder, "-o", folder.resolve("out"), "--bays", folder.resolve("bays.parquet")
    };
    System.arraycopy(first, 0, all, 0, first.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    return SharedSession.run(all);
  }

  @Test
  void featuresGoToTheBayOfTheirLargestShareAndOthersAreListed() throws Exception {
    bays(
        new Plain("a west", SmallSurvey.wkb(WEST)),
        new Plain("c same as b", SmallSurvey.wkb(EAST)),
        new Plain("b east", SmallSurvey.wkb(EAST)));
    Said said = assess("--bay-name", "bay");
    assertThat(said.code()).as(said.err()).isZero();
    assertThat(said.out())
        .contains("2 bay(s), ")
        .contains(": 3 scars in 3 beds")
        .contains("1 pair(s) of beds of different bays are within the largest crossing distance")
        .contains("2 scar(s) and bed(s) are in no bay");
    assertThat(
            SPARK
                .read()
                .parquet(folder.resolve("out/bays.parquet").toString())
                .filter("bay is not null")
                .selectExpr("bay", "bed_count", "scar_count")
                .collectAsList())
        .extracting(Object::toString)
        .containsExactly("[a west,1,1]", "[b east,2,2]");
    assertThat(
            SPARK
                .read()
                .parquet(folder.resolve("out/features_in_no_bay.parquet").toString())
                .selectExpr("role", "file")
                .collectAsList())
        .extracting(Object::toString)
        .containsExactly("[scars,scars.parquet]", "[scars,scars.parquet]");
    assertThat(Files.readString(folder.resolve("out/run-record.json")))
        .contains("\"near_bed_pairs\" : 1")
        .contains("\"features_in_no_bay\" : 2");
  }

  @Test
  void polygonsThatDoNotNameBaysAreRefused() throws Exception {
    bays(new Plain("a west", SmallSurvey.wkb(WEST)));
    Said column = assess("--bay-name", "county");
    assertThat(column.code()).isEqualTo(3);
    assertThat(column.err()).contains("has no column 'county'").contains("it has: bay");
    assertThat(assess().code()).isEqualTo(2);
    Files.delete(folder.resolve("bays.parquet"));
    bays(new Plain(null, SmallSurvey.wkb(WEST)));
    Said name = assess("--bay-name", "bay");
    assertThat(name.err()).contains("has a polygon without a name in 'bay'");
    Files.delete(folder.resolve("bays.parquet"));
    bays(new Plain("a", SmallSurvey.wkb("LINESTRING (0 0, 1 1)")));
    Said line = assess("--bay-name", "bay");
    assertThat(line.err()).contains("has no polygon for the bay 'a'");
    assertThat(folder.resolve("out")).doesNotExist();
  }
}
