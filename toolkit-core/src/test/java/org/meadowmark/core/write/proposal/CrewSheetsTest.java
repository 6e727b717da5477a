package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.geotools.referencing.CRS;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.measure.ConnectivityDetail;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.ScarFilling;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairPlanner;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;

class CrewSheetsTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final double EAST = 360_000;
  private static final double NORTH = 3_060_000;

  private final Parameters parameters =
      ParametersTable.bundled()
          .parameters(
              List.of(
                  new Setting("repair_budget", List.of("20000"), "test"),
                  new Setting("repair_season_budget", List.of("6000"), "test")));

  @TempDir Path folder;

  @Test
  void sheetAndWaypointsHoldTheUnitsOfTheSeason() throws Exception {
    CrewSurvey survey = survey(CRS.decode("EPSG:32617", true).toWKT());
    assertThat(survey.plan().seasons()).isNotEmpty();
    CrewSheets.write(folder, survey);
    Path repairs = folder.resolve("repairs");
    int waypoints = 0;
    for (var season : survey.plan().seasons()) {
      Path file = repairs.resolve("season-" + season.number() + ".gpx");
      GPX gpx = GPX.read(file);
      assertThat((long) gpx.getWayPoints().size()).isEqualTo(season.units());
      assertThat(gpx.getRoutes().get(0).getPoints().stream().map(p -> p.getName().orElseThrow()))
          .containsExactlyElementsOf(season.scars().stream().map(s -> s.scarId()).toList());
      waypoints += gpx.getWayPoints().size();
    }
    assertThat(waypoints).isEqualTo(survey.plan().units().size());

    String page = Files.readString(repairs.resolve("season-1.html"));
    assertThat(page)
        .contains("Bare muck must be cleared to firm sand first")
        .contains("need permits")
        .contains("&lt;Invented &amp; Cove&gt;")
        .contains("placeholders")
        .contains("not known");
    try (PDDocument pdf = Loader.loadPDF(repairs.resolve("season-1.pdf").toFile())) {
      String text = new PDFTextStripper().getText(pdf);
      assertThat(text).contains("Order of visits").contains("Bare muck must be cleared");
    }
    Files.createDirectories(Path.of("target", "crew-sheets"));
    Files.copy(
        repairs.resolve("season-1.pdf"),
        Path.of("target", "crew-sheets", "season-1.pdf"),
        StandardCopyOption.REPLACE_EXISTING);
  }

  /** Position: PROJ through gdaltransform (GDAL 3.6.2), EPSG:32617 to EPSG:4326. */
  @Test
  void waypointsLieWhereTheyShould() throws Exception {
    CrewSurvey survey = survey(CRS.decode("EPSG:32617", true).toWKT());
    CrewSheets.write(folder, survey);
    GPX gpx = GPX.read(folder.resolve("repairs").resolve("season-1.gpx"));
    WayPoint first =
        gpx.getWayPoints().stream()
            .filter(point -> point.getName().orElseThrow().equals("1/1"))
            .findFirst()
            .orElseThrow();
    assertThat(first.getLatitude().doubleValue()).isCloseTo(27.6568875535, within(1e-8));
    assertThat(first.getLongitude().doubleValue()).isCloseTo(-82.4193316376, within(1e-8));
  }

  @Test
  void theSamePlanGivesTheSameBytes() throws Exception {
    CrewSurvey survey = survey(CRS.decode("EPSG:32617", true).toWKT());
    Path first = Files.createDirectory(folder.resolve("first"));
    Path second = Files.createDirectory(folder.resolve("second"));
    CrewSheets.write(first, survey);
    CrewSheets.write(second, survey);
    for (String name : List.of("season-1.html", "season-1.pdf", "season-1.gpx")) {
      assertThat(second.resolve("repairs").resolve(name))
          .hasSameBinaryContentAs(first.resolve("repairs").resolve(name));
    }
  }

  @Test
  void anInventedGridHasNoWaypointsAndSaysSo() throws IOException {
    CrewSheets.write(folder, survey(""));
    assertThat(folder.resolve("repairs").resolve("season-1.gpx")).doesNotExist();
    assertThat(Files.readString(folder.resolve("repairs").resolve("season-1.html")))
        .contains("there is no GPX file");
  }

  @Test
  void noPlanWritesNothing() throws IOException {
    CrewSheets.write(
        folder,
        new CrewSurvey(
            "x", Optional.empty(), "EPSG:32617", "", parameters.repair(), RepairPlan.NONE));
    assertThat(folder.resolve("repairs")).doesNotExist();
  }

  private CrewSurvey survey(String wkt) {
    Geometry bed =
        FACTORY.toGeometry(new Envelope(EAST - 10, EAST + 5_000, NORTH - 10, NORTH + 5_000));
    List<ScarMeasure> measures =
        List.of(scar("1", 0, 20), scar("2", 40, 30), scar("3", 3_000, 25), scar("4", 3_040, 25));
    MetricSurvey map =
        new MetricSurvey(
            "EPSG:32617",
            wkt,
            measures.stream().map(ScarMeasure::scar).toList(),
            List.of(new Bed("B1", FeatureRef.layer("beds", ""), bed, "turtlegrass", "")),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            DepthField.UNKNOWN,
            GroundScale.NONE);
    Measurement measurement =
        new Measurement(
            measures,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            Optional.of(
                new ConnectivityDetail(
                    5,
                    List.of(),
                    measures.stream()
                        .map(m -> new ScarFilling(m.scar().id(), 1, 2, 0.1))
                        .toList())));
    RepairPlan plan =
        new RepairPlanner(map, Optional.empty(), parameters)
            .plan(
                measurement,
                new ChannelRanking(List.of(), List.of(), 0, 0, 0, 0, 0),
                new ZonePlan(
                    List.of(), 3, 2_000, "", new CoverPoint(0, 0, 0, 0, 0), List.of(), List.of()),
                List.of());
    return new CrewSurvey(
        "<Invented & Cove>", Optional.empty(), "EPSG:32617", wkt, parameters.repair(), plan);
  }

  private static ScarMeasure scar(String id, double north, double length) {
    Geometry line =
        FACTORY.createLineString(
            new Coordinate[] {
              new Coordinate(EAST, NORTH + north), new Coordinate(EAST + length, NORTH + north)
            });
    return new ScarMeasure(
        new Scar(
            id,
            FeatureRef.layer("scars", ""),
            line,
            "propeller",
            0.3,
            Scar.WidthSource.MEASURED,
            Optional.empty()),
        length,
        length,
        0,
        0,
        length * 0.3,
        length * 0.3,
        1,
        0,
        OptionalDouble.empty());
  }
}
