package org.meadowmark.core.model;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PlainTextTest {
  @Test
  void putsBlanksForWhatMovesOrTurns() {
    assertThat(PlainText.line("a\u001b[2J\nb\u202Ec\u2028d\uD800e\u0085f"))
        .isEqualTo("a [2J b c d e f");
    assertThat(PlainText.line("Île \u200Fשלום 海草 \uD83C\uDF3F"))
        .isEqualTo("Île \u200Fשלום 海草 \uD83C\uDF3F");
  }

  @Test
  void cutsWhatIsVeryLong() {
    assertThat(PlainText.line("n".repeat(50), 10)).isEqualTo("n".repeat(9) + "…");
    assertThat(new MeadowmarkException("f: " + "n".repeat(5_000) + "; do this").getMessage())
        .endsWith("; do this")
        .hasSizeLessThan(2_000);
  }
}
