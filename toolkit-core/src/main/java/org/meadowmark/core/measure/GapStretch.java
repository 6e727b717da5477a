package org.meadowmark.core.measure;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/** What is known of a gap along a scar line while its steps are walked. Grid lengths. */
final class GapStretch {
  private double minimumWidth = Double.POSITIVE_INFINITY;
  private double widthTimesLength;
  private double length;
  private int[] runs = new int[2];
  private int used;

  /** Adds a step; steps come in ascending order. */
  void add(int step, double width, double stepLength) {
    minimumWidth = Math.min(minimumWidth, width);
    widthTimesLength += width * stepLength;
    length += stepLength;
    addRun(step, step);
  }

  private void addRun(int from, int to) {
    if (used > 0 && runs[used - 1] + 1 == from) {
      runs[used - 1] = to;
      return;
    }
    if (used == runs.length) {
      runs = Arrays.copyOf(runs, 2 * used);
    }
    runs[used++] = from;
    runs[used++] = to;
  }

  /** Adds what is known from elsewhere of the same gap; stretches come in order of their steps. */
  void add(GapStretch other) {
    minimumWidth = Math.min(minimumWidth, other.minimumWidth);
    widthTimesLength += other.widthTimesLength;
    length += other.length;
    for (int i = 0; i < other.used; i += 2) {
      addRun(other.runs[i], other.runs[i + 1]);
    }
  }

  int firstStep() {
    return runs[0];
  }

  private int[] runs() {
    return Arrays.copyOf(runs, used);
  }

  /** The gap that it makes. */
  RawGap gap(Footprint footprint, int first, int second) {
    double factor = footprint.lengthFactor();
    return new RawGap(
        footprint.index(),
        first,
        second,
        minimumWidth / factor,
        OptionalDouble.of(widthTimesLength / length / factor),
        length / factor,
        runs(),
        Optional.empty());
  }
}
