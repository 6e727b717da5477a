package org.meadowmark.core.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyFile;
import org.meadowmark.core.write.AssessedSurvey;

/** Channels that are drawn badly, and no channel or scar at all, from files to files. */
class BadChannelsAssessmentTest {
  private static final double WEST = 350_000;
  private static final double SOUTH = 3_070_000;
  private static final String SCAR = "s,0.5," + line(100, 40, 200, 40);
  private static final String MAIN = "m,Main," + line(0, 0, 1_000, 0);

  @TempDir Path folder;

  private static String line(double... ordinates) {
    StringBuilder text = new StringBuilder("\"LINESTRING (");
    for (int i = 0; i < ordinates.length; i += 2) {
      text.append(i == 0 ? "" : ", ")
          .append(
              String.format(
                  Locale.ROOT, "%.2f %.2f", WEST + ordinates[i], SOUTH + ordinates[i + 1]));
    }
    return text.append(")\"").toString();
  }

  private static String box(double left, double low, double right, double high) {
    return line(left, low, right, low, right, high, left, high, left, low)
        .replace("LINESTRING (", "POLYGON ((")
        .replace(")\"", "))\"");
  }

  private String layer(String name, String columns, String attributes, List<String> rows)
      throws IOException {
    Files.writeString(
        folder.resolve(name + ".csv"), columns + "\n" + String.join("\n", rows) + "\n");
    return """
        [layers.%s]
        file = "%s.csv"
        crs = "EPSG:32617"
        wkt_column = "wkt"
        attributes = { %s }

        """
        .formatted(name, name, attributes);
  }

  private Assessment assessment(List<String> scars, List<String> channels, List<String> land)
      throws IOException {
    String survey =
        layer("beds", "id,wkt", "id = \"id\"", List.of("b," + box(0, 10, 1_000, 100)))
            + layer("scars", "id,width,wkt", "id = \"id\", width = \"width\"", scars);
    if (!channels.isEmpty()) {
      survey += layer("channels", "id,name,wkt", "id = \"id\", name = \"name\"", channels);
    }
    if (!land.isEmpty()) {
      survey += layer("barriers", "id,wkt", "id = \"id\"", land);
    }
    Path file =
        Files.writeString(
            folder.resolve("survey.toml"),
            survey
                + """
                [parameters]
                analysis_crs = "EPSG:32617"
                ground_scale = false
                uncertainty_draws = 0
                """);
    return new Assessment(
        SurveyFile.read(file, ParametersTable.bundled(), ReferenceTablesReader.bundled()),
        ReferenceTablesReader.bundled(),
        Map.of(),
        "test",
        Progress.NONE);
  }

  private AssessedSurvey assess(String... channels) throws IOException {
    return assessment(List.of(SCAR), Arrays.asList(channels), List.of()).assess();
  }

  private static List<Finding> found(AssessedSurvey assessed, FindingCode code) {
    return assessed.findings().stream().filter(f -> f.code() == code).toList();
  }

  private static double segmentMetres(AssessedSurvey assessed) {
    return assessed.ranking().segments().stream()
        .mapToDouble(s -> s.segment().lengthMetres())
        .sum();
  }

