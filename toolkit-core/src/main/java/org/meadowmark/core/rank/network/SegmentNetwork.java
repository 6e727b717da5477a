package org.meadowmark.core.rank.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;

/**
 * Which segments meet. Two segments are neighbours where they share an end.
 *
 * <p>Time and memory are linear in segments plus neighbouring pairs. Immutable and thread-safe.
 */
public final class SegmentNetwork {
  private final int[][] neighbours;
  private final double[] lengthsMetres;

  private SegmentNetwork(int[][] neighbours, double[] lengthsMetres) {
    this.neighbours = neighbours;
    this.lengthsMetres = lengthsMetres;
  }

  /**
   * {@return network of lines that are noded: where two meet, both have an end}
   *
   * @param lines one a segment
   * @param lengthsMetres ground length of each
   */
  public static SegmentNetwork ofLines(List<LineString> lines, double[] lengthsMetres) {
    Map<Coordinate, List<Integer>> atNode = new HashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      Coordinate[] line = lines.get(i).getCoordinates();
      atNode.computeIfAbsent(line[0], node -> new ArrayList<>()).add(i);
      atNode.computeIfAbsent(line[line.length - 1], node -> new ArrayList<>()).add(i);
    }
    List<TreeSet<Integer>> sets = new ArrayList<>();
    lines.forEach(line -> sets.add(new TreeSet<>()));
    for (List<Integer> meeting : atNode.values()) {
      for (int a : meeting) {
        for (int b : meeting) {
          if (a != b) {
            sets.get(a).add(b);
          }
        }
      }
    }
    return new SegmentNetwork(
        sets.stream()
            .map(set -> set.stream().mapToInt(Integer::intValue).toArray())
            .toArray(int[][]::new),
        lengthsMetres.clone());
  }

  /**
   * {@return network of given neighbours}
   *
   * @param pairs pairs of positions that are neighbours, each once, in any order
   * @param lengthsMetres ground length of each segment
   * @throws IllegalArgumentException if a position is not one of a segment or is its own neighbour
   */
  public static SegmentNetwork ofPairs(List<int[]> pairs, double[] lengthsMetres) {
    List<TreeSet<Integer>> sets = new ArrayList<>();
    for (int i = 0; i < lengthsMetres.length; i++) {
      sets.add(new TreeSet<>());
    }
    for (int[] pair : pairs) {
      if (pair[0] == pair[1]
          || Math.min(pair[0], pair[1]) < 0
          || Math.max(pair[0], pair[1]) >= lengthsMetres.length) {
        throw new IllegalArgumentException("no pair of segments: " + Arrays.toString(pair));
      }
      sets.get(pair[0]).add(pair[1]);
      sets.get(pair[1]).add(pair[0]);
    }
    return new SegmentNetwork(
        sets.stream()
            .map(set -> set.stream().mapToInt(Integer::intValue).toArray())
            .toArray(int[][]::new),
        lengthsMetres.clone());
  }

  /** {@return number of segments} */
  public int size() {
    return lengthsMetres.length;
  }

  /**
   * {@return positions of the segments that share an end with one, ascending}
   *
   * @param segment position of the segment, from 0
   */
  public int[] neighbours(int segment) {
    return neighbours[segment].clone();
  }

  /**
   * {@return ground length of a segment}
   *
   * @param segment position of the segment, from 0
   */
  public double lengthMetres(int segment) {
    return lengthsMetres[segment];
  }
}
