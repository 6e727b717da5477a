package org.meadowmark.core.write.summary;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.write.InventedSurvey;

class SummaryTest {
  @Test
  void readsAsTheGoldenText() throws IOException {
    assertThat(Summary.text(InventedSurvey.survey())).isEqualTo(golden());
  }

  @Test
  void isTheSameInAnyLocaleAndForAnyOrderOfLists() throws IOException {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.forLanguageTag("tr-TR"));
    try {
      Measurement m = InventedSurvey.measurement();
      ChannelRanking r = InventedSurvey.ranking();
      Measurement shuffled =
          new Measurement(
              shuffled(m.scars()),
              m.scarsInBeds(),
              m.beds(),
              shuffled(m.areas()),
              m.patches(),
              shuffled(m.gaps()),
              m.scarredGrass(),
              m.connectivity());
      ChannelRanking ranking =
          new ChannelRanking(
              shuffled(r.segments()),
              r.shares(),
              r.scarLengthMetres(),
              r.attributedMetres(),
              r.outOfReachMetres(),
              r.blockedMetres(),
              r.polygonScarCount());
      assertThat(
              Summary.text(
                  InventedSurvey.with(shuffled, ranking, shuffled(InventedSurvey.findings()))))
          .isEqualTo(golden());
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void staysWithinTheTerminalWithLongNames() {
    String name = "Cooperative seagrass stewardship and shallow-draft management zone ".repeat(2);
    List<AreaMeasure> areas = new ArrayList<>(InventedSurvey.measurement().areas());
    areas.add(
        0,
        InventedSurvey.area(
            "0",
            name + "Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch",
            123_456,
            InventedSurvey.damage(
                9.87654321e9, 8.7654321e9, 9_999_999, 1e9, 7.6543e8, "moderate")));
    assertThat(Summary.lines(InventedSurvey.with(with(areas), InventedSurvey.ranking(), List.of())))
        .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Summary.WIDTH));
  }

  @Test
  void statesThatUnsurveyedGrassIsUnknownAndNeverZero() {
    List<AreaMeasure> areas =
        List.of(
            InventedSurvey.summary(
                Kind.WHOLE_SURVEY, 1, InventedSurvey.damage(16_000, 0, 0, 0, 0, "unknown")));
    String text =
        Summary.text(InventedSurvey.with(with(areas), InventedSurvey.ranking(), List.of()));
    assertThat(text.replaceAll("\\s+", " "))
        .contains(
            "None of the 1.60 ha of mapped bed lies in the surveyed area: its damage is unknown")
        .doesNotContain("Scars take up");
  }

  @Test
  void saysWhatIsMissingWhenThereIsNothing() {
    Measurement empty =
        new Measurement(
            List.of(),
            List.of(),
            List.of(),
            List.of(
                InventedSurvey.summary(
                    Kind.WHOLE_SURVEY, 0, InventedSurvey.damage(0, 0, 0, 0, 0, "unknown"))),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty());
    ChannelRanking none = new ChannelRanking(List.of(), List.of(), 0, 0, 0, 0, 0);
    assertThat(Summary.text(InventedSurvey.with(empty, none, List.of())))
        .contains("No bed was mapped")
        .contains("No channel was given")
        .contains("no scar separates two patches");
  }

  private static Measurement with(List<AreaMeasure> areas) {
    Measurement m = InventedSurvey.measurement();
    return new Measurement(
        m.scars(),
        m.scarsInBeds(),
        m.beds(),
        areas,
        m.patches(),
        m.gaps(),
        m.scarredGrass(),
        m.connectivity());
  }

  private static <T> List<T> shuffled(List<T> list) {
    List<T> copy = new ArrayList<>(list);
    Collections.shuffle(copy, new Random(3));
    return copy;
  }

  private static String golden() throws IOException {
    try (InputStream in = SummaryTest.class.getResourceAsStream("summary.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
