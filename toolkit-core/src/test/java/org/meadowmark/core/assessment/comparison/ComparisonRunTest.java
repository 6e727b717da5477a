package org.meadowmark.core.assessment.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.assessment.comparison.MarkerReader.MarkerFile;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.comparability.Aspect;
import org.meadowmark.core.change.effect.MarkerEffect;
import org.meadowmark.core.change.effect.MarkerEffect.Verdict;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.change.rates.NewScarRate;
import org.meadowmark.core.change.rates.SegmentRate;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.ComparedSurveys;

/** Whole comparisons of invented surveys, from files. */
class ComparisonRunTest {
  private static final double FACTOR = 0.25;

  @TempDir static Path folder;
  private static ComparedPlace place;
  private static Path markers;
  private static ComparedSurveys compared;

  @BeforeAll
  static void compare() throws IOException {
    place = new ComparedPlace(folder);
    place.write(4, 400, 11, 2, FACTOR);
    markers = place.markers(LocalDate.of(2022, 6, 14));
    compared = run(surveys(), Set.of()).compare();
  }

  private static List<SurveyDefinition> surveys() {
    List<SurveyDefinition> surveys = new ArrayList<>();
    for (int number = 0; number <= 4; number++) {
      surveys.add(ComparedPlace.read(place.survey(number)));
    }
    return surveys;
  }

  private static ComparisonRun run(List<SurveyDefinition> surveys, Set<Aspect> despite) {
    return new ComparisonRun(
        surveys,
        ComparedPlace.TABLES,
        despite,
        Optional.of(new MarkerFile(markers, Optional.of("EPSG:32621"))),
        Map.of("--output", "out"),
        "test",
        Progress.NONE);
  }

  @Test
  void findsThePlantedEffectOfTheMarkers() {
    MarkerEffect effect = compared.effect().orElseThrow();

    assertThat(compared.markerFindings()).isEmpty();
    assertThat(effect.rates().orElseThrow().markedSegments()).isEqualTo(6);
    assertThat(effect.verdict()).isEqualTo(Verdict.DROP);
    assertThat(effect.ratioInterval().orElseThrow().holds(FACTOR)).isTrue();
    assertThat(effect.seasonTest()).isPresent();
  }

  @Test
  void newMetresOfSegmentsAreThoseOfTheMatchWithinReach() {
    for (int season = 0; season < compared.pairs().size(); season++) {
      SeasonMatch.Totals later = compared.pairs().get(season).match().laterTotals();
      double metres = 0;
      for (SegmentRate rate : compared.segmentRates()) {
        if (rate.season().equals(compared.pairs().get(season).season())) {
          metres += rate.newMetres();
        }
      }
      // Every scar lies within 200 m of the channel, which reaches 220 m.
      assertThat(metres).isCloseTo(later.unassignedMetres(), within(1e-6 * metres));
    }
  }

  @Test
  void areasAddUpToTheWhole() {
    for (var pair : compared.pairs()) {
      List<NewScarRate> rates =
          compared.newScars().stream().filter(rate -> rate.season().equals(pair.season())).toList();
      NewScarRate whole =
          rates.stream().filter(rate -> rate.scope().equals(Scope.WHOLE)).findFirst().orElseThrow();
      List<NewScarRate> parts =
          rates.stream().filter(rate -> !rate.scope().equals(Scope.WHOLE)).toList();
      assertThat(parts.stream().mapToInt(NewScarRate::newScars).sum()).isEqualTo(whole.newScars());
      assertThat(parts.stream().mapToDouble(NewScarRate::newMetres).sum())
          .isCloseTo(whole.newMetres(), within(1e-6));
      assertThat(parts.stream().mapToDouble(NewScarRate::bedHectares).sum())
          .isCloseTo(whole.bedHectares(), within(1e-6));
      // Twenty beds of 199 m by 190 m.
      assertThat(whole.bedHectares()).isCloseTo(20 * 199 * 190 / 10_000.0, within(1e-6));
      assertThat(
              whole
                  .metresPerHectareYearInterval()
                  .orElseThrow()
                  .holds(whole.metresPerHectareYear().orElseThrow()))
          .isTrue();
    }
  }

  @Test
  void neitherThreadsNorTheOrderOfSurveysChangeAByte() throws Exception {
    Path output = folder.resolve("output");
    List<SurveyDefinition> three = surveys().subList(0, 3);
    String summary = run(three, Set.of()).compareInto(output, false);
    assertThat(Files.readString(output.resolve("summary.txt"))).isEqualTo(summary);
    Map<Path, byte[]> first = files(output);
    assertThat(first).hasSizeGreaterThan(15);
    assertThatThrownBy(() -> run(three, Set.of()).compareInto(output, false))
        .hasMessageContaining("--overwrite");
    List<SurveyDefinition> reversed = new ArrayList<>(three);
    Collections.reverse(reversed);
    ForkJoinPool pool = new ForkJoinPool(1);
    try {
      assertThat(pool.submit(() -> run(reversed, Set.of()).compareInto(output, true)).get())
          .isEqualTo(summary);
    } finally {
      pool.shutdown();
    }
    Map<Path, byte[]> second = files(output);
    assertThat(second.keySet()).isEqualTo(first.keySet());
    Path record = Path.of("run-record.json");
    assertThat(second.get(record)).as("record of another run").isNotEqualTo(first.get(record));
    for (Path file : first.keySet()) {
      if (!file.equals(record)) {
        assertThat(second.get(file)).as(file.toString()).isEqualTo(first.get(file));
      }
    }
  }

