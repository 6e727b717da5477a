package org.meadowmark.core.write;

import java.util.Locale;
import org.meadowmark.core.rank.ChannelSegment;

/** Name of a channel segment for people. */
public final class SegmentLabel {
  private SegmentLabel() {}

  /**
   * {@return the segment's id, with the channel's name before it where the id does not spell that
   * out}
   *
   * @param segment the segment; case, blanks and signs do not count when its id and its channel are
   *     compared
   */
  public static String of(ChannelSegment segment) {
    String channel = letters(segment.channel());
    boolean spelt = !channel.isEmpty() && letters(segment.id()).startsWith(channel);
    return spelt ? segment.id() : segment.channel() + " " + segment.id();
  }

  private static String letters(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
  }
}
