package org.meadowmark.core.write.proposal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiLineString;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.DeviceProposal;
import org.meadowmark.core.rank.zone.MarkShape;
import org.meadowmark.core.rank.zone.Marker;
import org.meadowmark.core.rank.zone.SlowPassage;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.rank.zone.ZoneWorth;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.TableLibrary;

/** An invented survey in the open ocean, where no channel is, with a zone to draw. */
final class InventedSheets {
  static final String UTM_21N_WKT =
      "PROJCS[\"WGS 84 / UTM zone 21N\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\","
          + "SPHEROID[\"WGS 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],"
          + "UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
          + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",-57],"
          + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],"
          + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";

  static final double EAST = 690_000;
  static final double NORTH = 3_320_000;
  static final ReferenceTables TABLES = ReferenceTablesReader.read(TableLibrary.bundled());

  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final String CIRCLE_RULE =
      "rule: common practice, no source; shape: 33 CFR 62.33 (circle = operating restrictions in"
          + " effect)";

  private InventedSheets() {}

  /** A sheet with something in every part. */
  static ZoneSheet full() {
    return sheet(survey("Tern Sound 2025", 400, UTM_21N_WKT), "Heron Cut");
  }

  static ZoneSheet sheet(SheetSurvey survey, String channel) {
    Zone zone = zone("Z1");
    return new ZoneSheet(
        survey, plan(List.of(zone, zone("Z2"))), zone, channel, evidence(), uncertainty());
  }

  static SheetSurvey survey(String name, int scars, String wkt) {
    List<Bed> beds = beds();
    Map<String, String> severity = new HashMap<>();
    String[] classes = {"none", "light", "moderate", "severe"};
    for (int i = 0; i < beds.size(); i++) {
      severity.put(beds.get(i).id(), classes[i % classes.length]);
    }
    MetricSurvey map =
        new MetricSurvey(
            "EPSG:32621",
            wkt,
            scars(scars),
            beds,
            List.of(
                new Channel("C1", ref("channels"), channelLine(0, 3000), "Heron Cut"),
                new Channel(
                    "C2",
                    ref("channels"),
                    line(at(1500, channelY(1500)), at(1900, 1600), at(2400, 2300)),
                    "Old Pass")),
            List.of(),
            List.of(),
            List.of(new MapArea("L1", ref("land"), land(), "Tern Point")),
            DepthField.UNKNOWN,
            new GroundScale() {
              @Override
              public double lengthFactor(double x, double y) {
                return 1.00005;
              }

              @Override
              public double areaFactor(double x, double y) {
                return 1.0001;
              }
            });
    return new SheetSurvey(
        name,
        Optional.of(LocalDate.of(2025, 6, 14)),
        map,
        severity,
        TABLES,
        List.of(
            new SheetInput(
                "survey.toml", "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"),
            new SheetInput(
                "scars.gpkg", "60303ae22b998861bce3b28f33eec1be758a213c86c93c076dbe9f558c11c752")),
        20250614,
        "0.1.0");
  }

  static ZonePlan plan(List<Zone> zones) {
    CoverPoint best = new CoverPoint(2000, 1600, 3120, 3120, 2711);
    return new ZonePlan(
        zones,
        3,
        2000,
        "At most 3 contiguous zones within the total length that cover the most scar length; proven"
            + " best by an exact dynamic programme.",
        best,
        List.of(best),
        List.of(
            "The positions are worked out from mapped lines; check the depth at each of them."));
  }

  static Zone zone(String id) {
    LineString line = channelLine(900, 1500);
    String device = "slow-speed zone: regulatory mark with a circle";
    return new Zone(
        id,
        List.of("C1-0900", "C1-1000", "C1-1100"),
        new MultiLineString(new LineString[] {line}, FACTORY),
        612,
        1843.2,
        0.2412,
        Map.of("propeller", 1532.0, "anchor", 311.2),
        new ZoneWorth(
            1843.2,
            0.0741,
            OptionalDouble.of(0.31),
            OptionalDouble.of(0.18),
            OptionalDouble.of(0.52),
            "A scar of 0.40 m closes from both sides at 0.14 m a year on each; loss is counted in"
                + " full at the start and falls in a straight line to nothing.",
            List.of(new SlowPassage(40, 9, 3.16), new SlowPassage(25, 9, 2.61)),
            List.of(
                "It takes too long: a boat at 40 km/h needs 3.2 minutes more for one passage.",
                "Why here: 3.5 % of the channels carry 24 % of the scar length near channels.",
                "Marking the worst pieces alone would cover 2.71 km of scars where the plan covers"
                    + " 3.12 km with the same length.")),
        List.of(
            new DeviceProposal(
                "propeller",
                "any",
                0.831,
                device,
                MarkShape.RESTRICTION_CIRCLE,
                "propellers cut scars where boats cross shallow grass at speed; a marker needs an"
                    + " established legal basis first",
                DeviceProposal.LEGAL_BASIS_MISSING,
                CIRCLE_RULE),
            new DeviceProposal(
                "anchor",
                "any",
                0.169,
                "no-anchor zone: regulatory mark with a circle",
                MarkShape.RESTRICTION_CIRCLE,
                "anchors drag where boats stop; consider mooring buoys (white with a blue band) so"
                    + " that boats can still stop",
                "Harbour order 12 of the invented Tern Sound council",
                CIRCLE_RULE),
            new DeviceProposal(
                "anchor",
                "any",
                0.169,
                "shallow-water warning: regulatory mark with an open-faced diamond",
                MarkShape.DANGER_DIAMOND,
                "where no restriction is in force a warning tells the skipper of the shoal",
                DeviceProposal.LEGAL_BASIS_MISSING,
                CIRCLE_RULE)),
        List.of(
            marker(id, 1, 900, 22, 247, device, Marker.ZONE_END),
            marker(id, 2, 1200, -22, 80, device, Marker.SPACING),
            marker(id, 3, 1500, 22, 74, device, Marker.ZONE_END)),
        List.of("no depth layer: depth against draft is missing", "one season: no re-scarring"));
  }

  static List<EvidenceRow> evidence() {
    return List.of(
        EvidenceRow.of("Scar length", "1 843", "m", "interval 1 790–1 900 m (95 %, 200 draws)"),
        EvidenceRow.of("Scars", "97", "", "as mapped"),
        EvidenceRow.of("Bed within reach", "14.2", "ha", "as mapped and surveyed"),
        EvidenceRow.of(
            "Scar rate", "130", "m/ha", "interval 118–143 m/ha; shrunk to the survey 121"),
        EvidenceRow.of(
            "Hot spot, Gi* z-score",
            "3.4",
            "",
            "p = 0.001 (999 permutations), kept at 5 % false discovery"),
        EvidenceRow.of("Leading cause", "propeller", "", "83 % of the length"),
        EvidenceRow.of("Scars that reach the channel edge", "46", "%", "of scar length"),
        EvidenceRow.of("Median angle to the channel", "21", "°", "97 scars; near 0 is along it"),
        EvidenceRow.missing("Depth against draft", "no depth layer was given"),
        EvidenceRow.of("Severity of the beds", "moderate", "", "11 % of the bed area scarred"),
        EvidenceRow.of("Connectivity lost", "0.8", "%", "one crossing distance, 10 m"),
        EvidenceRow.missing("Scarred again", "one season was given"));
  }

  static List<String> uncertainty() {
    return List.of(
        "Widths and positions were drawn 200 times; the intervals hold 95 % of the draws.",
        "The zone stays among the first ten in 94 % of draws of weights and widths.");
  }

  private static Marker marker(
      String zone,
      int number,
      double along,
      double off,
      double bearing,
      String device,
      String why) {
    return new Marker(
        zone + "-M" + number,
        zone,
        "C1-0900",
        device,
        MarkShape.RESTRICTION_CIRCLE,
        why,
        "on the channel edge, " + Math.round(Math.abs(off)) + " m from the centreline",
        FACTORY.createPoint(at(along, channelY(along) + off)),
        bearing);
  }

  private static double channelY(double x) {
    return 1100 + 260 * Math.sin(x / 420) + 90 * Math.sin(x / 150);
  }

  private static LineString channelLine(double from, double to) {
    List<Coordinate> points = new ArrayList<>();
    for (double x = from; x <= to; x += 20) {
      points.add(at(x, channelY(x)));
    }
    return FACTORY.createLineString(points.toArray(new Coordinate[0]));
  }

  private static List<Bed> beds() {
    double[][] places = {
      {420, 1750, 330, 180}, {950, 1750, 280, 230}, {1330, 560, 330, 210}, {1700, 1700, 260, 300},
      {700, 600, 300, 170}, {1350, 1320, 260, 110}, {2300, 700, 420, 260}, {1000, 950, 150, 90},
      {2700, 1900, 300, 200}
    };
    List<Bed> beds = new ArrayList<>();
    for (double[] place : places) {
      String id = "B" + (beds.size() + 1);
      beds.add(
          new Bed(
              id, ref("beds"), blob(place[0], place[1], place[2], place[3], beds.size()), "", ""));
    }
    return beds;
  }

  private static Polygon blob(double x, double y, double wide, double high, int shape) {
    int corners = 90;
    Coordinate[] ring = new Coordinate[corners + 1];
    for (int i = 0; i < corners; i++) {
      double a = 2 * Math.PI * i / corners;
      double r = 1 + 0.13 * Math.sin(3 * a + shape) + 0.06 * Math.sin(7 * a + 2 * shape);
      ring[i] = at(x + wide * r * Math.cos(a), y + high * r * Math.sin(a));
    }
    ring[corners] = ring[0];
    return FACTORY.createPolygon(ring);
  }

  private static Polygon land() {
    List<Coordinate> ring = new ArrayList<>();
    for (double x = -300; x <= 3400; x += 50) {
      ring.add(at(x, 2150 + 130 * Math.sin(x / 500) + 40 * Math.sin(x / 130)));
    }
    ring.add(at(3400, 2900));
    ring.add(at(-300, 2900));
    ring.add(ring.get(0));
    return FACTORY.createPolygon(ring.toArray(new Coordinate[0]));
  }

  private static List<Scar> scars(int count) {
    Random random = new Random(7);
    List<Scar> scars = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double x = i % 3 == 0 ? 3000 * random.nextDouble() : 850 + 700 * random.nextDouble();
      double y = channelY(x) + 130 * random.nextGaussian();
      double angle = 0.7 * random.nextGaussian() + 0.3;
      double length = 8 + 50 * random.nextDouble();
      String id = Integer.toString(i + 1);
      if (i % 37 == 0) {
        scars.add(
            new Scar(
                id,
                ref("scars"),
                blob(x, y, 9, 7, i),
                "grounding",
                0,
                Scar.WidthSource.OUTLINE,
                Optional.empty()));
        continue;
      }
      String cause = i % 6 == 1 ? "anchor" : i % 11 == 0 ? "unknown" : "propeller";
      LineString line =
          line(
              at(x, y),
              at(x + length / 2 * Math.cos(angle), y + length / 2 * Math.sin(angle)),
              at(x + length * Math.cos(angle + 0.2), y + length * Math.sin(angle + 0.2)));
      scars.add(
          new Scar(
              id,
              ref("scars"),
              line,
              cause,
              0.4,
              Scar.WidthSource.CAUSE_DEFAULT,
              Optional.empty()));
    }
    return scars;
  }

  private static LineString line(Coordinate... points) {
    return FACTORY.createLineString(points);
  }

  private static Coordinate at(double x, double y) {
    return new Coordinate(EAST + x, NORTH + y);
  }

  private static FeatureRef ref(String layer) {
    return FeatureRef.layer(layer + ".gpkg", layer);
  }
}
