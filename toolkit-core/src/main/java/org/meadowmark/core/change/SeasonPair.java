package org.meadowmark.core.change;

import org.meadowmark.core.change.match.SeasonMatch;

/**
 * Two surveys that follow each other, matched.
 *
 * @param earlier the earlier survey
 * @param later the later survey
 * @param match which scar is which
 * @param ground what both looked at
 */
public record SeasonPair(
    MeasuredSeason earlier, MeasuredSeason later, SeasonMatch match, CommonGround ground) {

  /** {@return the time between them} */
  public Season season() {
    return new Season(earlier.date(), later.date());
  }
}
