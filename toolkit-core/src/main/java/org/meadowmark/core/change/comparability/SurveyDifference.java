package org.meadowmark.core.change.comparability;

import org.meadowmark.core.change.Season;

/**
 * How two surveys that follow each other differ in one aspect.
 *
 * @param season between which surveys
 * @param aspect in what
 * @param judgement what it means for comparing them
 * @param earlier the earlier survey's value, or empty where it is not stated
 * @param later the later survey's value
 * @param words what follows, in a sentence
 */
public record SurveyDifference(
    Season season, Aspect aspect, Judgement judgement, String earlier, String later, String words) {

  /** What a difference means. */
  public enum Judgement {
    /** No difference that matters. */
    ALIKE("alike"),
    /** A difference to bear in mind. */
    DIFFERENT("different"),
    /** Not known for one of the surveys. */
    NOT_STATED("not stated"),
    /** So different that a comparison would mislead. */
    UNSAFE("unsafe");

    private final String label;

    Judgement(String label) {
      this.label = label;
    }

    /** {@return words for tables} */
    public String label() {
      return label;
    }
  }
}
