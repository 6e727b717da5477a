package org.meadowmark.core.assessment.comparison;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.assessment.SurveyLoader;
import org.meadowmark.core.change.CommonGround;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.comparability.SurveyComparison;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.change.match.ScarMatcher;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.change.rates.ReScarring;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.project.PointProjector;
import org.meadowmark.core.rank.evidence.EarlierScars;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.ComparedSurveys.ReadSurvey;
import org.meadowmark.core.write.record.FileDigest;

/** Earlier surveys of a place, for what they tell of the scars of the survey that is assessed. */
public final class EarlierSurveys {
  private static final PositionalAccuracy NOT_STATED = PositionalAccuracy.ofRadialRmse(0);

  private final List<SurveyDefinition> earlier;
  private final ReferenceTables tables;
  private final Progress progress;
  private final Map<String, List<FileDigest>> inputs = new LinkedHashMap<>();

  /**
   * Names the surveys.
   *
   * @param earlier surveys in any order, one or more
   * @param tables reference tables
   * @param progress hears how far the work is
   * @throws MeadowmarkException if one has no date
   */
  public EarlierSurveys(List<SurveyDefinition> earlier, ReferenceTables tables, Progress progress) {
    for (SurveyDefinition survey : earlier) {
      requireDate(survey);
    }
    this.earlier =
        earlier.stream()
            .sorted(Comparator.comparing((SurveyDefinition survey) -> survey.date().orElseThrow()))
            .toList();
    this.tables = tables;
    this.progress = progress;
  }

  private static void requireDate(SurveyDefinition survey) {
    if (survey.date().isEmpty()) {
      throw new MeadowmarkException(
          survey.name() + ": has no date; give 'date' under [survey] in its survey file");
    }
  }

  /**
   * {@return digests of the files that were read, by name of the survey; empty before {@link
   * #scars}}
   */
  public Map<String, List<FileDigest>> inputs() {
    return Collections.unmodifiableMap(inputs);
  }

  /**
   * Holds a survey against the earlier ones: the last of them is matched with it, all of them tell
   * where the ground was scarred before.
   *
   * @param definition the survey that is assessed
   * @param loaded the same as read
   * @return what the earlier surveys tell about the scars of this one
   * @throws MeadowmarkException if an earlier survey cannot be used, is not earlier, or cannot
   *     safely be compared
   */
  public EarlierScars scars(SurveyDefinition definition, LoadedSurvey loaded) {
    requireDate(definition);
    SurveyDefinition last = earlier.get(earlier.size() - 1);
    if (!last.date().orElseThrow().isBefore(definition.date().orElseThrow())) {
      throw new MeadowmarkException(
          last.name() + ": is not earlier than " + definition.name() + "; give earlier surveys");
    }
    MetricSurvey survey = loaded.orThrow();
    String grid = PointProjector.gridCode(survey.gridLabel());
    List<MetricSurvey> mapped = new ArrayList<>();
    ReadSurvey lastRead = null;
    for (SurveyDefinition one : earlier) {
      SurveyLoader.Watched watched =
          new SurveyLoader(one.withParameters(one.parameters().onGrid(grid)), tables, progress)
              .loadWatched();
      LoadedSurvey read = watched.loaded();
      mapped.add(read.orThrow());
      inputs.computeIfAbsent(one.name(), name -> new ArrayList<>()).addAll(watched.inputs());
      lastRead = new ReadSurvey(one, read.findings(), read.counts());
    }
    MetricSurvey before = mapped.get(mapped.size() - 1);
    SurveyComparison.refusal(
            SurveyComparison.of(
                Traits.of(lastRead, before),
                Traits.of(new ReadSurvey(definition, loaded.findings(), loaded.counts()), survey),
                CommonGround.of(before, survey),
                definition.parameters().comparison()),
            Set.of())
        .ifPresent(
            reason -> {
              throw new MeadowmarkException(
                  reason.substring(0, reason.indexOf("; compare them")) + "; leave --earlier away");
            });
    SeasonMatch match =
        new ScarMatcher(definition.parameters().matching())
            .match(season(last, before), season(definition, survey), progress);
    Map<String, Double> newShares = new HashMap<>();
    for (ScarChange change : match.later()) {
      if (change.change() != ChangeClass.NOT_COMPARABLE && change.lengthMetres() > 0) {
        newShares.put(change.id(), change.unassignedMetres() / change.lengthMetres());
      }
    }
    return new EarlierScars(newShares, ReScarring.of(mapped, survey, match));
  }

  private static SeasonSurvey season(SurveyDefinition definition, MetricSurvey survey) {
    return new SeasonSurvey(
        definition.date().orElseThrow(),
        survey,
        definition.parameters().position().orElse(NOT_STATED));
  }
}
