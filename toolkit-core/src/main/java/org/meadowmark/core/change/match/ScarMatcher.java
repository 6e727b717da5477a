package org.meadowmark.core.change.match;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.CombinedAccuracy;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.match.Assignment.Assigned;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.survey.MatchingParameters;

/**
 * Matches the scars of two surveys.
 *
 * <ol>
 *   <li>Only what lies inside both surveyed areas is compared.
 *   <li>Two scars are a candidate pair where each has a stretch within the combined positional
 *       accuracy of the other ({@link CombinedAccuracy}), at a mean angle of at most {@code
 *       match_direction_deg}: scars that cross do not match. Stretches are exact, ends included.
 *   <li>Among scars that hang together through pairs, metres are assigned by the flow that is worth
 *       most, so that no metre on either side is assigned twice.
 *   <li>Classes follow from the links of at least {@code match_share} of the shorter scar.
 * </ol>
 *
 * <p>Lengths are ground metres of lines; a polygon counts half its perimeter, and its overlap is a
 * share of its area. What two surveys mapped farther apart than the tolerance, one time in twenty,
 * is taken as healed and new.
 *
 * <p>Time grows with n log n for n scars of a usual density, and with the pairs that lie near each
 * other; memory with scars and pairs. The result does not depend on the order of scars or threads.
 */
public final class ScarMatcher {
  private final MatchingParameters parameters;
  private final FlowSolver solver;

  /**
   * A matcher with some choices.
   *
   * @param parameters tolerance, angle and shares to match by
   */
  public ScarMatcher(MatchingParameters parameters) {
    this(parameters, FlowSolver.best());
  }

  ScarMatcher(MatchingParameters parameters, FlowSolver solver) {
    this.parameters = parameters;
    this.solver = solver;
  }

  /**
   * Matches two surveys on one grid.
   *
   * @param earlier the earlier survey
   * @param later the later survey
   * @param progress hears one step for each scar of the earlier survey
   * @return every scar of both with its class, and which is which
   * @throws IllegalArgumentException if the surveys lie on different grids, or the first is not the
   *     earlier one
   */
  public SeasonMatch match(SeasonSurvey earlier, SeasonSurvey later, Progress progress) {
    MetricSurvey before = earlier.survey();
    MetricSurvey after = later.survey();
    if (!before.gridLabel().equals(after.gridLabel())) {
      throw new IllegalArgumentException(
          "surveys on different grids: " + before.gridLabel() + ", " + after.gridLabel());
    }
    if (!earlier.date().isBefore(later.date())) {
      throw new IllegalArgumentException(
          "not the earlier survey: " + earlier.date() + ", " + later.date());
    }
    double tolerance =
        CombinedAccuracy.toleranceMetres(
            earlier.accuracy(), later.accuracy(), parameters.leastToleranceMetres());
    Optional<ComparableArea> area = ComparableArea.of(before, after);
    List<ComparedTrace> from = traces(before, area);
    List<ComparedTrace> to = traces(after, area);
    progress.begin("matching scars of " + earlier.date() + " and " + later.date(), from.size());
    CandidatePairs.Found found =
        new CandidatePairs(from, to, tolerance, parameters.directionDegrees()).find(progress);
    List<Assigned> links =
        Assignment.of(from, to, found.pairs(), tolerance, parameters.leastShare(), solver);
    SeasonMatch match = match(earlier, later, tolerance, from, to, found, links);
    progress.end();
    return match;
  }

  private SeasonMatch match(
      SeasonSurvey earlier,
      SeasonSurvey later,
      double tolerance,
      List<ComparedTrace> from,
      List<ComparedTrace> to,
      CandidatePairs.Found found,
      List<Assigned> links) {
    ChangeClasses classes =
        new ChangeClasses(from, to, links, tolerance, parameters.lengthChange());
    ScarChange[] before = new ScarChange[from.size()];
    for (int i = 0; i < before.length; i++) {
      before[i] = classes.ofEarlier(i, found.earlierCrowded()[i]);
    }
    ScarChange[] after = new ScarChange[to.size()];
    for (int i = 0; i < after.length; i++) {
      after[i] = classes.ofLater(i, found.laterCrowded()[i]);
    }
    return new SeasonMatch(
        earlier.date(),
        later.date(),
        tolerance,
        List.of(before),
        List.of(after),
        links.stream().map(link -> link(link, from, to)).toList());
  }

  private static ScarLink link(Assigned link, List<ComparedTrace> from, List<ComparedTrace> to) {
    double square = link.pair().meanSquare();
    return new ScarLink(
        from.get(link.pair().earlier()).trace().scar().id(),
        to.get(link.pair().later()).trace().scar().id(),
        link.earlierMetres(),
        link.laterMetres(),
        Double.isNaN(square) ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(square)),
        link.telling());
  }

  private static List<ComparedTrace> traces(MetricSurvey survey, Optional<ComparableArea> area) {
    List<Scar> scars =
        survey.scars().stream().sorted(Comparator.comparing(Scar::id, Ids.ORDER)).toList();
    return scars.parallelStream()
        .map(
            scar -> {
              var middle = scar.geometry().getEnvelopeInternal().centre();
              double factor = middle == null ? 1 : survey.scale().lengthFactor(middle.x, middle.y);
              return ComparedTrace.of(Trace.of(scar, factor), area);
            })
        .toList();
  }
}
