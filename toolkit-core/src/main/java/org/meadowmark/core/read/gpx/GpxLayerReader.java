package org.meadowmark.core.read.gpx;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.GPX.Reader.Mode;
import io.jenetics.jpx.Length;
import io.jenetics.jpx.Point;
import io.jenetics.jpx.Route;
import io.jenetics.jpx.Track;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.io.Reader;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.transform.stream.StreamSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.read.CrsNames;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.LayerReader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.survey.LayerSource;

/**
 * Reads GPX 1.0 and 1.1: waypoints as points, routes as lines, each segment of a track as a line,
 * in longitude and latitude on WGS 84.
 *
 * <p>Ids are {@code waypoint 1}, {@code route 1} and {@code track 1.2} (second segment of the first
 * track), counted in file order. The layers {@code waypoints}, {@code routes} and {@code tracks}
 * can be named; without a name all are read, in that order. Attributes are name, comment,
 * description, type and time (the UTC date of the first point that has a time).
 */
public final class GpxLayerReader implements LayerReader {
  private static final String WAYPOINTS = "waypoints";
  private static final String ROUTES = "routes";
  private static final String TRACKS = "tracks";
  private static final List<String> LAYERS = List.of(WAYPOINTS, ROUTES, TRACKS);
  private static final List<String> ATTRIBUTES =
      List.of("name", "comment", "description", "type", "time");

  private final GeometryFactory factory = new GeometryFactory();

  @Override
  public void read(LayerSource source, FeatureSink sink) {
    LayerProblems problems =
        source
            .layer()
            .map(layer -> new LayerProblems(source, layer))
            .orElseGet(() -> LayerProblems.ofFile(source));
    if (source.layer().isPresent() && !LAYERS.contains(source.layer().get())) {
      throw problems.refused(
          "is no layer of a GPX file", "use one of: " + String.join(", ", LAYERS));
    }
    GPX gpx = parse(source, problems);
    boolean waypoints = wanted(source, WAYPOINTS);
    boolean routes = wanted(source, ROUTES);
    boolean tracks = wanted(source, TRACKS);
    long count = waypoints ? gpx.getWayPoints().size() : 0;
    count += routes ? gpx.getRoutes().size() : 0;
    count += tracks ? gpx.getTracks().stream().mapToLong(t -> t.getSegments().size()).sum() : 0;
    sink.header(new LayerHeader(problems.layer(), ATTRIBUTES, Optional.of(CrsNames.WGS_84), count));
    if (waypoints) {
      sendWaypoints(gpx.getWayPoints(), problems, sink);
    }
    if (routes) {
      sendRoutes(gpx.getRoutes(), problems, sink);
    }
    if (tracks) {
      sendTracks(gpx.getTracks(), problems, sink);
    }
  }

  private static boolean wanted(LayerSource source, String layer) {
    return source.layer().isEmpty() || source.layer().get().equals(layer);
  }

  private static GPX parse(LayerSource source, LayerProblems problems) {
    try {
      GPX.Version version = GpxProlog.version(source.file(), problems);
      try (Reader text = XmlText.open(source.file(), problems)) {
        return GPX.Reader.of(version, Mode.STRICT).read(new StreamSource(text));
      }
    } catch (IOException e) {
      throw problems.refused(
          "is no valid GPX (" + LayerProblems.detail(e) + ")", "correct it in the file", e);
    } catch (IllegalArgumentException | IllegalStateException | ArithmeticException e) {
      throw problems.refused(
          "is no valid GPX (" + LayerProblems.detail(e) + ")", "correct it in the file", e);
    }
  }

  private void sendWaypoints(List<WayPoint> waypoints, LayerProblems problems, FeatureSink sink) {
    for (int i = 0; i < waypoints.size(); i++) {
      WayPoint point = waypoints.get(i);
      Map<String, Object> attributes =
          attributes(point.getName(), point.getComment(), point.getDescription(), point.getType());
      putTime(attributes, List.of(point));
      sink.feature(
          new SourceFeature(
              problems.ref("waypoint " + (i + 1)),
              Optional.of(factory.createPoint(coordinate(point))),
              attributes));
    }
  }

  private void sendRoutes(List<Route> routes, LayerProblems problems, FeatureSink sink) {
    for (int i = 0; i < routes.size(); i++) {
      Route route = routes.get(i);
      sendLine(
          "route " + (i + 1),
          route.getPoints(),
          attributes(route.getName(), route.getComment(), route.getDescription(), route.getType()),
          problems,
          sink);
    }
  }

  private void sendTracks(List<Track> tracks, LayerProblems problems, FeatureSink sink) {
    for (int i = 0; i < tracks.size(); i++) {
      Track track = tracks.get(i);
      for (int j = 0; j < track.getSegments().size(); j++) {
        sendLine(
            "track %d.%d".formatted(i + 1, j + 1),
            track.getSegments().get(j).getPoints(),
            attributes(
                track.getName(), track.getComment(), track.getDescription(), track.getType()),
            problems,
            sink);
      }
    }
  }

  private void sendLine(
      String id,
      List<WayPoint> points,
      Map<String, Object> attributes,
      LayerProblems problems,
      FeatureSink sink) {
    if (points.size() < 2) {
      sink.finding(
          problems.skipped(
              id,
              FindingCode.UNREADABLE_FEATURE,
              points.isEmpty() ? "it has no points" : "it has a single point"));
      return;
    }
    putTime(attributes, points);
    Coordinate[] coordinates =
        points.stream().map(GpxLayerReader::coordinate).toArray(Coordinate[]::new);
    sink.feature(
        new SourceFeature(
            problems.ref(id), Optional.of(factory.createLineString(coordinates)), attributes));
  }

  private static Coordinate coordinate(Point point) {
    double elevationMetres = point.getElevation().map(Length::doubleValue).orElse(Double.NaN);
    return new Coordinate(
        point.getLongitude().doubleValue(), point.getLatitude().doubleValue(), elevationMetres);
  }

  private static Map<String, Object> attributes(
      Optional<String> name,
      Optional<String> comment,
      Optional<String> description,
      Optional<String> type) {
    Map<String, Object> values = new HashMap<>();
    name.ifPresent(text -> values.put("name", text));
    comment.ifPresent(text -> values.put("comment", text));
    description.ifPresent(text -> values.put("description", text));
    type.ifPresent(text -> values.put("type", text));
    return values;
  }

  private static void putTime(Map<String, Object> attributes, List<? extends Point> points) {
    points.stream()
        .map(Point::getTime)
        .flatMap(Optional::stream)
        .findFirst()
        .map((Instant time) -> time.atOffset(ZoneOffset.UTC).toLocalDate())
        .ifPresent(date -> attributes.put("time", date));
  }
}
