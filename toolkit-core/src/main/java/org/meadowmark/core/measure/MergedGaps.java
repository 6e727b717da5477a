package org.meadowmark.core.measure;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.RandomAccess;
import org.meadowmark.core.measure.PartEvidence.GapRow;
import org.meadowmark.core.model.KeptElsewhere;

/**
 * The gaps of all parts, in the order of the survey.
 *
 * @param columns scar, patches and smallest width of each; their geometry is in the rows
 * @param list the gaps, each read when it is asked for
 * @param scarIds ids of all scars, in order
 */
record MergedGaps(GapColumns columns, List<Gap> list, String[] scarIds) {
  private static final int[] NO_RUNS = {};

  static MergedGaps of(
      List<MergedPart> parts, MergedOrder.Places scars, MergedPatches patches, List<GapRow> rows) {
    int[][] starts = new int[parts.size()][];
    int count = 0;
    for (int p = 0; p < starts.length; p++) {
      MergedPart part = parts.get(p);
      starts[p] = new int[part.scarIds().length + 1];
      for (int scar : part.gaps().scars()) {
        starts[p][scar + 1]++;
      }
      Arrays.parallelPrefix(starts[p], Integer::sum);
      count += part.gaps().scars().length;
    }
    GapColumns columns = new GapColumns();
    int[] rowOf = new int[count];
    String[] scarIds = new String[scars.parts().length];
    for (int scar = 0; scar < scarIds.length; scar++) {
      int p = scars.parts()[scar];
      int local = scars.locals()[scar];
      MergedPart part = parts.get(p);
      scarIds[scar] = part.scarIds()[local];
      for (int i = starts[p][local]; i < starts[p][local + 1]; i++) {
        rowOf[columns.count()] = part.starts().gaps() + i;
        columns.add(
            new RawGap(
                scar,
                patches.numbers()[p][part.gaps().firsts()[i]],
                patches.numbers()[p][part.gaps().seconds()[i]],
                Double.NaN,
                OptionalDouble.empty(),
                Double.NaN,
                NO_RUNS,
                Optional.empty()));
      }
    }
    return new MergedGaps(columns, new Described(columns, rows, rowOf, scarIds), scarIds);
  }

  String scarId(int scar) {
    return scarIds[scar];
  }

  private static final class Described extends AbstractList<Gap>
      implements RandomAccess, KeptElsewhere {
    private final GapColumns columns;
    private final List<GapRow> rows;
    private final int[] rowOf;
    private final String[] scarIds;

    Described(GapColumns columns, List<GapRow> rows, int[] rowOf, String[] scarIds) {
      this.columns = columns;
      this.rows = rows;
      this.rowOf = rowOf;
      this.scarIds = scarIds;
    }

    @Override
    public int size() {
      return rowOf.length;
    }

    @Override
    public Gap get(int i) {
      GapRow row = rows.get(rowOf[i]);
      return new Gap(
          "G" + (i + 1),
          scarIds[columns.scar(i)],
          PatchMap.patchId(columns.first(i)),
          PatchMap.patchId(columns.second(i)),
          row.minimumWidthMetres(),
          Double.isNaN(row.meanWidthMetres())
              ? OptionalDouble.empty()
              : OptionalDouble.of(row.meanWidthMetres()),
          row.lengthMetres(),
          row.geometry());
    }
  }
}
