package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/**
 * Places beside channels where scars start, weighted by the bed that lies there, by bends, and by
 * planted hot spots.
 */
final class LaunchSites {
  private static final double[] PROBES_METRES = {25, 60, 110, 170};
  private static final int STRETCH_VERTICES = 40;
  private static final double APART_METRES = 900;
  private static final double BEND_BONUS = 0.7;
  private static final double SHARP_CURVATURE = 0.004;

  private final Terrain terrain;
  private final List<ChannelPath> channels;
  private final List<Site> sites = new ArrayList<>();
  private final List<Stretch> stretches = new ArrayList<>();
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

  LaunchSites(
      Terrain terrain, List<ChannelPath> channels, int hotSpots, double elevation, Draws draws) {
    this.terrain = terrain;
    this.channels = channels;
    plant(hotSpots, draws);
    List<Double> weights = new ArrayList<>();
    for (ChannelPath channel : channels) {
      for (int vertex = 2; vertex < channel.points().length - 2; vertex++) {
        for (int side : new int[] {1, -1}) {
          double cover = cover(channel, vertex, side);
          if (cover > 0) {
            Site site = new Site(channel, vertex, side);
            double bend = site.isInsideOfBend() ? 1 + BEND_BONUS * bend(channel, vertex) : 1;
            sites.add(site);
            weights.add(cover * bend * (isPlanted(channel, vertex) ? elevation : 1));
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

  private boolean isPlanted(ChannelPath channel, int vertex) {
    return stretches.stream()
        .anyMatch(s -> s.channel == channel && s.from <= vertex && vertex <= s.to);
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
