package org.meadowmark.core.rank.score;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.meadowmark.core.rank.evidence.EdgeContact;
import org.meadowmark.core.rank.evidence.ScarDepth;
import org.meadowmark.core.rank.evidence.SegmentEvidence;
import org.meadowmark.core.rank.statistics.SegmentStatistics;
import org.meadowmark.core.survey.ScoreTerm;

/**
 * The terms of the score of every segment, each in 0–1, not a number where it is missing.
 *
 * <ul>
 *   <li>Rate, scarred area and connectivity: {@link RelativeSize}.
 *   <li>Hot spot: 1 − 2p of the one-sided pseudo p-value, at least 0, so 0 where chance gives as
 *       high a value half the time.
 *   <li>Edge, shallow water: the rate's term times the share of scar length, so that few scars do
 *       not count as much as many. A segment without scars has 0: there is nothing that a marker
 *       could keep off.
 *   <li>Severity: mean class of the bed in reach.
 * </ul>
 */
final class TermTable {
  private final double[][] values = new double[ScoreTerm.values().length][];
  private final RelativeSize scarredAreaScale;
  private final int[] missingBits;
  private final int everMissing;

  private TermTable(
      List<SegmentEvidence> evidence, List<SegmentStatistics> statistics, double[] exposures) {
    int size = evidence.size();
    double[] scarred = new double[size];
    for (int i = 0; i < size; i++) {
      scarred[i] = evidence.get(i).scarredArea().squareMetres() / exposures[i];
    }
    scarredAreaScale = RelativeSize.among(scarred);
    double[] rates = relative(column(statistics, s -> s.rate().estimate().orElse(Double.NaN)));
    put(ScoreTerm.RATE, rates);
    put(ScoreTerm.HOT_SPOT, column(statistics, s -> sureness(s.pValue())));
    put(
        ScoreTerm.EDGE,
        shareOf(rates, column(evidence, e -> e.edge().map(EdgeContact::lengthShare).orElse(0.0))));
    put(ScoreTerm.SHALLOW, shareOf(rates, column(evidence, TermTable::shallow)));
    put(ScoreTerm.SCARRED_AREA, scarredAreaScale.of(scarred));
    put(ScoreTerm.SEVERITY, column(evidence, e -> e.meanSeverity().orElse(Double.NaN)));
    put(
        ScoreTerm.CONNECTIVITY,
        relative(column(evidence, e -> e.connectivityGainHectares().orElse(Double.NaN))));
    put(ScoreTerm.RE_SCARRING, column(evidence, e -> e.reScarredShare().orElse(Double.NaN)));
    if (evidence.stream().noneMatch(e -> e.depth().isPresent())) {
      Arrays.fill(values[ScoreTerm.SHALLOW.ordinal()], Double.NaN);
    }
    missingBits = new int[size];
    int all = (1 << values.length) - 1;
    for (int i = 0; i < size; i++) {
      for (int t = 0; t < values.length; t++) {
        missingBits[i] |= Double.isNaN(values[t][i]) ? 1 << t : 0;
      }
      all &= missingBits[i];
    }
    everMissing = all;
  }

  static TermTable of(
      List<SegmentEvidence> evidence, List<SegmentStatistics> statistics, double[] exposures) {
    return new TermTable(evidence, statistics, exposures);
  }

  private void put(ScoreTerm term, double[] column) {
    values[term.ordinal()] = column;
  }

  private static <T> double[] column(List<T> rows, ToDoubleFunction<T> value) {
    return rows.stream().mapToDouble(value).toArray();
  }

  private static double[] relative(double[] sizes) {
    return RelativeSize.among(sizes).of(sizes);
  }

  private static double[] shareOf(double[] terms, double[] shares) {
    return IntStream.range(0, terms.length).mapToDouble(i -> terms[i] * shares[i]).toArray();
  }

  private static double sureness(OptionalDouble p) {
    return p.isPresent() ? Math.max(0, 1 - 2 * p.getAsDouble()) : Double.NaN;
  }

  private static double shallow(SegmentEvidence evidence) {
    if (evidence.edge().isEmpty()) {
      return 0;
    }
    return evidence.depth().map(ScarDepth::shallowShare).orElse(Double.NaN);
  }

  int size() {
    return missingBits.length;
  }

  double value(int term, int segment) {
    return values[term][segment];
  }

  /** Bit t is set where the term at place t is missing. */
  int missingBits(int segment) {
    return missingBits[segment];
  }

  /** Whether a term is missing everywhere, so that its absence favours no segment. */
  boolean isMissingEverywhere(ScoreTerm term) {
    return (everMissing & 1 << term.ordinal()) != 0;
  }

  RelativeSize scarredAreaScale() {
    return scarredAreaScale;
  }

  /** Median of a term over the segments where it is known. */
  double median(int term) {
    return RelativeSize.median(
        Arrays.stream(values[term]).filter(value -> !Double.isNaN(value)).toArray());
  }
}
