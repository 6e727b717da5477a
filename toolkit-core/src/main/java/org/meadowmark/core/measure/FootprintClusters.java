package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jgrapht.alg.util.UnionFind;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Connected clusters of overlapping footprints, each united into one geometry, so that crossing
 * scars count once. Clusters do not touch each other.
 *
 * <p>Time n log n in scars plus the number of overlapping pairs.
 */
final class FootprintClusters {
  /**
   * Footprints that hang together.
   *
   * @param area their union
   * @param members their positions in the footprint list, ascending
   */
  record Cluster(Geometry area, List<Integer> members) {}

  private final List<Cluster> clusters;
  private final STRtree index = new STRtree();

  FootprintClusters(List<Footprint> footprints) {
    STRtree footprintIndex = new STRtree();
    List<Integer> used = new ArrayList<>();
    for (Footprint footprint : footprints) {
      if (!footprint.area().isEmpty()) {
        used.add(footprint.index());
        footprintIndex.insert(footprint.area().getEnvelopeInternal(), footprint.index());
      }
    }
    footprintIndex.build();

    List<int[]> pairs =
        used.parallelStream()
            .flatMap(i -> overlapping(i, footprints, footprintIndex).stream())
            .toList();
    UnionFind<Integer> sets = new UnionFind<>(new java.util.LinkedHashSet<>(used));
    pairs.forEach(pair -> sets.union(pair[0], pair[1]));
    Map<Integer, List<Integer>> members = new LinkedHashMap<>();
    used.forEach(i -> members.computeIfAbsent(sets.find(i), key -> new ArrayList<>()).add(i));

    clusters =
        members.values().parallelStream().map(m -> new Cluster(unite(m, footprints), m)).toList();
    for (int i = 0; i < clusters.size(); i++) {
      index.insert(clusters.get(i).area().getEnvelopeInternal(), i);
    }
    index.build();
  }

  private static List<int[]> overlapping(int i, List<Footprint> footprints, STRtree index) {
    Geometry area = footprints.get(i).area();
    List<int[]> found = new ArrayList<>();
    PreparedGeometry prepared = null;
    for (int j : StrTreeQuery.<Integer>items(index, area.getEnvelopeInternal())) {
      if (j > i) {
        if (prepared == null) {
          prepared = PreparedGeometryFactory.prepare(area);
        }
        if (prepared.intersects(footprints.get(j).area())) {
          found.add(new int[] {i, j});
        }
      }
    }
    return found;
  }

  private static Geometry unite(List<Integer> members, List<Footprint> footprints) {
    if (members.size() == 1) {
      return footprints.get(members.get(0)).area();
    }
    return ParallelUnion.of(members.stream().map(i -> footprints.get(i).area()).toList());
  }

  /** Clusters whose envelope meets an envelope, in order of their first member. */
  List<Cluster> near(Envelope envelope) {
    List<Integer> found = new ArrayList<>(StrTreeQuery.<Integer>items(index, envelope));
    found.sort(Comparator.naturalOrder());
    return found.stream().map(clusters::get).toList();
  }
}
