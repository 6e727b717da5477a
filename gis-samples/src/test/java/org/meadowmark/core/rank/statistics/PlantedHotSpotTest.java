package org.meadowmark.core.rank.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.meadowmark.core.rank.statistics.PlantedHotSpotStudy.Method;
import org.meadowmark.core.rank.statistics.PlantedHotSpotStudy.Outcome;
import org.meadowmark.samples.EstuarySettings;

/** A small run of the study in {@code docs/hot-spots.md}, on seeds that nothing was chosen on. */
class PlantedHotSpotTest {
  private static final long FIRST_SEED = 1_001;
  private static final Map<String, Method> TOOLKIT =
      Map.of("toolkit", PlantedHotSpotStudy.toolkit(PermutationScheme.TOTAL));

  private static Outcome run(int seeds, int hotSpots) {
    return PlantedHotSpotStudy.run(
            FIRST_SEED, seeds, EstuarySettings.SAMPLE.scars(), hotSpots, TOOLKIT)
        .get("toolkit");
  }

  @Test
  void findsPlantedHotSpotsAndLittleElse() {
    Outcome outcome = run(4, 6);
    assertThat(outcome.spots()).isGreaterThan(20);
    assertThat(outcome.recall()).isGreaterThan(0.35);
    assertThat(outcome.precision()).isGreaterThan(0.55);
    assertThat(outcome.precisionWithBeside()).isGreaterThan(0.85);
    assertThat((double) outcome.spotsFound() / outcome.spots()).isGreaterThan(0.5);
  }

  /** At a rate of 5 % one survey in twenty; two of four would come once in seventy times. */
  @Test
  void findsHardlyAnythingWhereNothingWasPlanted() {
    Outcome outcome = run(4, 0);
    assertThat(outcome.planted()).isZero();
    assertThat(outcome.segments()).isGreaterThan(1_000);
    assertThat(outcome.surveysWithFlags()).isLessThanOrEqualTo(1);
    assertThat(outcome.segmentShare()).isLessThan(0.005);
  }

  /** Writes the tables of the document: takes minutes. */
  @Test
  @EnabledIfSystemProperty(named = "meadowmark.hot-spot-seeds", matches = "[1-9][0-9]*")
  void writesTheTables() throws Exception {
    int seeds = Integer.getInteger("meadowmark.hot-spot-seeds");
    List<String> rows = PlantedHotSpotStudy.tables(FIRST_SEED, seeds);
    Files.write(Path.of("target", "hot-spots.md"), rows);
    assertThat(rows).hasSizeGreaterThan(10);
  }
}
