package org.meadowmark.core.change.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.Seasons;
import org.meadowmark.core.change.history.Sighting.State;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarMatcher;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.model.Progress;

class ScarHistoriesTest {
  private static final String LINE = "LINESTRING (0 0, 40 0)";
  private static final ScarMatcher MATCHER = new ScarMatcher(Seasons.PARAMETERS);

  private static List<ScarHistory> trace(TestSurvey... surveys) {
    List<SeasonSurvey> seasons = new ArrayList<>();
    for (TestSurvey survey : surveys) {
      seasons.add(
          new SeasonSurvey(
              LocalDate.of(2021 + seasons.size(), 6, 1), survey.build(), new Seasons().accuracy()));
    }
    List<SeasonMatch> matches = new ArrayList<>();
    for (int i = 1; i < seasons.size(); i++) {
      matches.add(MATCHER.match(seasons.get(i - 1), seasons.get(i), Progress.NONE));
    }
    return ScarHistories.trace(seasons, matches, MATCHER);
  }

  private static List<State> states(ScarHistory history) {
    return history.sightings().stream().map(Sighting::state).toList();
  }

  @Test
  void aScarThatPersistsAndHealsHasOneHistory() {
    List<ScarHistory> histories =
        trace(
            new TestSurvey().scar("7", LINE, 0.5),
            new TestSurvey().scar("3", "LINESTRING (0 0.3, 40 0.3)", 0.4),
            new TestSurvey(),
            new TestSurvey());
    assertThat(histories).hasSize(1);
    ScarHistory history = histories.get(0);
    assertThat(history.id()).isEqualTo("2021-06-01:7");
    assertThat(states(history))
        .containsExactly(State.SEEN, State.SEEN, State.NOT_SEEN, State.NOT_SEEN);
    assertThat(history.sightings().get(1).scarId()).contains("3");
    assertThat(history.sightings().get(1).widthMetres()).hasValue(0.4);
    assertThat(history.sightings().get(1).lengthMetres()).hasValue(40);
    assertThat(history.sightings().get(0).change()).isEmpty();
    assertThat(history.sightings().get(1).change()).contains(ChangeClass.PERSISTING);
    assertThat(history.timesSeen()).isEqualTo(2);
    assertThat(history.reappeared()).isFalse();
  }

  @Test
  void aSurveyThatDidNotLookDoesNotCutAHistory() {
    List<ScarHistory> histories =
        trace(
            new TestSurvey().scar("a", LINE, 0.5),
            new TestSurvey().surveyed(TestSurvey.box(100, 100, 200, 200)),
            new TestSurvey().scar("b", LINE, 0.4));
    assertThat(histories).hasSize(1);
    assertThat(states(histories.get(0)))
        .containsExactly(State.SEEN, State.NOT_COMPARABLE, State.SEEN);
    assertThat(histories.get(0).reappeared()).isFalse();
  }

  @Test
  void aScarOnTheSameLineAgainReappears() {
    List<ScarHistory> histories =
        trace(
            new TestSurvey().scar("a", LINE, 0.5),
            new TestSurvey(),
            new TestSurvey().surveyed(TestSurvey.box(100, 100, 200, 200)),
            new TestSurvey().scar("b", LINE, 0.4).scar("c", "LINESTRING (0 9, 40 9)", 0.4));
    assertThat(histories).hasSize(2);
    assertThat(states(histories.get(0)))
        .containsExactly(State.SEEN, State.NOT_SEEN, State.NOT_COMPARABLE, State.SEEN);
    assertThat(histories.get(0).reappeared()).isTrue();
    assertThat(histories.get(1).id()).isEqualTo("2024-06-01:c");
  }

  @Test
  void theLargestPartContinuesAndTheOthersBegin() {
    List<ScarHistory> histories =
        trace(
            new TestSurvey().scar("a", "LINESTRING (0 0, 100 0)", 0.5),
            new TestSurvey()
                .scar("b", "LINESTRING (0 0, 30 0)", 0.5)
                .scar("c", "LINESTRING (40 0, 100 0)", 0.5),
            new TestSurvey().scar("d", "LINESTRING (0 0, 100 0)", 0.5));
    assertThat(histories)
        .extracting(ScarHistory::id)
        .containsExactly("2021-06-01:a", "2022-06-01:b");
    assertThat(histories.get(0).sightings())
        .extracting(s -> s.scarId().orElseThrow())
        .containsExactly("a", "c", "d");
    assertThat(histories.get(1).splitFrom()).contains("2021-06-01:a");
    assertThat(histories.get(1).mergedInto()).contains("2021-06-01:a");
    assertThat(histories.get(1).sightings()).hasSize(1);
    assertThat(histories.get(0).mergedInto()).isEqualTo(Optional.empty());
  }

  @Test
  void everyScarIsInExactlyOneHistoryWhateverTheOrder() {
    List<TestSurvey> surveys = new ArrayList<>();
    List<TestSurvey> shuffled = new ArrayList<>();
    Random random = new Random(5);
    int seen = 0;
    for (int survey = 0; survey < 5; survey++) {
      TestSurvey one = new TestSurvey();
      for (int i = 0; i < 60; i++) {
        if (random.nextInt(3) > 0) {
          double y = 3 * i + 0.3 * random.nextGaussian();
          one.scar(survey + "-" + i, "LINESTRING (0 %s, 40 %s)".formatted(y, y), 0.4);
          seen++;
        }
      }
      surveys.add(one);
      TestSurvey other = new TestSurvey();
      other.scars().addAll(one.scars());
      Collections.shuffle(other.scars(), random);
      shuffled.add(other);
    }
    List<ScarHistory> histories = trace(surveys.toArray(TestSurvey[]::new));
    assertThat(histories.stream().mapToInt(ScarHistory::timesSeen).sum()).isEqualTo(seen);
    assertThat(histories)
        .allMatch(h -> h.sightings().size() == 2_026 - Integer.parseInt(h.id().substring(0, 4)));
    assertThat(trace(shuffled.toArray(TestSurvey[]::new))).isEqualTo(histories);
  }

  @Test
  void matchesOfOtherSurveysAreRefused() {
    SeasonSurvey one = new Seasons().earlierSurvey();
    SeasonSurvey other = new Seasons().laterSurvey();
    assertThatThrownBy(() -> ScarHistories.trace(List.of(one, other), List.of(), MATCHER))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
