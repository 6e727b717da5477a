package org.meadowmark.core.measure.connectivity;

import java.util.Arrays;

/**
 * Patches and the gaps between them: an undirected sparse graph that never changes once built.
 *
 * <p>Nodes are patches, numbered from 0, each with its area in hectares. Links are the pairs that
 * an animal may cross in one go, with either the edge-to-edge distance or the probability of the
 * crossing; pairs without a link have probability 0. Of duplicate links the easiest crossing
 * counts.
 *
 * <p>Memory: 24 bytes a link and 12 a node. Safe for any number of threads.
 */
public final class HabitatGraph {
  /** What the lengths of the links are. */
  enum Lengths {
    METRES,
    /** Minus the natural logarithm of the link's probability. */
    RESISTANCE
  }

  private final Lengths kind;
  private final double[] areas;
  private final int[] offsets;
  private final int[] targets;
  private final double[] lengths;

  private HabitatGraph(Lengths kind, double[] areas, int[] first, int[] second, double[] lengths) {
    if (first.length != second.length || first.length != lengths.length) {
      throw new IllegalArgumentException(
          "links need as many first as second nodes and lengths: "
              + first.length
              + ", "
              + second.length
              + ", "
              + lengths.length);
    }
    this.kind = kind;
    this.areas = areas.clone();
    for (int i = 0; i < areas.length; i++) {
      if (!(areas[i] >= 0) || Double.isInfinite(areas[i])) {
        throw new IllegalArgumentException("area of node " + i + " is " + areas[i]);
      }
    }
    int[] starts = new int[areas.length + 1];
    for (int e = 0; e < first.length; e++) {
      checkLink(e, first[e], second[e], areas.length);
      starts[first[e] + 1]++;
      starts[second[e] + 1]++;
    }
    for (int i = 0; i < areas.length; i++) {
      starts[i + 1] = Math.addExact(starts[i], starts[i + 1]);
    }
    int[] next = starts.clone();
    int[] ends = new int[2 * first.length];
    double[] arcLengths = new double[2 * first.length];
    for (int e = 0; e < first.length; e++) {
      if (lengths[e] == Double.POSITIVE_INFINITY) {
        continue;
      }
      ends[next[first[e]]] = second[e];
      arcLengths[next[first[e]]++] = lengths[e];
      ends[next[second[e]]] = first[e];
      arcLengths[next[second[e]]++] = lengths[e];
    }
    offsets = new int[areas.length + 1];
    int kept = 0;
    int[] placeOf = new int[areas.length];
    Arrays.fill(placeOf, -1);
    for (int i = 0; i < areas.length; i++) {
      int from = kept;
      for (int a = starts[i]; a < next[i]; a++) {
        int j = ends[a];
        if (placeOf[j] >= from) {
          arcLengths[placeOf[j]] = Math.min(arcLengths[placeOf[j]], arcLengths[a]);
        } else {
          placeOf[j] = kept;
          ends[kept] = j;
          arcLengths[kept++] = arcLengths[a];
        }
      }
      offsets[i + 1] = kept;
    }
    this.targets = Arrays.copyOf(ends, kept);
    this.lengths = Arrays.copyOf(arcLengths, kept);
  }

  private static void checkLink(int link, int first, int second, int nodeCount) {
    if (first < 0 || first >= nodeCount || second < 0 || second >= nodeCount) {
      throw new IllegalArgumentException(
          "link " + link + " joins " + first + " and " + second + " of " + nodeCount + " nodes");
    }
    if (first == second) {
      throw new IllegalArgumentException("link " + link + " joins node " + first + " to itself");
    }
  }

  /**
   * {@return graph of edge-to-edge distances} The arrays are copied.
   *
   * @param areasHectares area of each patch, 0 or more
   * @param first one patch of each link
   * @param second the other patch of each link
   * @param distancesMetres distance across each gap, 0 or more
   * @throws IllegalArgumentException for arrays of unequal length, an unknown node, a link of a
   *     node to itself, a negative or undefined number
   */
  public static HabitatGraph ofDistances(
      double[] areasHectares, int[] first, int[] second, double[] distancesMetres) {
    for (int e = 0; e < distancesMetres.length; e++) {
      if (!(distancesMetres[e] >= 0) || Double.isInfinite(distancesMetres[e])) {
        throw new IllegalArgumentException(
            "distance of link " + e + " is " + distancesMetres[e] + " m");
      }
    }
    return new HabitatGraph(Lengths.METRES, areasHectares, first, second, distancesMetres);
  }

  /**
   * {@return graph of crossing probabilities} The arrays are copied; links of probability 0 are
   * left out.
   *
   * @param areasHectares area of each patch, 0 or more
   * @param first one patch of each link
   * @param second the other patch of each link
   * @param probabilities probability of each crossing, 0 to 1
   * @throws IllegalArgumentException for arrays of unequal length, an unknown node, a link of a
   *     node to itself, a number out of range
   */
  public static HabitatGraph ofProbabilities(
      double[] areasHectares, int[] first, int[] second, double[] probabilities) {
    double[] resistances = new double[probabilities.length];
    for (int e = 0; e < probabilities.length; e++) {
      if (!(probabilities[e] >= 0 && probabilities[e] <= 1)) {
        throw new IllegalArgumentException("probability of link " + e + " is " + probabilities[e]);
      }
      resistances[e] = Math.abs(Math.log(probabilities[e]));
    }
    return new HabitatGraph(Lengths.RESISTANCE, areasHectares, first, second, resistances);
  }

  /** The same patches and links with a link of no length between each two that are given. */
  HabitatGraph joined(int[] first, int[] second) {
    int arcs = targets.length;
    int[] from = Arrays.copyOf(first, first.length + arcs);
    int[] to = Arrays.copyOf(second, second.length + arcs);
    double[] length = new double[first.length + arcs];
    int links = first.length;
    for (int node = 0; node < areas.length; node++) {
      for (int a = offsets[node]; a < offsets[node + 1]; a++) {
        if (node < targets[a]) {
          from[links] = node;
          to[links] = targets[a];
          length[links++] = lengths[a];
        }
      }
    }
    return new HabitatGraph(
        kind,
        areas,
        Arrays.copyOf(from, links),
        Arrays.copyOf(to, links),
        Arrays.copyOf(length, links));
  }

  /** {@return number of patches} */
  public int nodeCount() {
    return areas.length;
  }

  /** {@return number of links, each pair once} */
  public int linkCount() {
    return targets.length / 2;
  }

  /**
   * {@return area of a patch in hectares}
   *
   * @param node number of the patch, from 0
   */
  public double areaHectares(int node) {
    return areas[node];
  }

  /** {@return area of all patches in hectares} */
  public double totalAreaHectares() {
    double total = 0;
    for (double area : areas) {
      total += area;
    }
    return total;
  }

  Lengths kind() {
    return kind;
  }

  int firstArc(int node) {
    return offsets[node];
  }

  int arcTarget(int arc) {
    return targets[arc];
  }

  double arcLength(int arc) {
    return lengths[arc];
  }
}
