package org.meadowmark.core.change.match;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * A scar cut where the scars over it begin and end, so that each piece is covered by the same ones
 * all along. Pieces add up to the part of the scar that is compared; a polygon is one piece.
 */
final class Atoms {
  /** Capacities are whole millimetres. */
  static final double UNITS_PER_METRE = 1_000;

  private static final int MANY_CUTS = 16;
  private static final int PIECES_OF_MANY = 8;

  private final double[] middles;
  private final long[] units;

  private Atoms(double[] middles, long[] units) {
    this.middles = middles;
    this.units = units;
  }

  /**
   * Cuts a scar.
   *
   * @param scar the scar
   * @param covers stretches of each scar over it
   * @param tolerance in grid metres
   */
  static Atoms of(ComparedTrace scar, List<double[]> covers, double tolerance) {
    if (!scar.trace().isLine()) {
      return new Atoms(new double[] {0}, new long[] {units(scar.comparableMetres())});
    }
    double[] cuts = cuts(scar.spans(), covers, tolerance / 2);
    double[] middles = new double[cuts.length];
    long[] units = new long[cuts.length];
    int count = 0;
    for (int i = 1; i < cuts.length; i++) {
      double middle = (cuts[i - 1] + cuts[i]) / 2;
      if (Spans.contains(scar.spans(), middle)) {
        middles[count] = middle;
        units[count++] = units((cuts[i] - cuts[i - 1]) / scar.trace().lengthFactor());
      }
    }
    return new Atoms(Arrays.copyOf(middles, count), Arrays.copyOf(units, count));
  }

  static long units(double metres) {
    // So that a length written in millimetres stays what it is.
    return (long) Math.floor(metres * UNITS_PER_METRE + 1e-4);
  }

  /**
   * Where to cut. Where there are many cuts, those closer together than half the tolerance or an
   * eighth of the scar are one; the ends of the compared stretches stay where they are.
   */
  private static double[] cuts(double[] firm, List<double[]> covers, double apart) {
    record Cut(double at, boolean firm) {}
    List<Cut> all = new ArrayList<>();
    for (double end : firm) {
      all.add(new Cut(end, true));
    }
    for (double[] cover : covers) {
      for (double end : cover) {
        all.add(new Cut(end, false));
      }
    }
    all.sort(Comparator.comparingDouble(Cut::at));
    double reach = firm.length == 0 ? 0 : firm[firm.length - 1] - firm[0];
    double step = all.size() > MANY_CUTS ? Math.max(apart, reach / PIECES_OF_MANY) : 0;
    double[] cuts = new double[all.size()];
    int count = 0;
    int i = 0;
    while (i < all.size()) {
      double first = all.get(i).at;
      double last = first;
      double firmAt = all.get(i).firm ? first : Double.NaN;
      i++;
      while (i < all.size()
          && all.get(i).at - first <= step
          && !(all.get(i).firm && !Double.isNaN(firmAt))) {
        last = all.get(i).at;
        firmAt = all.get(i).firm ? last : firmAt;
        i++;
      }
      cuts[count++] = Double.isNaN(firmAt) ? (first + last) / 2 : firmAt;
    }
    return Arrays.copyOf(cuts, count);
  }

  int size() {
    return units.length;
  }

  long units(int atom) {
    return units[atom];
  }

  /** Whether a cover reaches over an atom; one without a place reaches everywhere. */
  boolean isUnder(int atom, double[] cover) {
    return cover.length == 0 || Spans.contains(cover, middles[atom]);
  }
}
