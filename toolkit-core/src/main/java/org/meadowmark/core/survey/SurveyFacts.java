package org.meadowmark.core.survey;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a survey was made, as far as it is stated: what decides how much of the damage it could see.
 *
 * @param method how it was made, in the surveyor's words
 * @param effortHours hours of looking, in the field or at imagery
 * @param secchiDepthMetres depth at which a Secchi disc went out of sight: how clear the water was
 */
public record SurveyFacts(
    Optional<String> method, OptionalDouble effortHours, OptionalDouble secchiDepthMetres) {
  /** Nothing is stated. */
  public static final SurveyFacts NONE =
      new SurveyFacts(Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());
}
