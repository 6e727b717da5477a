package org.meadowmark.core.assessment.comparison;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.change.rates.SegmentRate;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.AssessedSurvey;

class EarlierSurveysTest {
  @TempDir Path folder;

  private static Assessment assessment(SurveyDefinition survey, SurveyDefinition... earlier) {
    return new Assessment(
        survey, List.of(earlier), ComparedPlace.TABLES, Map.of(), "test", Progress.NONE);
  }

  @Test
  void whereNewScarsLieOnScarredGroundTheSegmentSaysSo() {
    ComparedPlace place = new ComparedPlace(folder);
    place.write(1, 600, 5, 9, 1);
    SurveyDefinition first = ComparedPlace.read(place.survey(0));
    SurveyDefinition second = ComparedPlace.read(place.survey(1));
    AssessedSurvey assessed = assessment(second, first).assess();
    Map<String, SegmentRate> compared = new HashMap<>();
    new ComparisonRun(
            List.of(first, second),
            ComparedPlace.TABLES,
            Set.of(),
            Optional.empty(),
            Map.of(),
            "test",
            Progress.NONE)
        .compare()
        .segmentRates()
        .forEach(rate -> compared.put(rate.segment().id(), rate));

    int again = 0;
    for (RankedSegment segment : assessed.ranking().segments()) {
      SegmentRate rate = compared.get(segment.segment().id());
      OptionalDouble share = segment.evidence().reScarredShare();
      assertThat(share.isPresent()).isEqualTo(rate.newMetres() > 0);
      assertThat(share.orElse(0) > 0).isEqualTo(rate.cutAgain() > 0);
      assertThat(segment.evidence().dataGaps()).doesNotContain("one season: re-scarring unknown");
      again += rate.cutAgain();
    }
    assertThat(again).isPositive();
    assertThat(assessed.repairs().scars())
        .anySatisfy(scar -> assertThat(scar.risk().reScarredShare().orElse(0)).isPositive());
  }

  @Test
  void whatIsNotEarlierOrCannotBeComparedIsRefused() {
    ComparedPlace place = new ComparedPlace(folder);
    place.write(1, 20, 5, 9, 1);
    SurveyDefinition first = ComparedPlace.read(place.survey(0));
    SurveyDefinition second = ComparedPlace.read(place.survey(1));

    assertThatThrownBy(() -> assessment(first, second).assess())
        .isInstanceOf(MeadowmarkException.class)
        .hasMessage("Long Reach 2021: is not earlier than Long Reach 2020; give earlier surveys");
    SurveyDefinition inOctober =
        new SurveyDefinition(
            "October",
            Optional.of(LocalDate.of(2019, 10, 14)),
            first.file(),
            first.layers(),
            first.parameters());
    assertThatThrownBy(() -> assessment(first, inOctober).assess())
        .hasMessageContaining("not safe to compare by season of the year")
        .hasMessageEndingWith("leave --earlier away");
  }
}
