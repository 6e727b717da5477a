package org.meadowmark.core.write;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.GrassClass;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.AreaMeasure.SeverityGrass;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Connectedness;
import org.meadowmark.core.measure.ConnectivityDetail;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.EffectiveMesh;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.measure.Fragmentation.Crossing;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.GapBin;
import org.meadowmark.core.measure.LengthDistribution;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.Measurement.ScarredGrass;
import org.meadowmark.core.measure.Patch;
import org.meadowmark.core.measure.PatchStatistics;
import org.meadowmark.core.measure.PatchWorth;
import org.meadowmark.core.measure.ScarFilling;
import org.meadowmark.core.measure.ScarInBed;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.measure.recovery.SurveyRecovery;
import org.meadowmark.core.measure.recovery.SurveyRecoveryEstimator;
import org.meadowmark.core.measure.uncertainty.DamageInterval;
import org.meadowmark.core.measure.uncertainty.DamageInterval.ClassShare;
import org.meadowmark.core.measure.uncertainty.DamageInterval.ErrorSource;
import org.meadowmark.core.measure.uncertainty.DamageInterval.Range;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairPlanner;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.ChannelSegment;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.ScarShare;
import org.meadowmark.core.rank.evidence.BedsInReach;
import org.meadowmark.core.rank.evidence.EdgeContact;
import org.meadowmark.core.rank.evidence.ScarDepth;
import org.meadowmark.core.rank.evidence.ScarLie;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.evidence.ScarredArea;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.rank.score.SegmentScore;
import org.meadowmark.core.rank.statistics.SegmentStatistics;
import org.meadowmark.core.rank.statistics.ShrunkenRate;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.rank.zone.ZonePlanner;
import org.meadowmark.core.rank.zone.ZoneSegment;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.RhizomeElongation;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.ScarRecoveryTime;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ScoreTerm;
import org.meadowmark.core.survey.SurveyDefinition;

/**
 * Results of an invented survey, built by hand: three beds, of which one was not surveyed, two
 * management areas, four scars and three channel segments. The numbers need not be measurable; they
 * are chosen so that each can be told from the others.
 */
