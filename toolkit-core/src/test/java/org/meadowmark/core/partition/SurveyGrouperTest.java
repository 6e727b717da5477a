package org.meadowmark.core.partition;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.InteractionReach;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;

/** Features within reach of each other are in one group, and only these. */
class SurveyGrouperTest {
  private static InteractionReach reach(TestSurvey survey) {
    return new InteractionReach(
        survey.parameters(), TestSurvey.tables(), survey.build().scale());
  }

  private static SurveyGroups groups(TestSurvey survey) {
    return new SurveyGrouper(reach(survey)).group(survey.beds(), survey.scars());
  }

  /** All pairs, by distances of whole geometries. */
  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14})
  void anyTwoWithinReachAreInOneGroup(long seed) {
    TestSurvey survey = ScatteredBeds.of(seed, 4, 30).distances(1.0, 3.0);
    InteractionReach reach = reach(survey);
    SurveyGroups groups = groups(survey);
    List<Bed> beds = survey.beds();
    List<Scar> scars = survey.scars();
    int together = 0;
    for (int i = 0; i < beds.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (beds.get(i).geometry().distance(beds.get(j).geometry()) <= reach.betweenBeds()) {
          assertThat(groups.groupOfBed()[i]).isEqualTo(groups.groupOfBed()[j]);
          together++;
        }
      }
      for (int s = 0; s < scars.size(); s++) {
        if (beds.get(i).geometry().distance(scars.get(s).geometry())
            <= reach.toBeds(scars.get(s))) {
          assertThat(groups.groupOfBed()[i]).isEqualTo(groups.groupOfScar()[s]);
        }
      }
    }
    for (int i = 0; i < scars.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (scars.get(i).geometry().distance(scars.get(j).geometry())
            <= reach.ofScar(scars.get(i)) + reach.ofScar(scars.get(j))) {
          assertThat(groups.groupOfScar()[i]).isEqualTo(groups.groupOfScar()[j]);
        }
      }
    }
    assertThat(together).isPositive();
    assertThat(groups.count()).as("not everything is one group").isGreaterThan(4);
  }

  @Test
  void aChainOfScarsJoinsBeds() {
    TestSurvey survey =
        new TestSurvey()
            .bed("a", TestSurvey.box(0, 0, 10, 10))
            .bed("b", TestSurvey.box(200, 0, 210, 10))
            .bed("c", TestSurvey.box(500, 0, 510, 10))
            .scar("1", "LINESTRING (5 5, 100 5)", 1)
            .scar("2", "LINESTRING (99 5, 205 5)", 1);
    SurveyGroups groups = groups(survey);
    assertThat(groups.groupOfBed()).containsExactly(0, 0, 1);
    assertThat(groups.groupOfScar()).containsExactly(0, 0);
  }

  @Test
  void everyFeatureIsInOnePart() {
    TestSurvey survey = ScatteredBeds.of(21, 6, 30);
    MetricSurvey built = survey.build();
    List<SurveyPart> parts =
        PartPacker.pack(groups(survey), built.beds(), built.scars(), new PartSize(70, 200));
    assertThat(parts.size()).isGreaterThan(2);
    assertThat(parts.stream().flatMapToInt(p -> Arrays.stream(p.beds())).sorted().toArray())
        .hasSize(built.beds().size())
        .doesNotHaveDuplicates();
    assertThat(parts.stream().flatMapToInt(p -> Arrays.stream(p.scars())).sorted().toArray())
        .hasSize(built.scars().size())
        .doesNotHaveDuplicates();
    assertThat(parts)
        .allMatch(part -> part.groups() == 1 || part.scars().length <= 70);
  }
}
