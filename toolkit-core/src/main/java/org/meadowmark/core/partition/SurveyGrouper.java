package org.meadowmark.core.partition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.meadowmark.core.measure.ConnectedSets;
import org.meadowmark.core.measure.InteractionReach;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Scar;

/**
 * Groups beds and scars within reach of each other: spatial index, distance of the outlines,
 * union-find.
 *
 * <p>Time n log n in vertices plus the pairs whose boxes are within reach. Beds are held in memory;
 * of a scar the box and its reach are, some 120 bytes, and its geometry is asked for again where it
 * is needed, so that scars may be kept on disk.
 */
public final class SurveyGrouper {
  private final InteractionReach reach;

  /**
   * Creates a grouper.
   *
   * @param reach from how far features can act on each other
   */
  public SurveyGrouper(InteractionReach reach) {
    this.reach = reach;
  }

  /** Two beds, and whether they touch. */
  private record Pair(int first, int second, boolean touching) {}

  /**
   * Groups the features of a survey.
   *
   * @param beds beds that do not overlap
   * @param scars scars; read several times
   * @return the group of every bed and scar
   */
  public SurveyGroups group(List<Bed> beds, List<Scar> scars) {
    List<Pair> pairs = bedPairs(beds);
    ScarBoxes boxes = ScarBoxes.of(scars, reach);
    ConnectedSets sets = new ConnectedSets(beds.size() + scars.size());
    pairs.forEach(pair -> sets.join(pair.first, pair.second));
    joinScarsToBeds(beds, scars, boxes, sets);
    joinScars(beds.size(), scars, boxes, sets);
    int[] numbers = sets.numbers();
    return new SurveyGroups(
        Arrays.copyOf(numbers, beds.size()),
        Arrays.copyOfRange(numbers, beds.size(), numbers.length),
        anyVastMeadow(beds, pairs, boxes));
  }

  private List<Pair> bedPairs(List<Bed> beds) {
    HPRtree index = new HPRtree();
    for (int i = 0; i < beds.size(); i++) {
      index.insert(beds.get(i).geometry().getEnvelopeInternal(), i);
    }
    index.build();
    return IntStream.range(0, beds.size())
        .parallel()
        .boxed()
        .flatMap(i -> pairsOf(i, beds, index).stream())
        .toList();
  }

  private List<Pair> pairsOf(int i, List<Bed> beds, HPRtree index) {
    Geometry bed = beds.get(i).geometry();
    List<Pair> pairs = new ArrayList<>();
    IndexedFacetDistance distance = null;
    for (int j : query(index, bed.getEnvelopeInternal(), reach.betweenBeds())) {
      if (j <= i) {
        continue;
      }
      Geometry other = beds.get(j).geometry();
      if (distance == null) {
        distance = new IndexedFacetDistance(bed);
      }
      boolean inside = isInside(other, bed) || isInside(bed, other);
      if (inside || distance.isWithinDistance(other, reach.betweenBeds())) {
        pairs.add(new Pair(i, j, inside || distance.isWithinDistance(other, reach.touchingBeds())));
      }
    }
    return pairs;
  }

  private static boolean isInside(Geometry inner, Geometry outer) {
    return outer.getEnvelopeInternal().contains(inner.getEnvelopeInternal())
        && SimplePointInAreaLocator.locate(inner.getCoordinate(), outer) == Location.INTERIOR;
  }

  private void joinScarsToBeds(
      List<Bed> beds, List<Scar> scars, ScarBoxes boxes, ConnectedSets sets) {
    List<int[]> near =
        beds.parallelStream().map(bed -> scarsNear(bed.geometry(), scars, boxes)).toList();
    for (int bed = 0; bed < near.size(); bed++) {
      for (int scar : near.get(bed)) {
        sets.join(bed, beds.size() + scar);
      }
    }
  }

  private static int[] scarsNear(Geometry bed, List<Scar> scars, ScarBoxes boxes) {
    int[] candidates = boxes.nearBed(bed.getEnvelopeInternal());
    if (candidates.length == 0) {
      return candidates;
    }
    PreparedGeometry prepared = PreparedGeometryFactory.prepare(bed);
    IndexedFacetDistance distance = new IndexedFacetDistance(bed);
    return Arrays.stream(candidates)
        .filter(
            i -> {
              Geometry scar = scars.get(i).geometry();
              return prepared.intersects(scar) || distance.isWithinDistance(scar, boxes.toBeds(i));
            })
        .toArray();
  }

  private static void joinScars(
      int bedCount, List<Scar> scars, ScarBoxes boxes, ConnectedSets sets) {
    for (int i = 0; i < scars.size(); i++) {
      Geometry scar = null;
      for (int j : boxes.nearScar(i)) {
        if (j <= i || sets.areJoined(bedCount + i, bedCount + j)) {
          continue;
        }
        if (scar == null) {
          scar = scars.get(i).geometry();
        }
        if (DistanceOp.isWithinDistance(
            scar, scars.get(j).geometry(), boxes.reach(i) + boxes.reach(j))) {
          sets.join(bedCount + i, bedCount + j);
        }
      }
    }
  }

  /** Whether so many scars are near one meadow that all are cut in tiles. */
  private static boolean anyVastMeadow(List<Bed> beds, List<Pair> pairs, ScarBoxes boxes) {
    int most = InteractionReach.mostScarsOfUntiledMeadow();
    if (boxes.count() <= most) {
      return false;
    }
    ConnectedSets meadows = new ConnectedSets(beds.size());
    pairs.stream().filter(Pair::touching).forEach(pair -> meadows.join(pair.first, pair.second));
    return meadows.members().parallelStream()
        .map(
            members -> {
              Envelope extent = new Envelope();
              members.forEach(
                  bed -> extent.expandToInclude(beds.get(bed).geometry().getEnvelopeInternal()));
              return boxes.countMeeting(extent);
            })
        .anyMatch(count -> count > most);
  }

  private static List<Integer> query(HPRtree index, Envelope box, double distance) {
    Envelope around = new Envelope(box);
    around.expandBy(distance);
    List<Integer> found = new ArrayList<>();
    index.query(around, item -> found.add((Integer) item));
    found.sort(null);
    return found;
  }
}
