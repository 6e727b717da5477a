package org.meadowmark.core.write.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.InventedSurvey;
import org.meadowmark.core.write.chart.Charts;

/** An invented survey with four more beds, whose names would do harm in a careless page. */
final class HostileSurvey {
  static final String SCRIPT = "<script>window.hurt = 1</script>";
  static final String END = "</script><img src=x onerror=\"window.hurt = 2\">";
  static final String COMMENT = "<!-- <script> & 'quotes' \"\" ]]>";
  static final String LINES = "{{t.lang}} ends\u2028here\u2029 \\u0041";

  /** Names of the beds, worst first. */
  static final List<String> NAMES = List.of(SCRIPT, END, COMMENT, LINES);

  /** Grid length divided by ground length, far from 1 so that it shows. */
  static final double FACTOR = 1.25;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private HostileSurvey() {}

  static AssessedSurvey assessed() {
    Measurement usual = InventedSurvey.measurement();
    List<BedMeasure> beds = new ArrayList<>(usual.beds());
    for (int i = 0; i < NAMES.size(); i++) {
      beds.add(
          new BedMeasure(
              InventedSurvey.bed(NAMES.get(i), square(100 * i, 200, 60), "halodule", "patchy"),
              InventedSurvey.damage(3_600, 3_600, 2, 30, 3_000 - 500 * i, "severe"),
              InventedSurvey.pieces(1, 2, List.of(0.4))));
    }
    Measurement measurement =
        new Measurement(
            usual.scars(),
            usual.scarsInBeds(),
            beds,
            usual.areas(),
            usual.patches(),
            usual.gaps(),
            usual.scarredGrass(),
            usual.connectivity());
    AssessedSurvey survey =
        InventedSurvey.with(measurement, InventedSurvey.ranking(), InventedSurvey.findings());
    return new AssessedSurvey(
        survey.definition(),
        scaled(survey.survey()),
        survey.measurement(),
        survey.ranking(),
        survey.zones(),
        survey.recovery(),
        survey.repairs(),
        survey.findings(),
        survey.counts(),
        survey.references());
  }

  /** A survey without anything, on a grid whose place is not known. */
  static AssessedSurvey empty() {
    Measurement nothing =
        new Measurement(
            List.of(),
            List.of(),
            List.of(),
            List.of(
                InventedSurvey.summary(
                    Kind.WHOLE_SURVEY, 0, InventedSurvey.damage(0, 0, 0, 0, 0, "unknown"))),
            List.of(),
            List.of(),
            List.of(),
            Optional.empty());
    ChannelRanking none = new ChannelRanking(List.of(), List.of(), 0, 0, 0, 0, 0);
    AssessedSurvey survey = InventedSurvey.with(nothing, none, List.of());
    return new AssessedSurvey(
        survey.definition(),
        onUnknownGrid(),
        survey.measurement(),
        survey.ranking(),
        survey.zones(),
        survey.recovery(),
        survey.repairs(),
        survey.findings(),
        survey.counts(),
        survey.references());
  }

  private static MetricSurvey onUnknownGrid() {
    return new MetricSurvey(
        "local metres",
        "",
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        DepthField.UNKNOWN,
        GroundScale.NONE);
  }

  private static MetricSurvey scaled(MetricSurvey survey) {
    return new MetricSurvey(
        survey.gridLabel(),
        survey.gridWkt(),
        survey.scars(),
        survey.beds(),
        survey.channels(),
        survey.managementAreas(),
        survey.surveyedArea(),
        survey.barriers(),
        DepthField.UNKNOWN,
        new GroundScale() {
          @Override
          public double lengthFactor(double x, double y) {
            return FACTOR;
          }

          @Override
          public double areaFactor(double x, double y) {
            return FACTOR * FACTOR;
          }
        });
  }

  static ReportInput input() {
    AssessedSurvey assessed = assessed();
    List<ReportChart> charts =
        Charts.of(assessed).stream()
            .limit(1)
            .map(picture -> new ReportChart(picture.name(), COMMENT, PIXEL))
            .toList();
    return new ReportInput(assessed, charts, "1.2.3");
  }

  /** The smallest GIF. */
  private static final String PIXEL =
      "data:image/gif;base64,R0lGODlhAQABAIAAAAAAAP///yH5BAEAAAAALAAAAAABAAEAAAIBRAA7";

  private static Polygon square(double x, double y, double side) {
    return FACTORY.createPolygon(
        new Coordinate[] {
          new Coordinate(x, y),
          new Coordinate(x + side, y),
          new Coordinate(x + side, y + side),
          new Coordinate(x, y + side),
          new Coordinate(x, y)
        });
  }
}
