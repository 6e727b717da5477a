package org.meadowmark.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.model.SiteNotes;
import org.meadowmark.core.plan.layout.PlantingUnit;

class RepairPlannerTest {
  private static final OptionalDouble UNKNOWN = OptionalDouble.empty();

  @Test
  void costIsThatOfUnitsFillAndMonitoring() {
    RepairPlan plan =
        new InventedScars()
            .set("planting_spacing_m", "1")
            .scar("1", 100, 100, 100, 0.3, OptionalDouble.of(0.4), OptionalDouble.of(1))
            .scar("2", 100, 200, 100, 0.3, OptionalDouble.of(0.1), UNKNOWN)
            .scar("3", 100, 300, 100, 0.3, UNKNOWN, UNKNOWN)
            .plan();
    RepairScar deep = plan.scars().get(0);
    assertThat(deep.units()).isEqualTo(101);
    assertThat(deep.rows()).isEqualTo(1);
    // 100 m × 0.3 m × 0.4 m
    assertThat(deep.fillCubicMetres().getAsDouble()).isCloseTo(12, within(1e-9));
    assertThat(deep.cost().total()).isCloseTo(101 * 5 + 12 * 150 + 100, within(1e-9));
    assertThat(deep.survivors().middle()).isCloseTo(101 * 0.38, within(1e-9));
    assertThat(plan.scars().get(1).fillCubicMetres()).hasValue(0);
    assertThat(plan.scars().get(2).fillCubicMetres()).isEmpty();
    assertThat(plan.scars().get(2).unknowns()).contains("excavation and fill");
    assertThat(plan.gaps())
        .anySatisfy(
            note -> assertThat(note).startsWith("Excavation is not known for 1 of 3 scars"));
  }

  @Test
  void benefitWeighsGrassAndConnectivityAndTheChanceOfANewScar() {
    RepairPlan plan =
        new InventedScars()
            .set("grass_weight", "2")
            .set("connectivity_weight", "3")
            .set("recovery_middle_years", "5")
            .scar("1", 100, 100, 10, 0.3, 0.5)
            .connects("1", 0.25)
            .segment("A-1", "1", 500, UNKNOWN)
            .zone("A-1")
            .plan();
    RepairScar scar = plan.scars().get(0);
    assertThat(scar.gain()).contains(new Range(0.25, 0.5, 1));
    // 500 m² of one hectare over five years: a point is hit 0.01 times a year
    assertThat(scar.risk().ratePerYear().getAsDouble()).isCloseTo(0.01, within(1e-12));
    assertThat(scar.risk().chancePerYear().getAsDouble())
        .isCloseTo(1 - Math.exp(-0.01), within(1e-12));
    assertThat(scar.risk().chanceWithMarker().getAsDouble())
        .isCloseTo(1 - Math.exp(-0.005), within(1e-12));
    assertThat(scar.benefit()).isCloseTo((2 * 0.5 + 3 * 0.25) * Math.exp(-0.01 * 2), within(1e-12));
    assertThat(scar.fitness()).isEqualTo(Fitness.PLANT);
  }

