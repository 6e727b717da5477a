package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.rank.ChannelSegment;

class SegmentLabelTest {
  @ParameterizedTest
  @CsvSource({
    "corrowen-gut-0006, Corrowen Gut, corrowen-gut-0006",
    "channel-12-0001, channel 12, channel-12-0001",
    "channel-0001, Протока, Протока channel-0001",
    "S2, Pelican Cut, Pelican Cut S2",
    "a-0001, --, -- a-0001",
  })
  void namesTheChannelOnce(String id, String channel, String label) {
    assertThat(SegmentLabel.of(new ChannelSegment(id, channel, InventedSurvey.line(0, 0, 1, 0), 1)))
        .isEqualTo(label);
  }
}
