package org.meadowmark.core.partition;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.InteractionReach;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.PartEvidence;
import org.meadowmark.core.measure.PartMeasurer;
import org.meadowmark.core.measure.PartMerger;
import org.meadowmark.core.measure.PartRules;
import org.meadowmark.core.measure.SurveyMeasurer;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.store.DiskRows;
import org.meadowmark.core.store.RowStore;

/** A survey measured part by part is the survey measured in one go. */
class MeasuringInPartsTest {
  private static final PartSize A_GROUP_EACH = new PartSize(1, 1);

  @TempDir private Path folder;

  private static MeasuringInParts.Outcome inParts(TestSurvey survey, PartSize size, RowStore store) {
    return new MeasuringInParts(
            ordered(survey.build()),
            survey.parameters(),
            TestSurvey.tables(),
            size,
            Progress.NONE)
        .measure(store);
  }

  private static Measurement atOnce(TestSurvey survey) {
    return new SurveyMeasurer(
            ordered(survey.build()), survey.parameters(), TestSurvey.tables(), Progress.NONE)
        .measure();
  }

  /** The loader gives features in the order of their ids; the builder of the tests does not. */
  private static MetricSurvey ordered(MetricSurvey survey) {
    return new MetricSurvey(
        survey.gridLabel(),
        survey.gridWkt(),
        survey.scars().stream()
            .sorted((a, b) -> Ids.ORDER.compare(a.id(), b.id()))
            .toList(),
        survey.beds().stream()
            .sorted((a, b) -> Ids.ORDER.compare(a.id(), b.id()))
            .toList(),
        survey.channels(),
        survey.managementAreas(),
        survey.surveyedArea(),
        survey.barriers(),
        survey.depth(),
        survey.scale());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void partsGiveTheWhole(long seed) {
    TestSurvey survey = ScatteredBeds.of(seed, 5, 60);
    MeasuringInParts.Outcome outcome = inParts(survey, A_GROUP_EACH, RowStore.inMemory());
    assertThat(outcome.parts()).isEqualTo(outcome.groups()).isGreaterThan(5);
    SameMeasurement.check(outcome.measurement(), atOnce(survey));
  }

  @Test
  void partsOfSeveralGroupsGiveTheWhole() {
    TestSurvey survey = ScatteredBeds.of(4, 6, 40);
    MeasuringInParts.Outcome outcome =
        inParts(survey, new PartSize(100, 1_000), RowStore.inMemory());
    assertThat(outcome.parts()).isBetween(2, outcome.groups() - 1);
    SameMeasurement.check(outcome.measurement(), atOnce(survey));
  }

  @Test
  void surveyedAreasBarriersAndOtherWaysToMeasureGiveTheWhole() {
    TestSurvey survey =
        ScatteredBeds.of(5, 4, 40)
            .surveyed(TestSurvey.box(-100, -100, 1_290, 100))
            .barrier("LINESTRING (45 -10, 45 70)")
            .barrier(TestSurvey.box(430, 44, 500, 46))
            .scale(
                new GroundScale() {
                  @Override
                  public double lengthFactor(double x, double y) {
                    return 0.9996 + x * 1e-7;
                  }

                  @Override
                  public double areaFactor(double x, double y) {
                    return lengthFactor(x, y) * lengthFactor(x, y);
                  }
                })
            .minimumPatch(2);
    SameMeasurement.check(
        inParts(survey, A_GROUP_EACH, RowStore.inMemory()).measurement(), atOnce(survey));
  }

  @Test
  void withoutDrawsAndAreasPartsGiveTheWhole() {
    TestSurvey survey =
        new TestSurvey()
            .bed("1", TestSurvey.box(0, 0, 30, 30))
            .bed("2", TestSurvey.box(500, 0, 530, 30))
            .bed("10", TestSurvey.box(900, 0, 930, 30))
            .scar("x", "LINESTRING (-5 10, 35 12)", 0.5)
            .scar("y", "LINESTRING (515 -5, 516 35)", 0.5)
            .scar("z", "LINESTRING (100 100, 120 100)", 0.5);
    MeasuringInParts.Outcome outcome = inParts(survey, A_GROUP_EACH, RowStore.inMemory());
    assertThat(outcome.parts()).isEqualTo(4);
    Measurement whole = atOnce(survey);
    assertThat(whole.patches().get(4).nearestDistanceMetres())
        .as("a patch alone in its part has its nearest in another")
        .hasValue(370);
    SameMeasurement.check(outcome.measurement(), whole);
  }

  @Test
  void rowsOnDiskAreTheSameAndAreGoneAfterwards() throws IOException {
    TestSurvey survey = ScatteredBeds.of(6, 4, 40);
    try (DiskRows store = DiskRows.in(folder)) {
      SameMeasurement.check(
          inParts(survey, A_GROUP_EACH, store).measurement(), atOnce(survey));
    }
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).isEmpty();
    }
  }

  @Test
  void partsMayComeInAnyOrderAndFromElsewhere() throws Exception {
    TestSurvey test = ScatteredBeds.of(7, 5, 40);
    MetricSurvey survey = ordered(test.build());
    SurveyGroups groups =
        new SurveyGrouper(
                new InteractionReach(test.parameters(), TestSurvey.tables(), survey.scale()))
            .group(survey.beds(), survey.scars());
    List<SurveyPart> parts =
        new ArrayList<>(PartPacker.pack(groups, survey.beds(), survey.scars(), A_GROUP_EACH));
    Collections.shuffle(parts, new Random(3));
    PartMerger merger =
        new PartMerger(
            survey.managementAreas(),
            survey.scale(),
            test.parameters(),
            TestSurvey.tables(),
            survey.scars().size(),
            groups.tiled(),
            RowStore.inMemory());
    for (SurveyPart part : parts) {
      PartEvidence evidence =
          new PartMeasurer(
                  part.of(survey),
                  test.parameters(),
                  TestSurvey.tables(),
                  PartRules.of(survey.scars().size(), groups.tiled()),
                  Progress.NONE)
              .measure();
      merger.add(sent(evidence));
    }
    SameMeasurement.check(merger.merge(), atOnce(test));
  }

  private static PartEvidence sent(PartEvidence evidence)
      throws IOException, ClassNotFoundException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(evidence);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      return (PartEvidence) in.readObject();
    }
  }
}
