package org.meadowmark.cli;

import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.record.FindingsReport;

/** Reads and checks a survey without measuring it. */
@FunctionalInterface
interface CheckGateway {

  /**
   * What to check.
   *
   * @param survey the survey, complete
   * @param tables reference tables
   * @param threads how many threads to use at most
   */
  record Request(SurveyDefinition survey, ReferenceTables tables, int threads) {}

  /** Checks and returns everything found. */
  FindingsReport check(Request request, Progress progress);
}
