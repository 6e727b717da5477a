package org.meadowmark.core.write;

import java.util.List;
import java.util.Optional;
import org.meadowmark.core.change.MeasuredSeason;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.bed.SeasonBedChange;
import org.meadowmark.core.change.comparability.SurveyDifference;
import org.meadowmark.core.change.effect.MarkedSegment;
import org.meadowmark.core.change.effect.MarkerEffect;
import org.meadowmark.core.change.history.ScarHistory;
import org.meadowmark.core.change.rates.EdgeRateFit;
import org.meadowmark.core.change.rates.FigureChange;
import org.meadowmark.core.change.rates.HealingRate;
import org.meadowmark.core.change.rates.NewScarRate;
import org.meadowmark.core.change.rates.SegmentRate;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.SurveyDefinition;

/**
 * What a comparison of surveys found: what the output is written from.
 *
 * @param surveys the surveys in order of time, with what was read of each
 * @param seasons what was measured in each
 * @param pairs each survey with the one after it
 * @param histories what became of each scar over all surveys
 * @param bedChanges grass gained and lost between the bed layers of each pair
 * @param differences how they were made differently
 * @param despite keys of the differences that the user let pass
 * @param newScars new scars by season and area
 * @param healing healed scars by season and area, and by species and width
 * @param edgeRates rates of edges fitted from healing, by species
 * @param figureChanges change of grass by season and area
 * @param segmentRates new scars by season and channel segment
 * @param marks marked segments
 * @param effect whether the markers worked; empty where none were given
 * @param markerFindings what was wrong with the file of markers
 * @param parameters choices, those of the last survey
 * @param references reference tables
 */
public record ComparedSurveys(
    List<ReadSurvey> surveys,
    List<MeasuredSeason> seasons,
    List<SeasonPair> pairs,
    List<ScarHistory> histories,
    List<SeasonBedChange> bedChanges,
    List<SurveyDifference> differences,
    List<String> despite,
    List<NewScarRate> newScars,
    List<HealingRate> healing,
    List<EdgeRateFit> edgeRates,
    List<FigureChange> figureChanges,
    List<SegmentRate> segmentRates,
    List<MarkedSegment> marks,
    Optional<MarkerEffect> effect,
    List<Finding> markerFindings,
    Parameters parameters,
    ReferenceTables references) {

  /**
   * A survey as it was read.
   *
   * @param definition what it is
   * @param findings what was found wrong
   * @param counts features by layer
   */
  public record ReadSurvey(
      SurveyDefinition definition, List<Finding> findings, List<LayerCount> counts) {

    /**
     * Keeps copies of the lists that cannot be changed.
     *
     * @param definition what it is
     * @param findings what was found wrong
     * @param counts features by layer
     * @throws NullPointerException if a list, or anything in it, is null
     */
    public ReadSurvey {
      findings = List.copyOf(findings);
      counts = List.copyOf(counts);
    }
  }

  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param surveys the surveys in order of time, with what was read of each
   * @param seasons what was measured in each
   * @param pairs each survey with the one after it
   * @param histories what became of each scar over all surveys
   * @param bedChanges grass gained and lost between the bed layers of each pair
   * @param differences how they were made differently
   * @param despite keys of the differences that the user let pass
   * @param newScars new scars by season and area
   * @param healing healed scars by season and area, and by species and width
   * @param edgeRates rates of edges fitted from healing, by species
   * @param figureChanges change of grass by season and area
   * @param segmentRates new scars by season and channel segment
   * @param marks marked segments
   * @param effect whether the markers worked
   * @param markerFindings what was wrong with the file of markers
   * @param parameters choices, those of the last survey
   * @param references reference tables
   * @throws NullPointerException if a list, or anything in it, is null
   */
  public ComparedSurveys {
    surveys = List.copyOf(surveys);
    seasons = List.copyOf(seasons);
    pairs = List.copyOf(pairs);
    histories = List.copyOf(histories);
    bedChanges = List.copyOf(bedChanges);
    differences = List.copyOf(differences);
    despite = List.copyOf(despite);
    newScars = List.copyOf(newScars);
    healing = List.copyOf(healing);
    edgeRates = List.copyOf(edgeRates);
    figureChanges = List.copyOf(figureChanges);
    segmentRates = List.copyOf(segmentRates);
    marks = List.copyOf(marks);
    markerFindings = List.copyOf(markerFindings);
  }

  /** {@return the last survey, on whose grid and segments everything is given} */
  public MeasuredSeason last() {
    return seasons.get(seasons.size() - 1);
  }
}