  private static Map<Path, byte[]> files(Path output) throws IOException {
    Map<Path, byte[]> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(output)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(output.relativize(file), Files.readAllBytes(file));
      }
    }
    return files;
  }

  @Test
  void refusesSurveysOfDifferentSeasonsUnlessTold() throws IOException {
    Path october = Files.createDirectories(folder.resolve("october"));
    for (String file : List.of("scars.csv", "beds.csv", "channels.csv", "areas.csv")) {
      Files.copy(place.survey(1).resolve(file), october.resolve(file));
    }
    Files.writeString(
        october.resolve("survey.toml"), ComparedPlace.toml(LocalDate.of(2021, 10, 2), ""));
    List<SurveyDefinition> two =
        List.of(ComparedPlace.read(place.survey(0)), ComparedPlace.read(october));

    assertThatThrownBy(() -> run(two, Set.of()).compareInto(folder.resolve("refused"), false))
        .isInstanceOf(MeadowmarkException.class)
        .hasMessage(
            "the surveys of 2020-06-14 and 2021-10-02 are not safe to compare by season of the year"
                + " (109 days apart within the year: leaves hide scars in one season and show them in"
                + " another); compare them nevertheless with --despite season-of-year");
    assertThat(folder.resolve("refused")).doesNotExist();
    ComparedSurveys told = run(two, Set.of(Aspect.SEASON_OF_YEAR)).compare();
    assertThat(told.despite()).containsExactly("season-of-year");
    assertThat(told.effect().orElseThrow().verdict()).isEqualTo(Verdict.NOTHING_TO_COMPARE);
  }

  @Test
  void refusesSurveysThatCannotBePutInOrder() {
    SurveyDefinition first = ComparedPlace.read(place.survey(0));

    assertThatThrownBy(() -> run(List.of(first), Set.of()).compare())
        .hasMessage("one survey cannot be compared; name two or more");
    assertThatThrownBy(() -> run(List.of(first, first), Set.of()).compare())
        .hasMessageContaining("has the same date as");
    SurveyDefinition undated =
        new SurveyDefinition(
            "undated", Optional.empty(), Optional.empty(), first.layers(), first.parameters());
    assertThatThrownBy(() -> run(List.of(first, undated), Set.of()).compare())
        .hasMessage("undated: has no date; give 'date' under [survey] in its survey file");
  }

  @Test
  void everyBadRowOfMarkersIsAFinding() throws IOException {
    Path bad = folder.resolve("bad.csv");
    Files.writeString(
        bad,
        """
        segment,x,y,date,device
        long-reach-0005,,,2022-06-14,speed mark
        long-reach-0005,,,2021-06-14,speed mark
        long-reach-9999,,,2022-06-14,speed mark
        long-reach-0006,,,soon,speed mark
        long-reach-0007,,,,speed mark
        ,,,2022-06-14,speed mark
        ,510000,3330000,2022-06-14,speed mark
        long-reach-0008
        """);
    ComparedSurveys result =
        new ComparisonRun(
                surveys().subList(0, 2),
                ComparedPlace.TABLES,
                Set.of(),
                Optional.of(new MarkerFile(bad, Optional.of("EPSG:32621"))),
                Map.of(),
                "test",
                Progress.NONE)
            .compare();

    assertThat(result.marks()).hasSize(1);
    assertThat(result.marks().get(0).placed()).isEqualTo(LocalDate.of(2021, 6, 14));
    assertThat(result.markerFindings())
        .extracting(Finding::message)
        .containsExactlyInAnyOrder(
            bad
                + ": bad: line 3: segment long-reach-0005 is marked by more than one row; the"
                + " earliest day counts",
            bad
                + ": bad: line 4: there is no segment 'long-reach-9999'; take ids from the table"
                + " segments of an assessment of the last survey",
            bad
                + ": bad: line 5: 'soon' is no date; write the day from which the marker stood like"
                + " 2026-06-14",
            bad
                + ": bad: line 6: has no date; write the day from which the marker stood like"
                + " 2026-06-14",
            bad
                + ": bad: line 7: has neither a segment nor a position; give a segment, or columns x"
                + " and y or wkt",
            bad
                + ": bad: line 8: no channel segment lies within 220 m over water; check the position"
                + " and its reference system, or give the segment",
            bad
                + ": bad: 9: line 9 has 1 cells, the header 5; feature left out; correct it in"
                + " the file");
  }

  @Test
  void aFileWithoutDatesOrThatIsNotThereIsRefused() throws IOException {
    Path undated = folder.resolve("undated.csv");
    Files.writeString(undated, "segment,device\nlong-reach-0005,mark\n");
    for (Path file : List.of(undated, folder.resolve("nowhere.csv"))) {
      assertThatThrownBy(
              () ->
                  new ComparisonRun(
                          surveys().subList(0, 2),
                          ComparedPlace.TABLES,
                          Set.of(),
                          Optional.of(new MarkerFile(file, Optional.empty())),
                          Map.of(),
                          "test",
                          Progress.NONE)
                      .compare())
          .isInstanceOf(MeadowmarkException.class)
          .hasMessageContaining(file.toString());
    }
  }
}