  @Test
  void whatIsNotFitIsNotPlanted() {
    InventedScars scars =
        new InventedScars()
            .set("deepest_planting_m", "2")
            .set("repair_budget", "1000000")
            .scar("deep", 100, 100, 10, 0.3, UNKNOWN, OptionalDouble.of(2.5))
            .gain("deep", 1)
            .scar("grazed", 100, 110, 10, 0.3, 1)
            .note("grazed", new SiteNotes(Optional.of(false), Optional.of(true), Optional.empty()))
            .scar("muck", 100, 120, 10, 0.3, 1)
            .note("muck", new SiteNotes(Optional.of(true), Optional.empty(), Optional.empty()))
            .scar("line", 100, 125, 10, 0.3, 1)
            .note("line", new SiteNotes(Optional.empty(), Optional.empty(), Optional.of(true)))
            .scar("outside", -100, 130, 10, 0.3, 1)
            .scar("busy", 100, 140, 10, 0.3, 1)
            .segment("A-1", "busy", 20_000, UNKNOWN)
            .scar("again", 100, 150, 10, 0.3, 1)
            .segment("A-2", "again", 1, OptionalDouble.of(0.6))
            .scar("idle", 100, 160, 10, 0.3, 0)
            .scar("good", 100, 170, 10, 0.3, 1);
    RepairPlan plan = scars.plan();
    assertThat(fitness(plan, "deep")).isEqualTo(Fitness.NOT_FIT);
    assertThat(fitness(plan, "grazed")).isEqualTo(Fitness.PROTECT_FIRST);
    assertThat(fitness(plan, "muck")).isEqualTo(Fitness.PROTECT_FIRST);
    assertThat(reasons(plan, "muck")).containsExactly("bare muck: clear it to firm sand first");
    assertThat(fitness(plan, "line")).isEqualTo(Fitness.PROTECT_FIRST);
    assertThat(reasons(plan, "line"))
        .containsExactly("the same line is scarred again and again: keep boats off it first");
    assertThat(find(plan, "line").unknowns()).doesNotContain("scars of earlier seasons");
    assertThat(fitness(plan, "outside")).isEqualTo(Fitness.NOT_FIT);
    assertThat(fitness(plan, "busy")).isEqualTo(Fitness.PROTECT_FIRST);
    // 2 hits in 5 years: 1 − exp(−0.4)
    assertThat(reasons(plan, "busy")).containsExactly("scarred again with a chance of 33 % a year");
    assertThat(fitness(plan, "again")).isEqualTo(Fitness.PROTECT_FIRST);
    assertThat(fitness(plan, "idle")).isEqualTo(Fitness.NO_GAIN);
    assertThat(plan.seasonByScar()).containsOnlyKeys("good");
    assertThat(find(plan, "good").unknowns())
        .contains("bottom (sand or muck)", "grazing", "water depth and light");
  }

  @Test
  void aNoteOnABedHoldsForItsScarsUnlessTheScarSaysOtherwise() {
    Optional<Boolean> none = Optional.empty();
    RepairPlan plan =
        new InventedScars()
            .bedNote(new SiteNotes(Optional.of(true), Optional.of(false), none))
            .scar("1", 100, 100, 10, 0.3, 1)
            .scar("2", 100, 200, 10, 0.3, 1)
            .note("2", new SiteNotes(Optional.of(false), none, none))
            .plan();
    assertThat(reasons(plan, "1")).containsExactly("bare muck: clear it to firm sand first");
    assertThat(fitness(plan, "2")).isEqualTo(Fitness.PLANT);
    assertThat(find(plan, "2").unknowns()).doesNotContain("bottom (sand or muck)", "grazing");
    assertThat(plan.gaps()).noneSatisfy(gap -> assertThat(gap).contains("look before planting"));
    assertThat(new InventedScars().scar("1", 100, 100, 10, 0.3, 1).plan().gaps())
        .contains(
            "Not noted: bottom (sand or muck) at 1 of 1 scars, grazing at 1 of 1 scars; look before"
                + " planting.");
  }

  @Test
  void noBudgetGivesFiguresAndNoPlan() {
    RepairPlan plan = new InventedScars().scar("1", 100, 100, 10, 0.3, 1).plan();
    assertThat(plan.choice()).isEmpty();
    assertThat(plan.seasons()).isEmpty();
    assertThat(plan.units()).isEmpty();
    assertThat(plan.scars()).hasSize(1);
    assertThat(plan.curve()).hasSize(12);
    assertThat(plan.gaps())
        .anySatisfy(note -> assertThat(note).startsWith("No budget is set"))
        .anySatisfy(note -> assertThat(note).startsWith("Costs are placeholders"));
  }

  @Test
  void aBudgetOfZeroPlansNothingAndSaysSo() {
    RepairPlan plan =
        new InventedScars().set("repair_budget", "0").scar("1", 100, 100, 10, 0.3, 1).plan();
    assertThat(plan.seasons()).isEmpty();
    assertThat(plan.choice().orElseThrow().cost()).isZero();
    assertThat(plan.gaps()).anySatisfy(note -> assertThat(note).startsWith("The budget is 0"));
  }

