package org.meadowmark.core.write.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;

class RecoveryChartTest {
  private static final ReferenceTables TABLES = ReferenceTablesReader.bundled();

  private static SurveyRecovery recovery(String... species) {
    TestSurvey survey = new TestSurvey();
    for (int i = 0; i < species.length; i++) {
      double south = 200 * i;
      survey
          .beds()
          .add(
              new Bed(
                  "b" + i,
                  new FeatureRef("beds.gpkg", "beds", "b" + i),
                  TestSurvey.wkt(TestSurvey.box(0, south, 300, south + 100)),
                  species[i],
                  ""));
      survey.scar("s" + i, "LINESTRING (10 %1$s, 210 %1$s)".formatted(south + 50), 0.3);
    }
    return new SurveyRecoveryEstimator(
            TestParameters.of(), TABLES, OptionalInt.of(2025), Progress.NONE)
        .estimate(survey.measure());
  }

  @Test
  void fourCurvesASpeciesFallToNothingAtTheirTimes() throws Exception {
    Picture picture =
        RecoveryChart.of(recovery("turtlegrass", "shoalgrass", "manateegrass"), TABLES.species());
    picture.writePng(Files.createDirectories(Path.of("target", "chart-gallery", "recovery")));
    XYPlot plot = picture.chart().getXYPlot();
    XYDataset data = plot.getDataset();
    assertThat(data.getSeriesCount()).isEqualTo(12);
    for (int series = 0; series < 12; series++) {
      assertThat(data.getYValue(series, data.getItemCount(series) - 1)).isCloseTo(0, within(1e-9));
      for (int i = 1; i < data.getItemCount(series); i++) {
        assertThat(data.getYValue(series, i)).isLessThanOrEqualTo(data.getYValue(series, i - 1));
      }
    }
    assertThat(plot.getAnnotations()).hasSize(3);
    assertThat(plot.getDomainAxis().getUpperBound()).isGreaterThan(9.5);
  }

  @Test
  void saysWhenNothingIsForecast() {
    for (SurveyRecovery nothing : List.of(recovery("eelgrass"), recovery())) {
      CategoryPlot plot =
          (CategoryPlot) RecoveryChart.of(nothing, TABLES.species()).chart().getPlot();
      assertThat(plot.getNoDataMessage()).startsWith("No forecast");
    }
  }
}
