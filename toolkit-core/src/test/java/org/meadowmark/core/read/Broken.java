package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import org.assertj.core.api.AbstractStringAssert;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.survey.LayerSource;

/** Checks that a layer is refused as every layer must be: one line, one finding, no features. */
final class Broken {
  private Broken() {}

  static AbstractStringAssert<?> assertRefused(Path file) {
    return assertRefused(LayerSource.of(LayerRole.SCARS, file));
  }

  static AbstractStringAssert<?> assertRefused(LayerSource source) {
    SurveyInputException refusal =
        catchThrowableOfType(SurveyInputException.class, () -> ReadLayer.of(source));
    assertThat(refusal).as("refusal of " + source.file()).isNotNull();
    assertThat(refusal.finding().code()).isEqualTo(FindingCode.UNREADABLE_FILE);
    assertThat(refusal.finding().level()).isEqualTo(Level.ERROR);
    assertThat(refusal.finding().treatment()).isEqualTo(Treatment.REFUSED);
    assertThat(refusal.finding().role()).isEqualTo(source.role());
    assertThat(refusal.finding().where().file()).isEqualTo(source.fileLabel());
    assertThat(refusal.finding().action()).isNotBlank();
    assertThat(refusal.getMessage())
        .startsWith(source.fileLabel() + ": ")
        .doesNotContain("\n")
        .doesNotContain("Exception");
    return assertThat(refusal.getMessage().substring(source.fileLabel().length() + 2));
  }
}
