package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Gaps with a width in one class.
 *
 * @param fromMetres lower end of the class, included
 * @param toMetres upper end, not included; empty for the last class, which has none
 * @param count gaps in it
 */
public record GapBin(double fromMetres, OptionalDouble toMetres, int count) {
  /** Widths are compared as tables write them: a computed 0.3999999997 is a width of 0.4. */
  private static final double DECIMAL_SHIFT = 1e6;

  /**
   * Counts widths; the first class starts at 0, the last has no upper end.
   *
   * @param widthsMetres widths
   * @param limitsMetres limits between classes, ascending, above 0
   */
  static List<GapBin> count(double[] widthsMetres, List<Double> limitsMetres) {
    int[] counts = new int[limitsMetres.size() + 1];
    for (double width : widthsMetres) {
      double rounded = Math.rint(width * DECIMAL_SHIFT) / DECIMAL_SHIFT;
      int place = 0;
      while (place < limitsMetres.size() && rounded >= limitsMetres.get(place)) {
        place++;
      }
      counts[place]++;
    }
    List<GapBin> bins = new ArrayList<>();
    double from = 0;
    for (int i = 0; i < counts.length; i++) {
      boolean last = i == limitsMetres.size();
      OptionalDouble to = last ? OptionalDouble.empty() : OptionalDouble.of(limitsMetres.get(i));
      bins.add(new GapBin(from, to, counts[i]));
      from = to.orElse(from);
    }
    return List.copyOf(bins);
  }
}