  @Test
  void aScarWithoutWidthOrForecastIsStated() {
    RepairPlan plan = new InventedScars().scar("1", 100, 100, 10, 0, UNKNOWN, UNKNOWN).plan();
    RepairScar scar = plan.scars().get(0);
    assertThat(scar.units()).isZero();
    assertThat(scar.fitness()).isEqualTo(Fitness.NOT_FIT);
    assertThat(scar.unknowns()).contains("width", "gain in grass");
    assertThat(scar.gainBasis()).isEqualTo("no forecast of recovery");
  }

  @Test
  void nothingToPlanIsAnEmptyPlan() {
    RepairPlan plan = new InventedScars().set("repair_budget", "100").plan();
    assertThat(plan.scars()).isEmpty();
    assertThat(plan.curve()).isEmpty();
    assertThat(plan.seasons()).isEmpty();
  }

  @Test
  void unitsAddUp() {
    RepairPlan plan =
        new InventedScars()
            .set("repair_budget", "1000000")
            .scar("1", 100, 100, 37.3, 1.2, 1)
            .scar("2", -5.2, 300, 20, 0.3, 1)
            .scar("3", 9_000, 300, 80, 0.3, 1)
            .plan();
    assertThat(plan.units())
        .hasSize((int) plan.scars().stream().mapToLong(RepairScar::units).sum());
    assertThat(plan.units())
        .hasSize((int) plan.seasons().stream().mapToLong(RepairSeason::units).sum());
    // half a metre apart, from 0 to 14.8: the first inside the bed is 0.3 m from its edge
    List<PlantingUnit> clipped =
        plan.units().stream().filter(unit -> unit.scarId().equals("2")).toList();
    assertThat(clipped).allSatisfy(unit -> assertThat(unit.geometry().getX()).isNotNegative());
    assertThat(clipped).hasSize(30);
    assertThat(clipped.get(29).number()).isEqualTo(30);
  }

  @Test
  void scarsNearEachOtherShareTheWay() {
    RepairPlan plan =
        new InventedScars()
            .set("planting_unit_cost", "0")
            .set("monitoring_cost", "10")
            .set("mobilisation_cost", "100")
            .set("repair_budget", "120")
            .scar("1", 100, 100, 10, 0.3, 1)
            .scar("2", 100, 300, 10, 0.3, 1)
            .scar("3", 100, 5_000, 10, 0.3, 1.5)
            .plan();
    assertThat(plan.scars()).extracting(RepairScar::siteId).containsExactly("R1", "R1", "R2");
    assertThat(plan.seasonByScar()).containsOnlyKeys("1", "2");
    assertThat(plan.choice().orElseThrow().cost()).isEqualTo(120);
    assertThat(plan.choice().orElseThrow().isProvenBest()).isTrue();
    assertThat(plan.seasons().get(0).siteCount()).isEqualTo(1);
  }

  @Test
  void seasonsHoldWhatTheirBudgetsBuy() {
    InventedScars scars =
        new InventedScars()
            .set("planting_unit_cost", "0")
            .set("monitoring_cost", "10")
            .set("mobilisation_cost", "0")
            .set("repair_budget", "1000")
            .set("repair_season_budget", "25")
            .set("repair_seasons", "2");
    for (int i = 1; i <= 5; i++) {
      scars.scar(Integer.toString(i), 100, 100 * i, 10, 0.3, i);
    }
    RepairPlan plan = scars.plan();
    assertThat(plan.seasons()).hasSize(2);
    assertThat(plan.seasonByScar())
        .containsEntry("5", 1)
        .containsEntry("4", 1)
        .containsEntry("3", 2)
        .containsEntry("2", 2);
    assertThat(plan.notPlaced()).extracting(RepairScar::scarId).containsExactly("1");
    assertThat(plan.seasons()).allSatisfy(s -> assertThat(s.cost()).isLessThanOrEqualTo(25));
    assertThat(plan.seasons().get(0).from()).contains(LocalDate.of(2027, 4, 1));
    assertThat(plan.seasons().get(1).to()).contains(LocalDate.of(2028, 7, 31));
    assertThat(scars.plan(Optional.empty()).seasons().get(0).from()).isEmpty();
  }

