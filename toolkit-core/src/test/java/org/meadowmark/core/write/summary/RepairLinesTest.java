package org.meadowmark.core.write.summary;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.plan.Connected;
import org.meadowmark.core.plan.CurvePoint;
import org.meadowmark.core.plan.RepairChoice;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.choice.BudgetChoice;
import org.meadowmark.core.plan.choice.Proof;
import org.meadowmark.core.write.InventedSurvey;

class RepairLinesTest {
  private static final CurvePoint HALF =
      new CurvePoint(500, 500, 9.5, 9.6, 3, 30, Optional.empty());
  private static final CurvePoint ALL =
      new CurvePoint(1_000, 1_000, 10, 10, 6, 60, Optional.empty());

  private static final BudgetChoice BY_SUM = new BudgetChoice(List.of(), 590, 8, 8.5, Proof.SOLVER);

  @Test
  void nothingToRepairSaysNothing() {
    assertThat(new RepairLines(RepairPlan.NONE).answer()).isEmpty();
  }

  @Test
  void aChoiceThatIsNotProvenComesWithItsBound() {
    assertThat(
            lines(
                new RepairChoice(
                    600,
                    590,
                    8,
                    8.5,
                    Proof.NONE,
                    8,
                    8,
                    BY_SUM,
                    Optional.of(new Connected(0.25, 0.5))),
                List.of(HALF, ALL)))
        .contains("It is not proven that no other choice is worth more; none is worth more than")
        .contains("8.5")
        .contains("a gap of at most 5.88")
        .contains(
            "Filled together they restore 0.25 ha of equivalent connected area; each alone, added"
                + " up, 0.50 ha.")
        .contains("The curve flattens: 500 buys")
        .endsWith("A gap.");
  }

  @Test
  void aProvenChoiceSaysSoAndACurveThatRisesToItsEndDoesNotFlatten() {
    assertThat(
            lines(
                new RepairChoice(600, 590, 8, 8, Proof.PROGRAMME, 8, 8, BY_SUM, Optional.empty()),
                List.of(ALL)))
        .contains("No other choice within it is worth more (own programme).")
        .doesNotContain("flattens");
  }

  private static String lines(RepairChoice choice, List<CurvePoint> curve) {
    return new RepairLines(
            new RepairPlan(
                InventedSurvey.survey().repairs().scars(),
                Optional.of(choice),
                List.of(),
                List.of(),
                curve,
                List.of(),
                List.of("A gap."),
                List.of()))
        .answer();
  }
}
