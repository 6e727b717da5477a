package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProposalSheetsTest {
  @TempDir Path folder;

  @Test
  void writesAPageAndAPdf() throws Exception {
    long a = System.nanoTime();
    ProposalSheets.write(folder, List.of(InventedSheets.full()));
    assertThat(folder.resolve("proposals/Z1.html")).exists();
    assertThat(folder.resolve("proposals/Z1.pdf")).exists();
    if (System.getProperty("look") != null) {
      Path out = Files.createDirectories(Path.of(System.getProperty("look")));
      for (String n : List.of("Z1.html", "Z1.pdf")) {
        Files.copy(
            folder.resolve("proposals").resolve(n),
            out.resolve(n),
            java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }
}
