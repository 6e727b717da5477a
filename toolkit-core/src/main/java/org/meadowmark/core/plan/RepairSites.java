package org.meadowmark.core.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;

/**
 * Sites: places that one mobilisation serves. Taken in the order given, a place joins the nearest
 * site whose first place is within the distance, or becomes the first of a new site; so no two
 * places of a site are farther apart than twice the distance. Firsts are kept in a grid of cells as
 * wide as the distance, so time is linear in places.
 */
final class RepairSites {
  private final double distance;
  private final List<Integer> siteOfPlace = new ArrayList<>();
  private final List<Coordinate> firsts = new ArrayList<>();
  private final Map<Cell, List<Integer>> cells = new HashMap<>();

  private record Cell(long column, long row) {}

  /**
   * @param places on the grid
   * @param distance 0 puts only places that coincide together
   */
  RepairSites(List<Coordinate> places, double distance) {
    this.distance = Math.max(distance, 1e-6);
    places.forEach(place -> siteOfPlace.add(siteOf(place)));
  }

  int count() {
    return firsts.size();
  }

  int of(int place) {
    return siteOfPlace.get(place);
  }

  private int siteOf(Coordinate place) {
    long column = (long) Math.floor(place.x / distance);
    long row = (long) Math.floor(place.y / distance);
    int nearest = -1;
    for (long c = column - 1; c <= column + 1; c++) {
      for (long r = row - 1; r <= row + 1; r++) {
        for (int site : cells.getOrDefault(new Cell(c, r), List.of())) {
          nearest = nearer(place, nearest, site);
        }
      }
    }
    if (nearest < 0) {
      nearest = firsts.size();
      firsts.add(place);
      cells.computeIfAbsent(new Cell(column, row), cell -> new ArrayList<>()).add(nearest);
    }
    return nearest;
  }

  private int nearer(Coordinate place, int known, int site) {
    double toSite = firsts.get(site).distance(place);
    if (toSite > distance) {
      return known;
    }
    if (known < 0) {
      return site;
    }
    double toKnown = firsts.get(known).distance(place);
    return toSite < toKnown || toSite == toKnown && site < known ? site : known;
  }
}
