package org.meadowmark.core.measure;

import java.util.AbstractList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.RandomAccess;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.measure.MergedPart.Patches;
import org.meadowmark.core.measure.PartEvidence.PatchRow;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.KeptElsewhere;
import org.meadowmark.core.survey.Parameters;

/**
 * The whole patches of all parts, in the order of the survey.
 *
 * @param numbers for each part the number in the survey of each of its patches
 * @param rows row of each patch among those of all parts
 * @param nearest number of the nearest other, -1 for none
 * @param nearestMetres how far that is, NaN for none
 */
record MergedPatches(int[][] numbers, int[] rows, int[] nearest, double[] nearestMetres) {

  private record Place(int part, int local, int meadow, Patches patches) {
    static final Comparator<Place> IN_PART_ORDER =
        Comparator.comparingInt(Place::meadow).thenComparingInt(Place::local);

    double key(int i) {
      return patches.keys()[Patches.KEYS * local + i];
    }

    static Comparator<Place> byKeys() {
      Comparator<Place> order = Comparator.comparingDouble(place -> place.key(0));
      for (int i = 1; i < Patches.KEYS; i++) {
        int key = i;
        order = order.thenComparingDouble(place -> place.key(key));
      }
      return order.thenComparing(IN_PART_ORDER);
    }
  }

  static MergedPatches of(
      List<MergedPart> parts,
      boolean after,
      int[][] meadowRanks,
      GroundScale scale,
      Parameters parameters,
      List<PatchRow> rows) {
    List<Place> places =
        IntStream.range(0, parts.size())
            .boxed()
            .flatMap(
                p -> {
                  Patches patches = parts.get(p).patches(after);
                  return IntStream.range(0, patches.count())
                      .mapToObj(
                          i -> new Place(p, i, meadowRanks[p][patches.meadows()[i]], patches));
                })
            .sorted(after ? Place.byKeys() : Place.IN_PART_ORDER)
            .toList();
    int[][] numbers =
        parts.stream().map(part -> new int[part.patches(after).count()]).toArray(int[][]::new);
    int[] rowOf = new int[places.size()];
    for (int i = 0; i < rowOf.length; i++) {
      Place place = places.get(i);
      numbers[place.part][place.local] = i;
      rowOf[i] = parts.get(place.part).start(after) + place.local;
    }
    int[] nearest = new int[rowOf.length];
    double[] metres = new double[rowOf.length];
    for (int i = 0; i < rowOf.length; i++) {
      Place place = places.get(i);
      int local = place.patches.nearest()[place.local];
      nearest[i] = local < 0 ? -1 : numbers[place.part][local];
      metres[i] = place.patches.nearestMetres()[place.local];
    }
    // No patch of another part is within reach; beyond it one may be nearer than those of the part.
    double reach = ScopeSummary.reachMetres(parameters);
    int[] alone =
        IntStream.range(0, rowOf.length).filter(i -> nearest[i] < 0 || metres[i] > reach).toArray();
    if (alone.length > 0 && rowOf.length > 1 && parts.size() > 1) {
      List<Envelope> extents =
          places.stream().map(place -> place.patches.extent(place.local)).toList();
      List<PieceGraph.Nearest> found =
          new NearestAcross(scale, extents, i -> rows.get(rowOf[i]).geometry()).of(alone);
      for (int i = 0; i < alone.length; i++) {
        nearest[alone[i]] = found.get(i).piece();
        metres[alone[i]] = found.get(i).metres();
      }
    }
    return new MergedPatches(numbers, rowOf, nearest, metres);
  }

  int count() {
    return rows.length;
  }

  /** Patches as records, each read when it is asked for. */
  static final class Described extends AbstractList<Patch> implements RandomAccess, KeptElsewhere {
    private final MergedPatches patches;
    private final List<PatchRow> rows;
    private final PatchFigures figures;
    private final int[] groups;

    Described(MergedPatches patches, List<PatchRow> rows, PatchFigures figures, int[] groups) {
      this.patches = patches;
      this.rows = rows;
      this.figures = figures;
      this.groups = groups;
    }

    @Override
    public int size() {
      return groups.length;
    }

    @Override
    public Patch get(int i) {
      PatchRow row = rows.get(patches.rows[i]);
      return PatchMap.patch(
          i,
          row.geometry(),
          row.bedIds(),
          figures,
          patches.nearest[i] < 0
              ? Optional.empty()
              : Optional.of(new PieceGraph.Nearest(patches.nearest[i], patches.nearestMetres[i])),
          groups[i]);
    }
  }
}