  private static LayerCount channelCount(AssessedSurvey assessed) {
    return assessed.counts().stream()
        .filter(c -> c.role() == LayerRole.CHANNELS)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void channelsThatCrossWithoutANodeAreNodedAndListed() throws IOException {
    AssessedSurvey assessed =
        assess(MAIN, "z,Zigzag," + line(250, -50, 250, 50, 650, 50, 650, -50));
    List<Finding> crossings = found(assessed, FindingCode.CHANNEL_CROSSING);
    assertThat(crossings).hasSize(1);
    assertThat(crossings.get(0).message())
        .contains("channels: z:")
        .contains("crosses channel m without a node in 2 places");
    assertThat(segmentMetres(assessed)).isCloseTo(1_000 + 600, within(1e-6));
    // Main is cut at 250 and 650: 2 or 3 pieces, 4, and 3 or 4.
    assertThat(assessed.ranking().segments().stream().map(RankedSegment::segment))
        .filteredOn(s -> s.channel().equals("Main"))
        .anyMatch(s -> s.geometry().getEnvelopeInternal().getMaxX() == WEST + 250)
        .anyMatch(s -> s.geometry().getEnvelopeInternal().getMinX() == WEST + 650);
    assertThat(channelCount(assessed).repaired()).isEqualTo(1);
    assertThat(assessed.ranking().attributedMetres()).isCloseTo(100, within(1e-9));
  }

  @Test
  void channelsThatMeetAtANodeAreNoFinding() throws IOException {
    AssessedSurvey assessed =
        assess(
            MAIN,
            "t,Side," + line(300, 0, 300, -400),
            "v1,Forked," + line(0, -500, 100, -400, 200, -500),
            "v2,Other," + line(0, -300, 100, -400, 200, -300));
    assertThat(found(assessed, FindingCode.CHANNEL_CROSSING)).isEmpty();
    assertThat(found(assessed, FindingCode.CHANNEL_DUPLICATE)).isEmpty();
  }

  @Test
  void loopsAreKeptAndListed() throws IOException {
    AssessedSurvey assessed =
        assess(
            MAIN,
            "ring,Ring," + line(0, -500, 200, -500, 200, -300, 0, -300, 0, -500),
            "eight,Eight," + line(400, -500, 600, -300, 600, -500, 400, -300));
    assertThat(found(assessed, FindingCode.CHANNEL_LOOP))
        .extracting(f -> f.where().featureId())
        .containsExactly("ring");
    assertThat(found(assessed, FindingCode.SELF_CROSSING))
        .extracting(Finding::message)
        .singleElement()
        .asString()
        .contains("channels: eight:")
        .contains("cut where it crosses");
    assertThat(segmentMetres(assessed))
        .isCloseTo(1_000 + 800 + 200 + 400 * Math.sqrt(2), within(1e-6));
  }

  @Test
  void linesAndStretchesDrawnTwiceAreUsedOnce() throws IOException {
    AssessedSurvey assessed =
        assess(
            MAIN,
            "m2,Main," + line(1_000, 0, 0, 0),
            "n,Half," + line(800, 0, 1_000, 0, 1_000, -300));
    List<Finding> duplicates = found(assessed, FindingCode.CHANNEL_DUPLICATE);
    assertThat(duplicates)
        .extracting(f -> f.where().featureId() + " " + f.treatment())
        .containsExactly("m2 SKIPPED", "n REPAIRED");
    assertThat(duplicates.get(1).problem()).contains("runs over channel m for 200 m");
    assertThat(segmentMetres(assessed)).isCloseTo(1_000 + 300, within(1e-6));
    assertThat(channelCount(assessed).skipped()).isEqualTo(1);
  }

  @Test
  void piecesWithoutLengthAreLeftOutAndListed() throws IOException {
    AssessedSurvey assessed =
        assess(
            MAIN,
            "dot,Main," + line(300, 0, 300, 0),
            "part,Side,"
                + "\"MULTILINESTRING ((%1$s %2$s, %1$s %2$s), (%1$s %2$s, %1$s %3$s))\""
                    .formatted(WEST + 500, SOUTH, SOUTH - 200));
    assertThat(found(assessed, FindingCode.ZERO_LENGTH))
        .extracting(f -> f.where().featureId() + " " + f.treatment())
        .containsExactly("dot SKIPPED", "part REPAIRED");
    assertThat(segmentMetres(assessed)).isCloseTo(1_200, within(1e-6));
  }

  @Test
  void aChannelThroughLandIsNamedWithItsMetresOnLand() throws IOException {
    AssessedSurvey assessed =
        assessment(
                List.of(SCAR),
                List.of(MAIN, "w,Way," + line(0, -200, 500, -200)),
                List.of(
                    "i1," + box(400, -20, 450, 5),
                    "i2," + box(440, -20, 470, 5),
                    "i3," + box(0, -300, 500, -150)))
            .assess();
    List<Finding> onLand = found(assessed, FindingCode.CHANNEL_ON_LAND);
    assertThat(onLand)
        .extracting(Finding::message)
        .containsExactly(
            "channels.csv: channels: m: 'Main' runs over land for 70 m; kept; correct the"
                + " channel or the barriers if it is no channel there",
            "channels.csv: channels: w: 'Way' runs over land for 500 m; kept; correct the"
                + " channel or the barriers if it is no channel there");
    assertThat(onLand).allMatch(f -> f.level() == Finding.Level.WARNING);
    assertThat(segmentMetres(assessed)).isCloseTo(1_500, within(1e-6));
    assertThat(assessed.ranking().attributedMetres()).isCloseTo(100, within(1e-9));
  }

  @Test
  void withoutChannelsNothingIsRankedAndThatIsListed() throws IOException {
    Assessment assessment = assessment(List.of(SCAR), List.of(), List.of());
    AssessedSurvey assessed = assessment.assess();
    assertThat(found(assessed, FindingCode.NO_FEATURES))
        .extracting(Finding::problem)
        .containsExactly("no layer of channels is given");
    assertThat(assessed.ranking().segments()).isEmpty();
    assertThat(assessed.ranking().outOfReachMetres()).isCloseTo(100, within(1e-9));
    assertThat(assessment.assessInto(folder.resolve("out"), false)).isNotEmpty();
  }

  @Test
  void withoutScarsEverySegmentHasNoneAndNoneIsHot() throws IOException {
    Assessment assessment = assessment(List.of(), List.of(MAIN), List.of());
    AssessedSurvey assessed = assessment.assess();
    assertThat(found(assessed, FindingCode.NO_FEATURES))
        .extracting(f -> f.role() + " " + f.level())
        .containsExactly("SCARS WARNING");
    assertThat(assessed.ranking().segments())
        .hasSize(10)
        .allSatisfy(
            s -> {
              assertThat(s.scarLengthMetres()).isZero();
              assertThat(s.statistics().hotSpot()).isFalse();
              assertThat(s.statistics().pValue()).isEmpty();
              assertThat(s.statistics().hotSpotRemark()).isNotEmpty();
            });
    assertThat(assessment.assessInto(folder.resolve("out"), false)).isNotEmpty();
    String table = Files.readString(folder.resolve("out/tables/segments.csv"));
    assertThat(table.lines().collect(Collectors.toList())).hasSize(11);
    assertThat(table).doesNotContain("NaN");
  }
}
