package org.meadowmark.core.change.effect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.meadowmark.core.change.effect.InventedSeasons.Truth;
import org.meadowmark.core.change.effect.MarkerEffect.Verdict;

/** Whether a planted effect is found, and none where there is none. */
class PlantedEffectTest {
  private static final String SEEDS = "meadowmark.marker-effect-seeds";
  private static final Truth HALVED = new Truth(60, 3, 2, 2, 2, 20, 0.5, 0.3);
  private static final Truth NO_EFFECT = new Truth(60, 3, 2, 2, 2, 20, 1, 0.3);

  /** What came out of many seasons of one truth. */
  private static final class Tally {
    private int seeds;
    private int intervals;
    private int held;
    private int drops;
    private int rises;
    private double logRatios;
    private double power;
    private double controls;

    static Tally of(Truth truth, int from, int seeds) {
      Tally tally = new Tally();
      for (int seed = from; seed < from + seeds; seed++) {
        tally.add(new InventedSeasons(truth, seed).effect(InventedSeasons.settings()), truth);
      }
      return tally;
    }

    private void add(MarkerEffect effect, Truth truth) {
      seeds++;
      if (effect.ratioInterval().isPresent()) {
        intervals++;
        held += effect.ratioInterval().get().holds(truth.factor()) ? 1 : 0;
        logRatios += Math.log(effect.ratio().orElseThrow());
      }
      drops += effect.verdict() == Verdict.DROP ? 1 : 0;
      rises += effect.verdict() == Verdict.RISE ? 1 : 0;
      power += effect.power().map(forecast -> forecast.points().get(0).power()).orElse(0.0);
      controls += effect.rates().map(rates -> rates.controlSegments()).orElse(0);
    }
  }

  /** 179 to 198 of 200 hold 99.9 % of a binomial count at 95 % (scipy: check-values.py). */
  @Test
  void intervalsHoldThePlantedEffectAtTheStatedRate() {
    Tally tally = Tally.of(HALVED, 5_000, 200);

    assertThat(tally.intervals).isEqualTo(200);
    assertThat(tally.held).isBetween(179, 198);
    assertThat(tally.drops).isGreaterThan(60);
    assertThat(tally.rises).isZero();
  }

  /** At most 21 of 200 with chance 0.9995 at 5 % (scipy: check-values.py). */
  @Test
  void noEffectIsShownWhereThereIsNone() {
    Tally tally = Tally.of(NO_EFFECT, 5_000, 200);

    assertThat(tally.held).isBetween(179, 198);
    assertThat(tally.drops + tally.rises).isBetween(1, 21);
  }

  @Test
  void forecastOfPowerIsNearWhatIsFound() {
    Truth many = new Truth(120, 6, 2, 2, 2, 20, 0.5, 0);
    Tally tally = Tally.of(many, 5_000, 200);

    assertThat(tally.power / tally.seeds).isCloseTo(tally.drops / 200.0, within(0.12));
  }

  @Test
  @EnabledIfSystemProperty(named = SEEDS, matches = "[0-9]+")
  void writesTheTable() throws IOException {
    int seeds = Integer.getInteger(SEEDS);
    StringBuilder table = new StringBuilder();
    table.append(
        "| marked | segments | seasons before, after | rate | own variation | true change | intervals |"
            + " hold it | mean change | drop shown | rise shown | power forecast |\n"
            + "|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|\n");
    List<Truth> truths =
        List.of(
            NO_EFFECT,
            HALVED,
            new Truth(60, 3, 2, 1, 1, 20, 1, 0),
            new Truth(60, 3, 2, 1, 1, 20, 0.5, 0),
            new Truth(60, 2, 2, 1, 1, 20, 0.5, 0),
            new Truth(60, 3, 2, 1, 1, 5, 0.5, 0),
            new Truth(60, 3, 2, 1, 1, 100, 0.5, 0.3),
            new Truth(120, 6, 2, 2, 2, 20, 1, 0.5),
            new Truth(120, 6, 2, 2, 2, 20, 0.5, 0),
            new Truth(120, 6, 2, 2, 2, 20, 0.25, 0));
    for (Truth truth : truths) {
      Tally tally = Tally.of(truth, 10_001, seeds);
      table.append(
          String.format(
              Locale.ROOT,
              "| %d | %d | %d, %d | %.0f | %.1f | %+.0f %% | %d of %d | %.1f %% | %+.0f %% | %.1f %% |"
                  + " %.1f %% | %.0f %% |%n",
              truth.stretches() * truth.segmentsAStretch(),
              truth.segments(),
              truth.seasonsBefore(),
              truth.seasonsAfter(),
              truth.metresPerHectareYear(),
              truth.excess(),
              100 * (truth.factor() - 1),
              tally.intervals,
              seeds,
              100.0 * tally.held / tally.intervals,
              100 * (Math.exp(tally.logRatios / tally.intervals) - 1),
              100.0 * tally.drops / seeds,
              100.0 * tally.rises / seeds,
              100 * tally.power / seeds));
    }
    Files.writeString(Path.of("target", "marker-effect.md"), table);
  }
}
