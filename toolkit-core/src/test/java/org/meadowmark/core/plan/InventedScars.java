package org.meadowmark.core.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.meadowmark.core.measure.ConnectivityDetail;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.ScarFilling;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.measure.recovery.Outlook;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.SiteNotes;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.ChannelSegment;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.ScarShare;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.evidence.ScarredArea;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;

/** Scars for tests of the plan: straight, along the easting, in one square bed from 0 to 10 km. */
final class InventedScars {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final double BED_METRES = 10_000;

  private final List<ScarMeasure> measures = new ArrayList<>();
  private final List<ScarRecovery> recoveries = new ArrayList<>();
  private final List<ScarFilling> fillings = new ArrayList<>();
  private final List<ScarShare> shares = new ArrayList<>();
  private final List<RankedSegment> segments = new ArrayList<>();
  private final List<Zone> zones = new ArrayList<>();
  private SiteNotes bedNotes = SiteNotes.NONE;
  private final List<Setting> settings = new ArrayList<>();

  InventedScars set(String name, String value) {
    settings.add(new Setting(name, List.of(value), "test: " + name));
    return this;
  }

  /** A scar that gains something. */
  InventedScars scar(String id, double x, double y, double length, double width, double gain) {
    return scar(id, x, y, length, width, OptionalDouble.empty(), OptionalDouble.empty())
        .gain(id, gain);
  }

  InventedScars scar(
      String id,
      double x,
      double y,
      double length,
      double width,
      OptionalDouble excavation,
      OptionalDouble depth) {
    Geometry line =
        FACTORY.createLineString(
            new Coordinate[] {new Coordinate(x, y), new Coordinate(x + length, y)});
    double inside = Math.max(0, Math.min(x + length, BED_METRES) - Math.max(0, x));
    measures.add(
        new ScarMeasure(
            new Scar(
                id,
                FeatureRef.layer("scars", ""),
                line,
                "propeller",
                width,
                Scar.WidthSource.MEASURED,
                Optional.empty(),
                excavation),
            length,
            inside,
            length - inside,
            0,
            length * width,
            inside * width,
            inside > 0 ? 1 : 0,
            0,
            depth));
    return this;
  }

  InventedScars gain(String id, double middle) {
    Range none = Range.exactly(0);
    recoveries.add(
        new ScarRecovery(
            id,
            "B1",
            "turtlegrass",
            1,
            OptionalDouble.empty(),
            Optional.empty(),
            "a test",
            Optional.of(new Outlook(none, none, new Range(middle, 2 * middle, 3 * middle))),
            Optional.of(new Outlook(none, none, new Range(0.5 * middle, middle, middle)))));
    return this;
  }

  InventedScars connects(String id, double hectares) {
    fillings.add(new ScarFilling(id, 1, 2, hectares));
    return this;
  }

  InventedScars note(String id, SiteNotes note) {
    measures.replaceAll(measure -> measure.scar().id().equals(id) ? noted(measure, note) : measure);
    return this;
  }

  InventedScars bedNote(SiteNotes note) {
    bedNotes = note;
    return this;
  }

  private static ScarMeasure noted(ScarMeasure measure, SiteNotes note) {
    Scar scar = measure.scar();
    return measure.withScar(
        new Scar(
            scar.id(),
            scar.ref(),
            scar.geometry(),
            scar.cause(),
            scar.widthMetres(),
            scar.widthSource(),
            scar.date(),
            scar.excavationMetres(),
            note));
  }

  /** A segment with a part of its bed scarred, and the scar wholly on it. */
  InventedScars segment(
      String segmentId, String scarId, double scarredSquareMetres, OptionalDouble again) {
    LineString line =
        FACTORY.createLineString(new Coordinate[] {new Coordinate(0, 0), new Coordinate(1, 0)});
    SegmentEvidence evidence =
        new SegmentEvidence(
            Optional.empty(),
            Optional.empty(),
            ScarPattern.values()[0],
            Optional.empty(),
            null,
            "",
            OptionalDouble.empty(),
            new ScarredArea(scarredSquareMetres, 0, Map.of()),
            OptionalDouble.empty(),
            again,
            List.of());
    segments.add(
        new RankedSegment(
            OptionalInt.of(1),
            new ChannelSegment(segmentId, "Invented Cut", line, 100),
            1,
            10,
            Map.of(),
            "",
            1,
            OptionalDouble.of(10),
            "",
            evidence,
            null,
            Optional.empty()));
    shares.add(new ScarShare(scarId, segmentId, 10, 5));
    return this;
  }

  InventedScars zone(String segmentId) {
    zones.add(
        new Zone(
            "Z1",
            List.of(segmentId),
            FACTORY.createMultiLineString(),
            100,
            10,
            1,
            Map.of(),
            null,
            List.of(),
            List.of(),
            List.of()));
    return this;
  }

  Parameters parameters() {
    return ParametersTable.bundled().parameters(settings);
  }

  MetricSurvey survey() {
    Geometry bed = FACTORY.toGeometry(new Envelope(0, BED_METRES, 0, BED_METRES));
    return new MetricSurvey(
        "EPSG:32617",
        "",
        measures.stream().map(ScarMeasure::scar).toList(),
        List.of(new Bed("B1", FeatureRef.layer("beds", ""), bed, "turtlegrass", "", bedNotes)),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        DepthField.UNKNOWN,
        GroundScale.NONE);
  }

  RepairPlan plan() {
    return plan(Optional.of(LocalDate.of(2026, 5, 20)));
  }

  RepairPlan plan(Optional<LocalDate> date) {
    Measurement measurement =
        new Measurement(
            measures,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            fillings.isEmpty()
                ? Optional.empty()
                : Optional.of(new ConnectivityDetail(5, List.of(), fillings)));
    ChannelRanking ranking = new ChannelRanking(segments, shares, 0, 0, 0, 0, 0);
    ZonePlan zonePlan =
        new ZonePlan(zones, 3, 2000, "", new CoverPoint(0, 0, 0, 0, 0), List.of(), List.of());
    return new RepairPlanner(survey(), date, parameters())
        .plan(measurement, ranking, zonePlan, recoveries);
  }
}
