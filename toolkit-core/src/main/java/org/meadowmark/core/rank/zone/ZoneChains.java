package org.meadowmark.core.rank.zone;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateList;
import org.locationtech.jts.geom.LineString;

/**
 * The lines of a zone joined to chains between its ends and junctions. A chain starts at its
 * western end (southern where both are as far west); a free ring starts at its western node.
 */
final class ZoneChains {
  /** A line, and the segment that each stretch of it belongs to. */
  record Chain(Coordinate[] line, int[] segmentOfStretch) {
    boolean isRing() {
      return line[0].equals2D(line[line.length - 1]);
    }

    private Chain reversed() {
      Coordinate[] turned = new Coordinate[line.length];
      int[] segments = new int[segmentOfStretch.length];
      for (int i = 0; i < line.length; i++) {
        turned[line.length - 1 - i] = line[i];
      }
      for (int i = 0; i < segments.length; i++) {
        segments[segments.length - 1 - i] = segmentOfStretch[i];
      }
      return new Chain(turned, segments);
    }

    private Chain fromWest() {
      int order = line[0].compareTo(line[line.length - 1]);
      return order > 0 || order == 0 && line[1].compareTo(line[line.length - 2]) > 0
          ? reversed()
          : this;
    }
  }

  private final Map<Coordinate, List<Integer>> zoneAtNode = new TreeMap<>();
  private final Set<Coordinate> stops;
  private final List<LineString> lines;
  private final Set<Integer> done = new HashSet<>();

  private ZoneChains(List<LineString> lines, Set<Coordinate> stops) {
    this.lines = lines;
    this.stops = stops;
    for (int i = 0; i < lines.size(); i++) {
      for (Coordinate node : ends(lines.get(i))) {
        zoneAtNode.computeIfAbsent(node, n -> new ArrayList<>()).add(i);
      }
    }
  }

  /**
   * Chains of a zone.
   *
   * @param lines lines of its segments
   * @param stops nodes where a chain ends besides ends and junctions of the zone
   * @return chains by start, then by end; stretches count lines from 0
   */
  static List<Chain> of(List<LineString> lines, Set<Coordinate> stops) {
    ZoneChains chains = new ZoneChains(lines, stops);
    List<Chain> found = new ArrayList<>();
    for (Coordinate node : chains.zoneAtNode.keySet()) {
      if (chains.isStop(node)) {
        chains.growFrom(node, found);
      }
    }
    for (Coordinate node : chains.zoneAtNode.keySet()) {
      chains.growFrom(node, found);
    }
    found.replaceAll(Chain::fromWest);
    found.sort(
        Comparator.comparing((Chain chain) -> chain.line()[0])
            .thenComparing(chain -> chain.line()[chain.line().length - 1])
            .thenComparing(chain -> chain.line()[1]));
    return found;
  }

  static List<Coordinate> ends(LineString line) {
    return List.of(line.getCoordinateN(0), line.getCoordinateN(line.getNumPoints() - 1));
  }

  private boolean isStop(Coordinate node) {
    return zoneAtNode.get(node).size() != 2 || stops.contains(node);
  }

  private void growFrom(Coordinate start, List<Chain> found) {
    for (int first : zoneAtNode.get(start)) {
      if (!done.contains(first)) {
        CoordinateList line = new CoordinateList();
        List<Integer> stretches = new ArrayList<>();
        line.add(start);
        Coordinate at = start;
        int next = first;
        while (next >= 0) {
          done.add(next);
          at = append(line, stretches, at, next);
          next = isStop(at) ? -1 : unused(at);
        }
        found.add(
            new Chain(line.toCoordinateArray(), stretches.stream().mapToInt(i -> i).toArray()));
      }
    }
  }

  private Coordinate append(
      CoordinateList line, List<Integer> stretches, Coordinate from, int segment) {
    Coordinate[] vertices = lines.get(segment).getCoordinates();
    boolean forward = vertices[0].equals2D(from);
    for (int i = 1; i < vertices.length; i++) {
      line.add(forward ? vertices[i] : vertices[vertices.length - 1 - i], true);
      stretches.add(segment);
    }
    return line.getCoordinate(line.size() - 1);
  }

  private int unused(Coordinate node) {
    return zoneAtNode.get(node).stream().filter(i -> !done.contains(i)).findFirst().orElse(-1);
  }
}
