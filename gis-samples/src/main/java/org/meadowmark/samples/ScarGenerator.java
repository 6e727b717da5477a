package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.FeatureRef;

/**
 * Invents scars and channels on beds that exist already, so that a whole assessment can run on real
 * beds that come without them.
 *
 * <p>Channels meander from bed margin to bed margin. Scars start on bed, evenly by area, but more
 * often within reach of planted channel stretches; they may run on over bare bottom. The same beds
 * in the same order and the same settings give the same result on any number of threads.
 *
 * <p>Time is linear in scars and, but for an index, in bed vertices; memory holds the beds and an
 * index of them.
 */
public final class ScarGenerator {
  private static final double STRETCH_METRES = 400;
  private static final double LEAST_BED_SHARE = 0.03;

  private ScarGenerator() {}

  private record Candidate(String channel, LineString stretch, List<Polygon> grass, double score) {}

  /**
   * Invents scars.
   *
   * @param beds polygons or multipolygons in a metric reference system; others are ignored, invalid
   *     ones are repaired for this purpose
   * @param settings how many and of which kind
   * @throws IllegalArgumentException if the beds have no area or a coordinate is not a number
   */
  public static InventedScars on(List<? extends Geometry> beds, ScarSettings settings) {
    List<Polygon> polygons = polygons(beds);
    AreaSampler everywhere = new AreaSampler(polygons);
    if (!(everywhere.areaSquareMetres() > 0) || Double.isInfinite(everywhere.areaSquareMetres())) {
      throw new IllegalArgumentException("scars need beds that have an area");
    }
    List<ChannelPath> paths =
        BedChannels.thread(
            polygons, settings.channelEnds(), Draws.of(settings.seed(), Purpose.CHANNELS, 0));
    List<Candidate> chosen = choose(polygons, paths, settings);
    List<PlantedHotSpot> hotSpots = new ArrayList<>();
    List<AreaSampler> inHotSpots = new ArrayList<>();
    for (Candidate candidate : chosen) {
      hotSpots.add(
          new PlantedHotSpot(
              hotSpots.size() + 1,
              candidate.channel,
              candidate.stretch,
              settings.hotSpotElevation()));
      inHotSpots.add(new AreaSampler(candidate.grass));
    }
    return new InventedScars(settings, channels(paths), hotSpots, everywhere, inHotSpots);
  }

  private static List<Polygon> polygons(List<? extends Geometry> beds) {
    List<Polygon> polygons = new ArrayList<>();
    for (Geometry bed : beds) {
      addPolygons(bed.isValid() ? bed : GeometryFixer.fix(bed), polygons);
    }
    return polygons;
  }

  private static void addPolygons(Geometry geometry, List<Polygon> polygons) {
    for (Object part : PolygonExtracter.getPolygons(geometry)) {
      Polygon polygon = (Polygon) part;
      if (polygon.getArea() > 0) {
        polygons.add(polygon);
      }
    }
  }

  private static List<Candidate> choose(
      List<Polygon> beds, List<ChannelPath> paths, ScarSettings settings) {
    if (settings.hotSpots() == 0) {
      return List.of();
    }
    STRtree index = new STRtree();
    beds.forEach(bed -> index.insert(bed.getEnvelopeInternal(), bed));
    Draws draws = Draws.of(settings.seed(), Purpose.HOT_SPOTS, 0);
    List<Candidate> candidates = new ArrayList<>();
    for (ChannelPath path : paths) {
      for (LineString stretch : stretches(path)) {
        Geometry zone = stretch.buffer(settings.hotSpotReachMetres());
        List<Polygon> grass = grass(index, zone);
        double area = grass.stream().mapToDouble(Polygon::getArea).sum();
        double luck = draws.between(0.4, 1.6);
        if (area > LEAST_BED_SHARE * zone.getArea()) {
          candidates.add(new Candidate(path.name(), stretch, grass, area * luck));
        }
      }
    }
    candidates.sort(Comparator.comparingDouble(Candidate::score).reversed());
    List<Candidate> chosen = new ArrayList<>();
    double apart = 2 * settings.hotSpotReachMetres() + STRETCH_METRES;
    for (Candidate candidate : candidates) {
      boolean isFree = chosen.stream().allMatch(c -> c.stretch.distance(candidate.stretch) > apart);
      if (chosen.size() < settings.hotSpots() && isFree) {
        chosen.add(candidate);
      }
    }
    return chosen;
  }

  private static List<Polygon> grass(STRtree index, Geometry zone) {
    List<Polygon> near = new ArrayList<>();
    for (Object found : index.query(zone.getEnvelopeInternal())) {
      near.add((Polygon) found);
    }
    near.sort(Geometry::compareTo);
    List<Polygon> grass = new ArrayList<>();
    for (Polygon bed : near) {
      addPolygons(OverlayNGRobust.overlay(bed, zone, OverlayNG.INTERSECTION), grass);
    }
    return grass;
  }

  /** Pieces of about the wanted length. */
  private static List<LineString> stretches(ChannelPath path) {
    GeometryFactory factory = new GeometryFactory();
    List<LineString> stretches = new ArrayList<>();
    List<Coordinate> piece = new ArrayList<>();
    double length = 0;
    for (Coordinate point : path.points()) {
      length += piece.isEmpty() ? 0 : point.distance(piece.get(piece.size() - 1));
      piece.add(point);
      if (length >= STRETCH_METRES) {
        stretches.add(factory.createLineString(piece.toArray(Coordinate[]::new)));
        piece = new ArrayList<>(List.of(point));
        length = 0;
      }
    }
    return stretches;
  }

  private static List<Channel> channels(List<ChannelPath> paths) {
    GeometryFactory factory = new GeometryFactory();
    List<Channel> channels = new ArrayList<>();
    for (ChannelPath path : paths) {
      String id = String.format(Locale.ROOT, "C%03d", channels.size() + 1);
      channels.add(
          new Channel(
              id,
              new FeatureRef("invented", "channels", id),
              factory.createLineString(path.points()),
              path.name()));
    }
    return channels;
  }
}
