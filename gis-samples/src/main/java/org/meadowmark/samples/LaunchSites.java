package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * Places beside channels where scars start, weighted by the bed that lies there, by bends, and by
 * planted hot spots.
 */
final class LaunchSites {
  private static final double[] PROBES_METRES = {25, 60, 110, 170};
  private static final int STRETCH_VERTICES = 26;
  private static final int TRAPS = 3;
  private static final double TRAP_REACH_METRES = 80;
  private static final double TRAP_BELOW_SQUARE_METRES = 9_000;
  private static final double APART_METRES = 900;
  private static final double BEND_BONUS = 0.7;
  private static final double SHARP_CURVATURE = 0.004;

  private final Terrain terrain;
  private final List<ChannelPath> channels;
  private final List<Site> sites = new ArrayList<>();
  private final List<Stretch> stretches = new ArrayList<>();
  private final Map<Stretch, List<Trap>> traps = new HashMap<>();
  private final double[] cumulative;

  /** A vertex of a channel and the side of it, 1 for left and −1 for right. */
  record Site(ChannelPath channel, int vertex, int side) {
    boolean isInsideOfBend() {
      return channel.curvature(vertex) * side > SHARP_CURVATURE / 4;
    }
  }

  /** A planted stretch, from a vertex to another. */
  record Stretch(ChannelPath channel, int from, int to) {
    Coordinate middle() {
      return channel.points()[(from + to) / 2];
    }
  }

  /** A small bed beside a planted stretch, as a disc, that boats run onto again and again. */
  record Trap(double x, double y, double radiusMetres) {}

  LaunchSites(
      Terrain terrain,
      List<ChannelPath> channels,
      List<BedMaker.Outline> beds,
      EstuarySettings settings) {
    this.terrain = terrain;
    this.channels = channels;
    plant(settings.plantedHotSpots(), Draws.of(settings.seed(), Purpose.HOT_SPOTS, 0));
    stretches.forEach(stretch -> traps.put(stretch, traps(stretch, beds)));
    List<Double> weights = new ArrayList<>();
    for (ChannelPath channel : channels) {
      for (int vertex = 2; vertex < channel.points().length - 2; vertex++) {
        for (int side : new int[] {1, -1}) {
          double cover = cover(channel, vertex, side);
          if (cover > 0) {
            Site site = new Site(channel, vertex, side);
            double bend = site.isInsideOfBend() ? 1 + BEND_BONUS * bend(channel, vertex) : 1;
            sites.add(site);
            weights.add(
                cover
                    * bend
                    * (plantedAt(channel, vertex).isPresent() ? settings.hotSpotElevation() : 1));
          }
        }
      }
    }
    cumulative = new double[weights.size()];
    double sum = 0;
    for (int i = 0; i < cumulative.length; i++) {
      sum += weights.get(i);
      cumulative[i] = sum;
    }
  }

  List<Stretch> planted() {
    return List.copyOf(stretches);
  }

  boolean isEmpty() {
    return sites.isEmpty();
  }

  Site draw(Draws draws) {
    double wanted = draws.uniform() * cumulative[cumulative.length - 1];
    int index = Arrays.binarySearch(cumulative, wanted);
    return sites.get(Math.min(sites.size() - 1, index < 0 ? -index - 1 : index + 1));
  }

  /** Small beds that trap boats at a site, empty where nothing is planted. */
  List<Trap> traps(Site site) {
    return plantedAt(site.channel, site.vertex).map(traps::get).orElse(List.of());
  }

  private Optional<Stretch> plantedAt(ChannelPath channel, int vertex) {
    return stretches.stream()
        .filter(s -> s.channel == channel && s.from <= vertex && vertex <= s.to)
        .findFirst();
  }

  private static List<Trap> traps(Stretch stretch, List<BedMaker.Outline> beds) {
    LineString line =
        new GeometryFactory()
            .createLineString(
                Arrays.copyOfRange(stretch.channel.points(), stretch.from, stretch.to + 1));
    Envelope near = line.getEnvelopeInternal();
    near.expandBy(TRAP_REACH_METRES);
    return beds.stream()
        .map(BedMaker.Outline::polygon)
        .filter(bed -> bed.getArea() < TRAP_BELOW_SQUARE_METRES)
        .filter(bed -> near.intersects(bed.getEnvelopeInternal()))
        .filter(bed -> bed.isWithinDistance(line, TRAP_REACH_METRES))
        .sorted(Comparator.comparingDouble(Polygon::getArea))
        .limit(TRAPS)
        .map(LaunchSites::trap)
        .toList();
  }

  private static Trap trap(Polygon bed) {
    Point inner = bed.getInteriorPoint();
    double radius = 0.9 * StrictMath.sqrt(bed.getArea() / StrictMath.PI);
    return new Trap(inner.getX(), inner.getY(), radius);
  }

  /** The stretch of the ramp's channel with most bed first, then bends beside much bed. */
  private void plant(int hotSpots, Draws draws) {
    record Candidate(Stretch stretch, double score) {}
    List<Candidate> candidates = new ArrayList<>();
    if (hotSpots == 0) {
      return;
    }
    for (ChannelPath channel : channels) {
      boolean isRamp = channel.name().equals(Names.RAMP_CHANNEL);
      for (int from = 2; from + STRETCH_VERTICES < channel.points().length - 2; from += 4) {
        double score = 0;
        for (int vertex = from; vertex <= from + STRETCH_VERTICES; vertex++) {
          double cover = cover(channel, vertex, 1) + cover(channel, vertex, -1);
          score += cover * (0.5 + bend(channel, vertex));
        }
        if (score > 0) {
          candidates.add(
              new Candidate(
                  new Stretch(channel, from, from + STRETCH_VERTICES),
                  score * draws.between(0.8, 1.2) + (isRamp ? 1_000 : 0)));
        }
      }
    }
    candidates.sort(Comparator.comparingDouble(Candidate::score).reversed());
    for (Candidate candidate : candidates) {
      if (stretches.size() == hotSpots) {
        return;
      }
      Coordinate middle = candidate.stretch.middle();
      if (stretches.stream().allMatch(s -> s.middle().distance(middle) > APART_METRES)) {
        stretches.add(candidate.stretch);
      }
    }
  }

  /** Share of probes on one side that find shallow bed. */
  private double cover(ChannelPath channel, int vertex, int side) {
    double heading = channel.heading(vertex);
    Coordinate place = channel.points()[vertex];
    int found = 0;
    for (double probe : PROBES_METRES) {
      double distance = channel.halfWidthMetres(vertex) + probe;
      double x = place.x - side * distance * StrictMath.sin(heading);
      double y = place.y + side * distance * StrictMath.cos(heading);
      if (terrain.isShallowWater(x, y) && terrain.grass().at(x, y) >= 0) {
        found++;
      }
    }
    return (double) found / PROBES_METRES.length;
  }

  private static double bend(ChannelPath channel, int vertex) {
    return Math.min(1, Math.abs(channel.curvature(vertex)) / SHARP_CURVATURE);
  }
}
