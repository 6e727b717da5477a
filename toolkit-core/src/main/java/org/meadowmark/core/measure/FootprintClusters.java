package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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

  private final STRtree footprintIndex;
  private final List<Cluster> clusters;
  private final STRtree clusterIndex;

  /**
   * Unites footprints that hang together.
   *
   * @param footprints all footprints of the survey
   * @param footprintIndex their positions
   */
  FootprintClusters(List<Footprint> footprints, STRtree footprintIndex) {
    this.footprintIndex = footprintIndex;
    List<int[]> pairs =
        footprints.parallelStream()
            .filter(footprint -> !footprint.area().isEmpty())
            .flatMap(footprint -> overlapping(footprint.index(), footprints).stream())
            .toList();
    ConnectedSets sets = new ConnectedSets(footprints.size());
    pairs.forEach(pair -> sets.join(pair[0], pair[1]));
    clusters =
        sets.members().parallelStream()
            .filter(members -> !footprints.get(members.get(0)).area().isEmpty())
            .map(members -> new Cluster(unite(members, footprints), members))
            .toList();
    clusterIndex = StrTreeQuery.positions(clusters.stream().map(Cluster::area).toList());
  }

  private List<int[]> overlapping(int i, List<Footprint> footprints) {
    Geometry area = footprints.get(i).area();
    List<int[]> found = new ArrayList<>();
    PreparedGeometry prepared = null;
    for (int j : StrTreeQuery.<Integer>items(footprintIndex, area.getEnvelopeInternal())) {
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
    List<Integer> found = new ArrayList<>(StrTreeQuery.<Integer>items(clusterIndex, envelope));
    found.sort(Comparator.naturalOrder());
    return found.stream().map(clusters::get).toList();
  }
}
