package org.meadowmark.core.measure;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.RandomAccess;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.MultiLineString;

/**
 * Gaps in columns, some 50 bytes each: a survey can have millions. A gap's geometry is made from
 * the scar's line when it is asked for.
 */
final class GapColumns {
  private int count;
  private int[] scars = new int[16];
  private int[] firsts = new int[16];
  private int[] seconds = new int[16];
  private double[] minimumWidths = new double[16];

  /** NaN for a polygon scar. */
  private double[] meanWidths = new double[16];

  private double[] lengths = new double[16];
  private int[] runEnds = new int[16];
  private int[] runs = new int[32];
  private final Map<Integer, MultiLineString> ways = new HashMap<>();

  void add(RawGap gap) {
    if (count == scars.length) {
      grow();
    }
    scars[count] = gap.scar();
    firsts[count] = gap.first();
    seconds[count] = gap.second();
    minimumWidths[count] = gap.minimumWidthMetres();
    meanWidths[count] = gap.meanWidthMetres().orElse(Double.NaN);
    lengths[count] = gap.lengthMetres();
    int start = runStart(count);
    int end = start + gap.runs().length;
    if (end > runs.length) {
      runs = Arrays.copyOf(runs, Math.max(end, grown(runs.length)));
    }
    System.arraycopy(gap.runs(), 0, runs, start, gap.runs().length);
    runEnds[count] = end;
    if (gap.way().isPresent()) {
      ways.put(count, gap.way().get());
    }
    count++;
  }

  private void grow() {
    int size = grown(count);
    scars = Arrays.copyOf(scars, size);
    firsts = Arrays.copyOf(firsts, size);
    seconds = Arrays.copyOf(seconds, size);
    minimumWidths = Arrays.copyOf(minimumWidths, size);
    meanWidths = Arrays.copyOf(meanWidths, size);
    lengths = Arrays.copyOf(lengths, size);
    runEnds = Arrays.copyOf(runEnds, size);
  }

  private static int grown(int size) {
    return size + Math.max(16, size / 2);
  }

  private int runStart(int gap) {
    return gap == 0 ? 0 : runEnds[gap - 1];
  }

  int count() {
    return count;
  }

  int scar(int gap) {
    return scars[gap];
  }

  int first(int gap) {
    return firsts[gap];
  }

  int second(int gap) {
    return seconds[gap];
  }

  double minimumWidthMetres(int gap) {
    return minimumWidths[gap];
  }

  double[] minimumWidthsMetres() {
    return Arrays.copyOf(minimumWidths, count);
  }

  private RawGap raw(int gap) {
    return new RawGap(
        scars[gap],
        firsts[gap],
        seconds[gap],
        minimumWidths[gap],
        Double.isNaN(meanWidths[gap]) ? OptionalDouble.empty() : OptionalDouble.of(meanWidths[gap]),
        lengths[gap],
        Arrays.copyOfRange(runs, runStart(gap), runEnds[gap]),
        Optional.ofNullable(ways.get(gap)));
  }

  /** Where a gap is, on the grid. */
  Geometry geometry(int gap, List<Footprint> footprints) {
    MultiLineString way = ways.get(gap);
    return way != null
        ? way
        : ScarSteps.stretches(
            footprints.get(scars[gap]).line(),
            Arrays.copyOfRange(runs, runStart(gap), runEnds[gap]));
  }

  /**
   * Gaps whose pieces have other numbers in the whole.
   *
   * @param gaps the gaps
   * @param numbers number in the whole of each piece
   */
  record Part(GapColumns gaps, int[] numbers) {}

  /** Parts put together, in order of scar, first and second piece. */
  static GapColumns of(List<Part> parts, int scarCount) {
    int[] ends = new int[scarCount + 1];
    for (Part part : parts) {
      for (int i = 0; i < part.gaps.count; i++) {
        ends[part.gaps.scars[i] + 1]++;
      }
    }
    Arrays.parallelPrefix(ends, Integer::sum);
    int[] next = ends.clone();
    long[] sources = new long[ends[scarCount]];
    for (int p = 0; p < parts.size(); p++) {
      GapColumns gaps = parts.get(p).gaps;
      for (int i = 0; i < gaps.count; i++) {
        sources[next[gaps.scars[i]]++] = (long) p << Integer.SIZE | i;
      }
    }
    GapColumns all = new GapColumns();
    for (int scar = 0; scar < scarCount; scar++) {
      IntStream.range(ends[scar], ends[scar + 1])
          .mapToObj(
              i -> {
                Part part = parts.get((int) (sources[i] >>> Integer.SIZE));
                RawGap gap = part.gaps.raw((int) sources[i]);
                return gap.between(part.numbers[gap.first()], part.numbers[gap.second()]);
              })
          .sorted(RawGap.ORDER)
          .forEach(all::add);
    }
    return all;
  }

  /** The gaps as records, each made when it is asked for. */
  List<Gap> asList(List<Footprint> footprints) {
    return new Records(this, footprints);
  }

  private static final class Records extends AbstractList<Gap> implements RandomAccess {
    private final GapColumns gaps;
    private final List<Footprint> footprints;

    Records(GapColumns gaps, List<Footprint> footprints) {
      this.gaps = gaps;
      this.footprints = footprints;
    }

    @Override
    public int size() {
      return gaps.count;
    }

    @Override
    public Gap get(int i) {
      RawGap gap = gaps.raw(i);
      return new Gap(
          "G" + (i + 1),
          footprints.get(gap.scar()).scar().id(),
          PatchMap.patchId(gap.first()),
          PatchMap.patchId(gap.second()),
          gap.minimumWidthMetres(),
          gap.meanWidthMetres(),
          gap.lengthMetres(),
          gaps.geometry(i, footprints));
    }
  }
}
