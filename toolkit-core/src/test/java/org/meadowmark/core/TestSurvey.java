package org.meadowmark.core;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.SurveyMeasurer;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.rank.ChannelRanker;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.Parameters.SeverityDenominator;

/** A survey in metres built from well-known text, for tests. */
public final class TestSurvey {
  private final List<Scar> scars = new ArrayList<>();
  private final List<Bed> beds = new ArrayList<>();
  private final List<Channel> channels = new ArrayList<>();
  private final List<MapArea> areas = new ArrayList<>();
  private final List<MapArea> surveyed = new ArrayList<>();
  private final List<MapArea> barriers = new ArrayList<>();
  private GroundScale scale = GroundScale.NONE;
  private DepthField depth = DepthField.UNKNOWN;
  private final List<Object> ranking = new ArrayList<>();
  private SeverityDenominator denominator = SeverityDenominator.BED;
  private List<Double> distances = List.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0);
  private double minimumPatch = 0.01;
  private double reachMetres = 250;
  private int draws;
  private long seed = 1;
  private OptionalDouble positionRmseMetres = OptionalDouble.empty();
  private double minimumExposureHectares = 0.1;

  public static Geometry wkt(String text) {
    try {
      return new WKTReader().read(text);
    } catch (ParseException e) {
      throw new IllegalArgumentException(text, e);
    }
  }

  /** A rectangle as well-known text. */
  public static String box(double x1, double y1, double x2, double y2) {
    return "POLYGON ((%s %s, %s %s, %s %s, %s %s, %s %s))"
        .formatted(x1, y1, x2, y1, x2, y2, x1, y2, x1, y1);
  }

  public TestSurvey scar(String id, String wkt, double widthMetres) {
    return scar(id, wkt(wkt), widthMetres, "propeller");
  }

  public TestSurvey scar(String id, Geometry geometry, double widthMetres, String cause) {
    boolean line = geometry.getDimension() == 1;
    scars.add(
        new Scar(
            id,
            new FeatureRef("scars.gpkg", "scars", id),
            geometry,
            cause,
            line ? widthMetres : 0,
            line ? Scar.WidthSource.MEASURED : Scar.WidthSource.OUTLINE,
            Optional.empty()));
    return this;
  }

  public TestSurvey bed(String id, String wkt) {
    return bed(id, wkt(wkt));
  }

  public TestSurvey bed(String id, Geometry geometry) {
    beds.add(
        new Bed(id, new FeatureRef("beds.gpkg", "beds", id), geometry, "eelgrass", "continuous"));
    return this;
  }

  public TestSurvey channel(String id, String name, String wkt) {
    channels.add(new Channel(id, new FeatureRef("ch.gpkg", "channels", id), wkt(wkt), name));
    return this;
  }

  public TestSurvey area(String id, String wkt) {
    areas.add(new MapArea(id, new FeatureRef("areas.gpkg", "areas", id), wkt(wkt), ""));
    return this;
  }

  public TestSurvey surveyed(String wkt) {
    surveyed.add(new MapArea("s", new FeatureRef("s.gpkg", "s", "s"), wkt(wkt), ""));
    return this;
  }

  public TestSurvey barrier(String wkt) {
    barriers.add(new MapArea("b", new FeatureRef("b.gpkg", "b", "b"), wkt(wkt), ""));
    return this;
  }

  public TestSurvey scale(GroundScale value) {
    scale = value;
    return this;
  }

  public TestSurvey depth(DepthField value) {
    depth = value;
    return this;
  }

  /** Choices for the ranking: names and values as in a survey file. */
  public TestSurvey ranking(Object... namesAndValues) {
    ranking.addAll(List.of(namesAndValues));
    return this;
  }

  public TestSurvey denominator(SeverityDenominator value) {
    denominator = value;
    return this;
  }

  public TestSurvey distances(Double... metres) {
    distances = List.of(metres);
    return this;
  }

  /** Asks for intervals; without, none are drawn. */
  public TestSurvey draws(int count) {
    draws = count;
    return this;
  }

  public TestSurvey seed(long value) {
    seed = value;
    return this;
  }

  public TestSurvey positionRmse(double metres) {
    positionRmseMetres = OptionalDouble.of(metres);
    return this;
  }

  /** A line whose width is the default of the propeller. */
  public TestSurvey defaultScar(String id, String wkt, double widthMetres) {
    scars.add(
        new Scar(
            id,
            new FeatureRef("scars.gpkg", "scars", id),
            wkt(wkt),
            "propeller",
            widthMetres,
            Scar.WidthSource.CAUSE_DEFAULT,
            Optional.empty()));
    return this;
  }

  public TestSurvey reach(double metres) {
    reachMetres = metres;
    return this;
  }

  public TestSurvey minimumPatch(double squareMetres) {
    minimumPatch = squareMetres;
    return this;
  }

  public TestSurvey minimumExposure(double hectares) {
    minimumExposureHectares = hectares;
    return this;
  }

  /** The same survey with every geometry changed. */
  public TestSurvey map(UnaryOperator<Geometry> change) {
    scars.replaceAll(s -> s.withGeometry(change.apply(s.geometry())));
    beds.replaceAll(s -> s.withGeometry(change.apply(s.geometry())));
    channels.replaceAll(s -> s.withGeometry(change.apply(s.geometry())));
    areas.replaceAll(s -> s.withGeometry(change.apply(s.geometry())));
    surveyed.replaceAll(s -> s.withGeometry(change.apply(s.geometry())));
    barriers.replaceAll(s -> s.withGeometry(change.apply(s.geometry())));
    return this;
  }

  public List<Scar> scars() {
    return scars;
  }

  public List<Bed> beds() {
    return beds;
  }

  public List<Channel> channels() {
    return channels;
  }

  public MetricSurvey build() {
    return new MetricSurvey(
        "EPSG:32617", "", scars, beds, channels, areas, surveyed, barriers, depth, scale);
  }

  public Parameters parameters() {
    List<Object> namesAndValues =
        new ArrayList<>(
            List.of(
                "severity_denominator", denominator.key(),
                "crossing_distances_m", spaced(distances),
                "gap_width_limits_m", "0.1 0.4 1 5",
                "minimum_patch_m2", minimumPatch,
                "channel_reach_m", reachMetres,
                "minimum_exposure_ha", minimumExposureHectares,
                "uncertainty_draws", draws,
                "seed", seed,
                "position_rmse_m",
                    positionRmseMetres.isPresent() ? positionRmseMetres.getAsDouble() : ""));
    namesAndValues.addAll(ranking);
    return TestParameters.of(namesAndValues.toArray());
  }

  private static String spaced(List<Double> numbers) {
    return numbers.stream().map(String::valueOf).collect(Collectors.joining(" "));
  }

  public Measurement measure() {
    return new SurveyMeasurer(build(), parameters(), tables(), Progress.NONE).measure();
  }

  public ChannelRanking rank() {
    return rank(measure());
  }

  /** Ranks with what was measured given. */
  public ChannelRanking rank(Measurement measurement) {
    return new ChannelRanker(
            build(), MeasuredEvidence.of(measurement), parameters(), tables(), Progress.NONE)
        .rank();
  }

  /** Severity classes with the published limits, and a cause with a spread of 0.3. */
  public static ReferenceTables tables() {
    String source = "Sargent and others (1995)";
    Map<String, org.meadowmark.core.reference.Species> species = new LinkedHashMap<>();
    return new ReferenceTables(
        species,
        Map.of(
            "propeller",
            new ScarCause("propeller", "propeller", OptionalDouble.of(0.4), 0.3, source)),
        List.of(
            new SeverityClass("none", "none", 0, true, 0, true, source),
            new SeverityClass("light", "light", 0, false, 0.05, false, source),
            new SeverityClass("moderate", "moderate", 0.05, true, 0.20, true, source),
            new SeverityClass("severe", "severe", 0.20, false, 1, true, source)),
        List.of(),
        Map.of());
  }
}