public final class InventedSurvey {
  public static final String UTM_17N_WKT =
      "PROJCS[\"WGS 84 / UTM zone 17N\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\","
          + "SPHEROID[\"WGS 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],"
          + "UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
          + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",-81],"
          + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],"
          + "PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private InventedSurvey() {}

  public static ReferenceTables references() {
    Map<String, Species> species = new LinkedHashMap<>();
    species.put(
        "thalassia", new Species("thalassia", "Thalassia testudinum", "turtle grass", "test"));
    species.put("halodule", new Species("halodule", "Halodule wrightii", "shoal grass", "test"));
    Map<String, ScarCause> causes = new LinkedHashMap<>();
    for (String[] cause :
        new String[][] {
          {"propeller", "Propeller"},
          {"anchor", "Anchor drag"},
          {"grounding", "Grounding"},
          {"unknown", "Unknown cause"}
        }) {
      causes.put(cause[0], new ScarCause(cause[0], cause[1], OptionalDouble.of(0.4), 0.3, "test"));
    }
    return new ReferenceTables(
        species,
        causes,
        List.of(
            new SeverityClass("none", "None", 0, true, 0, true, "test"),
            new SeverityClass("light", "Light", 0, false, 0.05, false, "test"),
            new SeverityClass("moderate", "Moderate", 0.05, true, 0.2, true, "test"),
            new SeverityClass("severe", "Severe", 0.2, false, 1, true, "test")),
        List.of(),
        Map.of(),
        Map.of(
            "thalassia",
            new ScarRecoveryTime(
                "thalassia", new org.meadowmark.core.model.Range(3, 5, 9), 0.3, "test")),
        Map.of(
            "thalassia", new RhizomeElongation("thalassia", "Thalassia testudinum", 0.7, "test")));
  }

  public static Parameters parameters() {
    return TestParameters.of(
        "scar_group_distance_m",
        5,
        "crossing_distances_m",
        "1 5",
        "crossing_distance_m",
        5,
        "gap_width_limits_m",
        "0.5 1",
        "sliver_tolerance_m",
        0.05,
        "minimum_patch_m2",
        1,
        "maximum_width_m",
        5,
        "minimum_exposure_ha",
        0.5,
        "pixel_size_m",
        0.5,
        "connectivity_detail_patches",
        5_000);
  }

  public static SurveyDefinition definition() {
    return new SurveyDefinition(
        "Gullwing Sound, spring",
        Optional.of(LocalDate.of(2025, 4, 12)),
        Optional.empty(),
        List.of(LayerSource.of(LayerRole.SCARS, Path.of("scars.gpkg"))),
        parameters());
  }

  public static AssessedSurvey survey() {
    return with(measurement(), ranking(), findings());
  }

  public static AssessedSurvey with(
      Measurement measurement, ChannelRanking ranking, List<Finding> findings) {
    return new AssessedSurvey(
        definition(),
        metric(),
        measurement,
        ranking,
        zones(ranking),
        recovery(measurement),
        repairs(measurement, ranking),
        findings,
        counts(),
        references());
  }

  public static SurveyRecovery recovery(Measurement measurement) {
    return new SurveyRecoveryEstimator(
            parameters(), references(), OptionalInt.of(2025), Progress.NONE)
        .estimate(measurement);
  }

  public static RepairPlan repairs(Measurement measurement, ChannelRanking ranking) {
    return new RepairPlanner(metric(), definition().date(), definition().parameters())
        .plan(measurement, ranking, zones(ranking), recovery(measurement).scars());
  }

  public static ZonePlan zones(ChannelRanking ranking) {
    return new ZonePlanner(
            parameters().zones(),
            ReferenceTablesReader.bundled().deviceRules(),
            parameters().ranking().channelHalfWidthMetres(),
            new Barriers(List.of(), FACTORY),
            GroundScale.NONE,
            (x, y) -> 0)
        .plan(ranking.segments().stream().map(ZoneSegment::of).toList());
  }

  public static MetricSurvey metric() {
    return new MetricSurvey(
        "EPSG:32617",
        UTM_17N_WKT,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        DepthField.UNKNOWN,
        GroundScale.NONE);
  }

  public static Measurement measurement() {
    return new Measurement(
        List.of(
            scar("2", line(10, 0, 10, 100), "propeller", 0.3, 100, 95, 2),
            scar("10", line(20, 0, 20, 60), "anchor", 0.8, 60, 60, 1),
            scar("A1", square(50, 50, 5), "grounding", 0, 0, 0, 0),
            scar("B7", line(300, 0, 340, 0), "unknown", 0.4, 40, 0, 0)),
        List.of(
            new ScarInBed("2", "1", 80, 24),
            new ScarInBed("2", "2", 15, 4.5),
            new ScarInBed("10", "1", 60, 48),
            new ScarInBed("A1", "1", 0, 25)),
        List.of(
            new BedMeasure(
                bed("1", square(0, 0, 100), "thalassia", "continuous"),
                damage(10_000, 10_000, 3, 140, 94.6, "light"),
                pieces(1, 3, List.of(0.3, 0.3, 0.8))),
            new BedMeasure(
                bed("2", square(100, 0, 50), "halodule", "patchy"),
                damage(2_500, 2_000, 1, 15, 410, "severe"),
                pieces(1, 1, List.of())),
            new BedMeasure(
                bed("11", square(500, 0, 40), "", ""),
                damage(1_600, 0, 0, 0, 0, "unknown"),
                pieces(1, 1, List.of()))),
        List.of(
            area("1", "Heron Bight", 2, damage(12_500, 12_000, 4, 155, 504.6, "light")),
            area("2", "", 0, damage(0, 0, 0, 0, 0, "unknown")),
            summary(Kind.OUTSIDE_MANAGEMENT_AREAS, 1, damage(1_600, 0, 0, 0, 0, "unknown")),
            summary(Kind.WHOLE_SURVEY, 3, damage(14_100, 12_000, 4, 155, 504.6, "light"))),
        List.of(
            patch("P1", square(0, 0, 10), List.of("1"), "P2"),
            patch("P2", square(10.3, 0, 90), List.of("2", "1"), "P1"),
            patch("P10", square(500, 0, 40), List.of("11"), "P2")),
        List.of(
            gap("G1", "2", "P1", "P2", 0.3, 80, line(10, 0, 10, 80)),
            gap("G2", "2", "P1", "P3", 0.3, 12.5, line(10, 80, 10, 92)),
            gap("G10", "10", "P2", "P3", 0.8, 60, line(20, 0, 20, 60))),
        List.of(
            new ScarredGrass("1", square(10, 0, 9), 94.6),
            new ScarredGrass("2", square(110, 0, 20), 410)),
        Optional.of(
            new ConnectivityDetail(
                5,
                List.of(
                    new PatchWorth("P1", 60, 20, 30, 10),
                    new PatchWorth("P2", 50, 25, 25, 0),
                    new PatchWorth("P10", 12.5, 12.5, 0, 0)),
                List.of(new ScarFilling("2", 2, 1, 0.015), new ScarFilling("10", 1, 1, 0.01)))));
  }

  public static ChannelRanking ranking() {
    return new ChannelRanking(
        List.of(
            segment(1, "S2", "Pelican Cut", 120, 1.2, Map.of("propeller", 90.0, "anchor", 30.0)),
            segment(2, "S10", "Pelican Cut", 35, 2.5, Map.of("propeller", 35.0)),
            segment(0, "S3", "Old Ferry Channel", 0, 0.1, Map.of())),
        List.of(
            new ScarShare("2", "S2", 90, 12.25),
            new ScarShare("2", "S10", 10, 40),
            new ScarShare("10", "S2", 30, 8)),
        200,
        155,
        40,
        5,
        1);
  }

  public static List<Finding> findings() {
    return List.of(
        finding(FindingCode.INVALID_POLYGON, Treatment.REPAIRED, LayerRole.BEDS, "beds.shp", "2"),
        finding(FindingCode.ZERO_LENGTH, Treatment.SKIPPED, LayerRole.SCARS, "scars.gpkg", "7"),
        finding(FindingCode.ZERO_LENGTH, Treatment.SKIPPED, LayerRole.SCARS, "scars.gpkg", "12"),
        finding(FindingCode.WIDTH_MISSING, Treatment.KEPT, LayerRole.SCARS, "scars.gpkg", "10"));
  }

  public static List<LayerCount> counts() {
    return List.of(
        new LayerCount(LayerRole.SCARS, "scars.gpkg", "scars", "EPSG:4326", 6, 4, 0, 2),
        new LayerCount(LayerRole.BEDS, "beds.shp", "beds", "EPSG:2882", 3, 3, 1, 0));
  }

  public static Finding finding(
      FindingCode code, Treatment treatment, LayerRole role, String file, String id) {
    String layer = file.substring(0, file.indexOf('.'));
    return new Finding(
        code,
        treatment == Treatment.KEPT ? Level.NOTE : Level.WARNING,
        treatment,
        role,
        new FeatureRef(file, layer, id),
        code.title(),
        treatment == Treatment.KEPT ? "default used" : treatment.name().toLowerCase(Locale.ROOT));
  }

  public static ScarMeasure scar(
      String id,
      Geometry geometry,
      String cause,
      double width,
      double length,
      double lengthInBeds,
      int gaps) {
    boolean isLine = geometry.getDimension() == 1;
    Scar scar =
        new Scar(
            id,
            new FeatureRef("scars.gpkg", "scars", id),
            geometry,
            cause,
            width,
            isLine ? WidthSource.MEASURED : WidthSource.OUTLINE,
            Optional.of(LocalDate.of(2025, 4, 12)));
    double footprint = isLine ? width * length : geometry.getArea();
    return new ScarMeasure(
        scar,
        length,
        lengthInBeds,
        length - lengthInBeds,
        0,
        footprint,
        isLine ? width * lengthInBeds : footprint,
        lengthInBeds > 0 || !isLine ? 1 : 0,
        gaps,
        OptionalDouble.of(1.25));
  }

  public static Bed bed(String id, Polygon geometry, String species, String texture) {
    return new Bed(id, new FeatureRef("beds.shp", "beds", id), geometry, species, texture);
  }

  public static Damage damage(
      double grass, double surveyed, int scars, double length, double scarred, String severity) {
    OptionalDouble share =
        surveyed > 0 ? OptionalDouble.of(scarred / surveyed) : OptionalDouble.empty();
    return new Damage(
        grass,
        surveyed,
        scars,
        length,
        scarred,
        share,
        severity,
        share,
        "bed",
        surveyed > 0 ? Optional.of(interval(scarred, surveyed, severity)) : Optional.empty());
  }

  private static DamageInterval interval(double scarred, double surveyed, String severity) {
    return new DamageInterval(
        200,
        new Range(0.8 * scarred, scarred, 1.3 * scarred),
        new Range(0.8 * scarred / surveyed, scarred / surveyed, 1.3 * scarred / surveyed),
        List.of(new ClassShare(severity, 0.875), new ClassShare("severe", 0.125)),
        severity,
        false,
        OptionalDouble.empty(),
        Optional.of(ErrorSource.WIDTH));
  }

  public static Fragmentation pieces(int before, int after, List<Double> gapWidths) {
    double half = 1.0 / Math.max(1, after);
    OptionalDouble share = OptionalDouble.of(half);
    double[] widths = gapWidths.stream().mapToDouble(Double::doubleValue).toArray();
    int narrow = (int) gapWidths.stream().filter(w -> w < 0.5).count();
    return new Fragmentation(
        5_000,
        patches(before, 1),
        patches(after, half),
        0,
        LengthDistribution.of(widths),
        List.of(
            new GapBin(0, OptionalDouble.of(0.5), narrow),
            new GapBin(0.5, OptionalDouble.empty(), widths.length - narrow)),
        List.of(
            new Crossing(
                1, before, after, OptionalDouble.of(1), share, connected(0.3), connected(0.2)),
            new Crossing(
                5,
                before,
                1,
                OptionalDouble.of(1),
                OptionalDouble.of(1),
                connected(0.4),
                connected(0.3))));
  }

  private static Optional<Connectedness> connected(double hectares) {
    return Optional.of(
        new Connectedness(
            OptionalDouble.of(hectares / 2), hectares / 3, hectares, OptionalDouble.empty()));
  }

  /** Patches of which the largest holds a share of 4,000 m². */
  private static PatchStatistics patches(int count, double largestShare) {
    OptionalDouble mesh = OptionalDouble.of(3_200 * largestShare);
    return new PatchStatistics(
        count,
        4_000,
        OptionalDouble.of(count / 0.5),
        OptionalDouble.of(4_000.0 / Math.max(1, count)),
        OptionalDouble.of(300),
        OptionalDouble.of(4_000 * largestShare),
        OptionalDouble.of(largestShare),
        700,
        OptionalDouble.of(1_400),
        OptionalDouble.of(1.2),
        OptionalDouble.of(1.3),
        new EffectiveMesh(
            OptionalDouble.of(1 - mesh.getAsDouble() / 5_000),
            OptionalDouble.of(5_000 / mesh.getAsDouble()),
            mesh,
            mesh),
        count > 1 ? LengthDistribution.of(new double[] {0.3, 8}) : LengthDistribution.NONE);
  }

  public static AreaMeasure area(String id, String name, int beds, Damage damage) {
    MapArea area =
        new MapArea(id, new FeatureRef("areas.geojson", "areas", id), square(0, 0, 1_000), name);
    return area(Kind.MANAGEMENT_AREA, Optional.of(area), beds, damage);
  }

  public static AreaMeasure summary(Kind kind, int beds, Damage damage) {
    return area(kind, Optional.empty(), beds, damage);
  }

  private static AreaMeasure area(Kind kind, Optional<MapArea> area, int beds, Damage damage) {
    List<SeverityGrass> bySeverity = new ArrayList<>();
    if (damage.surveyedSquareMetres() > 0) {
      bySeverity.add(new SeverityGrass(damage.severityKey(), damage.surveyedSquareMetres()));
    }
    double unknown = damage.grassSquareMetres() - damage.surveyedSquareMetres();
    if (unknown > 0) {
      bySeverity.add(new SeverityGrass("unknown", unknown));
    }
    return new AreaMeasure(
        kind,
        area,
        beds,
        damage,
        pieces(beds, beds * 2, beds == 0 ? List.of() : List.of(0.3, 0.3, 0.8)),
        List.of(
            new GrassClass("halodule", "patchy", damage.grassSquareMetres() / 4, 1),
            new GrassClass("thalassia", "continuous", damage.grassSquareMetres() * 3 / 4, 2)),
        bySeverity);
  }

  public static RankedSegment segment(
      int rank,
      String id,
      String channel,
      double scarMetres,
      double exposure,
      Map<String, Double> byCause) {
    return new RankedSegment(
        rank > 0 ? OptionalInt.of(rank) : OptionalInt.empty(),
        new ChannelSegment(id, channel, line(0, 0, 100, 0), 100),
        byCause.size(),
        scarMetres,
        new TreeMap<>(byCause),
        byCause.isEmpty() ? "" : "propeller",
        exposure,
        rank > 0 ? OptionalDouble.of(scarMetres / exposure) : OptionalDouble.empty(),
        rank > 0 ? "" : "too little bed within reach",
        evidence(rank, scarMetres, exposure),
        statistics(rank, scarMetres / exposure),
        rank > 0 ? Optional.of(score(rank)) : Optional.empty());
  }

  private static SegmentEvidence evidence(int rank, double scarMetres, double exposure) {
    boolean scarred = scarMetres > 0;
    return new SegmentEvidence(
        scarred ? Optional.of(new EdgeContact(0.75, 0.5)) : Optional.empty(),
        scarred ? Optional.of(new ScarLie(28.5, 0.6, 0.5, 0.45, 0.125)) : Optional.empty(),
        scarred ? ScarPattern.CORNER_CUTTING : ScarPattern.NONE,
        rank == 1 ? Optional.of(new ScarDepth(0.9, 0.8, 0.45)) : Optional.empty(),
        new BedsInReach(exposure, Map.of("light", exposure)),
        "light",
        OptionalDouble.of(1.0 / 3),
        new ScarredArea(scarMetres * 0.3, scarMetres * 0.05, Map.of()),
        OptionalDouble.of(0.0125),
        OptionalDouble.empty(),
        rank == 1
            ? List.of("depth known for 90 % of scar length", "one season: re-scarring unknown")
            : List.of("no depth known at its scars", "one season: re-scarring unknown"));
  }

  private static SegmentStatistics statistics(int rank, double rate) {
    return rank > 0
        ? new SegmentStatistics(
            new ShrunkenRate(
                OptionalDouble.of(rate * 0.9),
                OptionalDouble.of(rate * 0.7),
                OptionalDouble.of(rate * 1.2),
                false),
            OptionalDouble.of(3.25 / rank),
            OptionalDouble.of(0.002 * rank),
            OptionalDouble.of(0.004 * rank),
            true,
            "",
            "")
        : new SegmentStatistics(
            new ShrunkenRate(
                OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), false),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            false,
            "too little bed in reach",
            "too little bed in reach");
  }

  private static SegmentScore score(int rank) {
    Map<ScoreTerm, Double> terms = new TreeMap<>();
    terms.put(ScoreTerm.RATE, 0.75 / rank);
    terms.put(ScoreTerm.HOT_SPOT, 0.5);
    return new SegmentScore(
        0.65 / rank,
        terms,
        rank == 1 ? List.of() : List.of(ScoreTerm.SHALLOW),
        rank == 2,
        OptionalDouble.of(0.98 / rank));
  }

  public static Gap gap(
      String id,
      String scar,
      String first,
      String second,
      double width,
      double length,
      Geometry geometry) {
    return new Gap(
        id, scar, first, second, width, OptionalDouble.of(1.5 * width), length, geometry);
  }

  private static Patch patch(String id, Polygon outline, List<String> beds, String nearest) {
    return new Patch(
        id,
        outline,
        beds,
        outline.getArea(),
        outline.getLength(),
        1.128379,
        Optional.of(nearest),
        OptionalDouble.of(0.3),
        "C1");
  }

  public static LineString line(double x1, double y1, double x2, double y2) {
    return FACTORY.createLineString(
        new Coordinate[] {new Coordinate(x1, y1), new Coordinate(x2, y2)});
  }

  public static Polygon square(double x, double y, double side) {
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
