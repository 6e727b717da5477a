package org.meadowmark.core.change.comparability;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.survey.PositionalAccuracy;
import org.meadowmark.core.survey.SurveyFacts;

/**
 * What decides whether a survey can be compared with another.
 *
 * @param name name of the survey
 * @param date day of the survey
 * @param facts how it was made, as far as stated
 * @param pixelSizeMetres ground size of a pixel of its imagery, where stated
 * @param accuracy error of its positions, where stated
 * @param scarCrs reference system of the file of scars, as a label
 * @param channels digest of the channels' shapes: equal where the channels are
 */
public record SurveyTraits(
    String name,
    LocalDate date,
    SurveyFacts facts,
    OptionalDouble pixelSizeMetres,
    Optional<PositionalAccuracy> accuracy,
    String scarCrs,
    int channels) {}
