package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.model.LayerRole;

/** Keeps the documents about the command line true. */
class DocumentsTest {

  @Test
  void exitCodesAreThoseOfTheCode() throws IOException {
    List<String> rows =
        document("exit-codes.md").lines().filter(line -> line.matches("\\| \\d+ .*")).toList();

    assertThat(rows).hasSize(ExitCode.values().length);
    for (ExitCode code : ExitCode.values()) {
      assertThat(rows.get(code.value()))
          .startsWith("| " + code.value() + " | " + code.meaning() + " |");
    }
  }

  @Test
  void rolesStandBesideTheirOptions() throws IOException {
    String document = document("survey-file.md");

    for (LayerRole role : LayerRole.values()) {
      assertThat(document)
          .containsPattern(
              "(?m)^\\| `"
                  + role.key()
                  + "` \\| "
                  + role.description()
                  + ".* \\| `--"
                  + RoleName.optionOf(role)
                  + "` \\|$");
    }
  }

  private static String document(String name) throws IOException {
    return Files.readString(Path.of(System.getProperty("meadowmark.root"), "docs", name));
  }
}
