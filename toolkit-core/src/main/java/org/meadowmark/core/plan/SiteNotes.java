package org.meadowmark.core.plan;

import java.util.Optional;

/**
 * What the survey noted about the ground and the grass at a scar.
 *
 * @param isMuck whether the bottom is bare muck, where noted
 * @param isGrazed whether leaf tips are squared off, the sign of grazing, where noted
 */
public record SiteNotes(Optional<Boolean> isMuck, Optional<Boolean> isGrazed) {
  /** Nothing was noted. */
  public static final SiteNotes NONE = new SiteNotes(Optional.empty(), Optional.empty());
}
