package org.meadowmark.core.model;

import java.util.Objects;
import java.util.Optional;

/**
 * What a survey noted about the ground and the grass, each where it was noted at all.
 *
 * @param isMuck whether the bottom is bare muck
 * @param isGrazed whether leaf tips are squared off, the sign of grazing
 * @param isScarredAgain whether boats keep scarring the same line
 */
public record SiteNotes(
    Optional<Boolean> isMuck, Optional<Boolean> isGrazed, Optional<Boolean> isScarredAgain) {
  /** Nothing was noted. */
  public static final SiteNotes NONE =
      new SiteNotes(Optional.empty(), Optional.empty(), Optional.empty());

  /**
   * Refuses a note that is null; one that was not made is empty.
   *
   * @param isMuck whether the bottom is bare muck
   * @param isGrazed whether leaf tips are squared off, the sign of grazing
   * @param isScarredAgain whether boats keep scarring the same line
   * @throws NullPointerException if anything is null
   */
  public SiteNotes {
    Objects.requireNonNull(isMuck, "isMuck");
    Objects.requireNonNull(isGrazed, "isGrazed");
    Objects.requireNonNull(isScarredAgain, "isScarredAgain");
  }

  /**
   * {@return these notes, with those of a wider place where one is missing}
   *
   * @param wider notes of a place that holds this one, such as the bed that holds a scar
   */
  public SiteNotes orElse(SiteNotes wider) {
    return new SiteNotes(
        isMuck.or(wider::isMuck),
        isGrazed.or(wider::isGrazed),
        isScarredAgain.or(wider::isScarredAgain));
  }
}
