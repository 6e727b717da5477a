package org.meadowmark.core.measure;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.measure.Measurement.ScarredGrass;
import org.meadowmark.core.measure.PartEvidence.PatchRow;

/**
 * The columns of a part that stay in memory while others come.
 *
 * @param starts where its rows begin in the rows of all
 * @param scarIds ids of its scars
 * @param inBedEnds for each scar the end of its rows among those of scars in beds
 * @param bedIds ids of its beds
 * @param grassEnds for each bed the end of its rows among those of scarred grass
 * @param meadowIds first bed of each meadow
 * @param before patches before scarring
 * @param after patches after it
 * @param crumbMeadowsBefore meadow of each crumb before scarring
 * @param crumbMeadowsAfter the same after it
 * @param gaps gaps
 * @param lines lines of totals
 */
record MergedPart(
    Starts starts,
    String[] scarIds,
    int[] inBedEnds,
    String[] bedIds,
    int[] grassEnds,
    String[] meadowIds,
    Patches before,
    Patches after,
    int[] crumbMeadowsBefore,
    int[] crumbMeadowsAfter,
    Gaps gaps,
    List<PartEvidence.Line> lines) {

  /** Number of rows of the parts before. */
  record Starts(
      int scars, int scarsInBeds, int beds, int scarredGrass, int before, int after, int gaps) {}

  /**
   * Patches in columns.
   *
   * @param keys five numbers a patch that it is sorted by: corners of its envelope, area
   * @param meadows meadow
   * @param nearest nearest other in the part, -1 for none
   * @param nearestMetres how far that is
   */
  record Patches(double[] keys, int[] meadows, int[] nearest, double[] nearestMetres) {
    static final int KEYS = 5;

    int count() {
      return meadows.length;
    }

    Envelope extent(int i) {
      return new Envelope(
          keys[KEYS * i], keys[KEYS * i + 2], keys[KEYS * i + 1], keys[KEYS * i + 3]);
    }

    static Patches of(List<PatchRow> rows) {
      double[] keys = new double[KEYS * rows.size()];
      for (int i = 0; i < rows.size(); i++) {
        Envelope extent = rows.get(i).geometry().getEnvelopeInternal();
        keys[KEYS * i] = extent.getMinX();
        keys[KEYS * i + 1] = extent.getMinY();
        keys[KEYS * i + 2] = extent.getMaxX();
        keys[KEYS * i + 3] = extent.getMaxY();
        keys[KEYS * i + 4] = rows.get(i).geometry().getArea();
      }
      return new Patches(
          keys,
          rows.stream().mapToInt(PatchRow::meadow).toArray(),
          rows.stream().mapToInt(PatchRow::nearest).toArray(),
          rows.stream().mapToDouble(PatchRow::nearestMetres).toArray());
    }
  }

  /** Gaps in columns, by scar. */
  record Gaps(int[] scars, int[] firsts, int[] seconds) {}

  static MergedPart of(PartEvidence.Content part, Starts starts) {
    return new MergedPart(
        starts,
        part.scars().stream().map(scar -> scar.scar().id()).toArray(String[]::new),
        ends(
            part.scars().stream().map(scar -> scar.scar().id()).toList(),
            part.scarsInBeds().stream().map(ScarInBed::scarId).toList()),
        part.beds().stream().map(bed -> bed.bed().id()).toArray(String[]::new),
        ends(
            part.beds().stream().map(bed -> bed.bed().id()).toList(),
            part.scarredGrass().stream().map(ScarredGrass::bedId).toList()),
        part.meadows().toArray(String[]::new),
        Patches.of(part.before()),
        Patches.of(part.after()),
        part.crumbMeadowsBefore(),
        part.crumbMeadowsAfter(),
        new Gaps(
            part.gaps().stream().mapToInt(PartEvidence.GapRow::scar).toArray(),
            part.gaps().stream().mapToInt(PartEvidence.GapRow::first).toArray(),
            part.gaps().stream().mapToInt(PartEvidence.GapRow::second).toArray()),
        part.lines());
  }

  /** For each owner the end of its rows, which come in the order of the owners. */
  private static int[] ends(List<String> owners, List<String> ownerOfRow) {
    Map<String, Integer> counts = new HashMap<>();
    ownerOfRow.forEach(owner -> counts.merge(owner, 1, Integer::sum));
    int[] ends = new int[owners.size()];
    int end = 0;
    for (int i = 0; i < ends.length; i++) {
      end += counts.getOrDefault(owners.get(i), 0);
      ends[i] = end;
    }
    return ends;
  }

  Patches patches(boolean isAfter) {
    return isAfter ? after : before;
  }

  int[] crumbMeadows(boolean isAfter) {
    return isAfter ? crumbMeadowsAfter : crumbMeadowsBefore;
  }

  int start(boolean isAfter) {
    return isAfter ? starts.after : starts.before;
  }
}
