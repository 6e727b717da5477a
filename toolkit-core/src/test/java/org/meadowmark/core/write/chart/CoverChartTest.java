package org.meadowmark.core.write.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.InventedSurvey;

class CoverChartTest {
  @Test
  void showsBestAgainstWorstFirst() throws Exception {
    XYPlot plot = plot(curve(false), "proven");
    XYDataset data = plot.getDataset();
    assertThat(data.getSeriesCount()).isEqualTo(2);
    assertThat(data.getItemCount(0)).isEqualTo(11);
    assertThat(data.getYValue(0, 10)).isEqualTo(Math.sqrt(10) * 1000);
    assertThat(data.getYValue(1, 10)).isEqualTo(Math.sqrt(10) * 700);
    assertThat(labels(plot)).hasSize(2);
  }

  @Test
  void showsTheBoundWhereAPointIsNotProven() throws Exception {
    XYPlot plot = plot(curve(true), "unproven");
    assertThat(plot.getDataset().getSeriesCount()).isEqualTo(3);
    assertThat(plot.getDataset().getYValue(2, 10)).isEqualTo(Math.sqrt(10) * 1100);
    assertThat(labels(plot)).anyMatch(text -> text.contains("at most"));
  }

  private static List<String> labels(XYPlot plot) {
    List<String> labels = new ArrayList<>();
    for (Object each : plot.getAnnotations()) {
      labels.add(((XYTextAnnotation) each).getText());
    }
    return labels;
  }

  private static List<CoverPoint> curve(boolean unproven) {
    List<CoverPoint> curve = new ArrayList<>();
    for (int i = 1; i <= 10; i++) {
      double covered = Math.sqrt(i) * 1000;
      double bound = unproven && i > 6 ? Math.sqrt(i) * 1100 : covered;
      curve.add(new CoverPoint(400 * i, 400 * i - 20, covered, bound, Math.sqrt(i) * 700));
    }
    return curve;
  }

  private static XYPlot plot(List<CoverPoint> curve, String name) throws Exception {
    AssessedSurvey invented = InventedSurvey.survey();
    ZonePlan real = invented.zones();
    ZonePlan plan =
        new ZonePlan(real.zones(), 3, 2000, real.method(), curve.get(4), curve, real.cautions());
    Picture picture =
        CoverChart.of(
            new AssessedSurvey(
                invented.definition(),
                invented.survey(),
                invented.measurement(),
                invented.ranking(),
                plan,
                invented.recovery(),
                invented.repairs(),
                invented.findings(),
                invented.counts(),
                invented.references()));
    picture.writePng(Files.createDirectories(Path.of("target", "chart-gallery", name)));
    return picture.chart().getXYPlot();
  }
}
