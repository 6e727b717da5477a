package org.meadowmark.core.write.proposal;

import java.util.Objects;

/**
 * A question that is asked at a hearing, and what the survey says.
 *
 * @param question the question
 * @param answer the answer
 */
public record HearingAnswer(String question, String answer) {

  /**
   * Takes both as plain text.
   *
   * @param question the question
   * @param answer the answer
   * @throws NullPointerException if anything is null
   */
  public HearingAnswer {
    Objects.requireNonNull(question, "question");
    Objects.requireNonNull(answer, "answer");
  }
}