  /** The same scar each season, costs that allow one: (1 + r)^−(season − 1) of the first. */
  @Test
  void laterSeasonsCountLessByTheDiscountRate() {
    for (double rate : new double[] {0, 0.03, 0.1}) {
      InventedScars scars =
          new InventedScars()
              .set("discount_rate", Double.toString(rate))
              .set("planting_unit_cost", "0")
              .set("monitoring_cost", "10")
              .set("mobilisation_cost", "0")
              .set("repair_budget", "1000")
              .set("repair_season_budget", "10");
      for (int i = 1; i <= 3; i++) {
        scars.scar(Integer.toString(i), 100, 100 * i, 10, 0.3, 2).connects(Integer.toString(i), 1);
      }
      RepairPlan plan = scars.plan();
      assertThat(plan.seasons()).hasSize(3);
      for (RepairSeason season : plan.seasons()) {
        assertThat(season.benefit())
            .isCloseTo(3 / Math.pow(1 + rate, season.number() - 1), within(1e-9));
      }
      assertThat(plan.choice().orElseThrow().benefit()).isCloseTo(9, within(1e-9));
    }
  }

  @Test
  void unknownDepthSpeaksNeitherForNorAgainst() {
    RepairPlan plan =
        new InventedScars().set("deepest_planting_m", "2").scar("1", 100, 100, 10, 0.3, 1).plan();
    assertThat(fitness(plan, "1")).isEqualTo(Fitness.PLANT);
    assertThat(find(plan, "1").unknowns()).contains("water depth and light");
  }

  @Test
  void windowMayPassTheNewYear() {
    PlantingWindow window = new PlantingWindow(11, 2);
    Optional<LocalDate> survey = Optional.of(LocalDate.of(2026, 6, 1));
    assertThat(window.from(survey, 1)).contains(LocalDate.of(2026, 11, 1));
    assertThat(window.to(survey, 1)).contains(LocalDate.of(2027, 2, 28));
  }

  @Test
  void curveRisesAndFlattens() {
    InventedScars scars = new InventedScars();
    Random random = new Random(5);
    for (int i = 0; i < 200; i++) {
      scars.scar(
          Integer.toString(i),
          9_000 * random.nextDouble(),
          9_000 * random.nextDouble(),
          5 + 50 * random.nextDouble(),
          0.3,
          random.nextDouble());
    }
    RepairPlan plan = scars.plan();
    for (int i = 1; i < plan.curve().size(); i++) {
      CurvePoint point = plan.curve().get(i);
      assertThat(point.benefit()).isGreaterThanOrEqualTo(plan.curve().get(i - 1).benefit());
      assertThat(point.cost()).isLessThanOrEqualTo(point.budget() * (1 + 1e-6));
      assertThat(point.upperBound()).isGreaterThanOrEqualTo(point.benefit());
    }
    assertThat(plan.curve().get(11).scars()).isEqualTo(200);
    double all = plan.curve().get(11).benefit();
    assertThat(plan.flattens().orElseThrow().benefit()).isGreaterThanOrEqualTo(0.9 * all);
    assertThat(plan.flattens().orElseThrow().budget()).isLessThan(plan.curve().get(11).budget());
  }

  private static RepairScar find(RepairPlan plan, String id) {
    return plan.scars().stream().filter(s -> s.scarId().equals(id)).findFirst().orElseThrow();
  }

  private static Fitness fitness(RepairPlan plan, String id) {
    return find(plan, id).fitness();
  }

  private static List<String> reasons(RepairPlan plan, String id) {
    return find(plan, id).reasons();
  }
}
