package org.meadowmark.core.write.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.plan.CurvePoint;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.InventedSurvey;

class BudgetChartTest {
  @Test
  void nothingToPlantIsSaid() {
    Picture picture = BudgetChart.of(with(RepairPlan.NONE));
    assertThat(((CategoryPlot) picture.chart().getPlot()).getNoDataMessage())
        .startsWith("No scar is fit for planting");
  }

  @Test
  void theCurveIsDrawnFromNothing() {
    XYPlot plot = plot(0);
    assertThat(plot.getDataset().getSeriesCount()).isEqualTo(1);
    assertThat(plot.getDataset().getItemCount(0)).isEqualTo(3);
    assertThat(plot.getDataset().getYValue(0, 2)).isCloseTo(5, within(1e-12));
  }

  @Test
  void aBoundThatIsFarAboveIsDrawnToo() {
    XYPlot plot = plot(1);
    assertThat(String.valueOf(plot.getDataset().getSeriesKey(1))).isEqualTo("bound");
    assertThat(plot.getDataset().getYValue(1, 1)).isCloseTo(4.5, within(1e-12));
  }

  private static XYPlot plot(double above) {
    List<CurvePoint> curve =
        List.of(
            new CurvePoint(100, 90, 3.5, 3.5 + above, 1, 10, Optional.empty()),
            new CurvePoint(200, 200, 5, 5, 2, 20, Optional.empty()));
    RepairPlan plan =
        new RepairPlan(
            List.of(),
            Optional.empty(),
            List.of(),
            List.of(),
            curve,
            List.of(),
            List.of(),
            List.of());
    return BudgetChart.of(with(plan)).chart().getXYPlot();
  }

  private static AssessedSurvey with(RepairPlan plan) {
    AssessedSurvey invented = InventedSurvey.survey();
    return new AssessedSurvey(
        invented.definition(),
        invented.survey(),
        invented.measurement(),
        invented.ranking(),
        invented.zones(),
        invented.recovery(),
        plan,
        invented.findings(),
        invented.counts(),
        invented.references());
  }
}
