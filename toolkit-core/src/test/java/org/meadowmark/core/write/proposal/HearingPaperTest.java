package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.InventedSurvey;

class HearingPaperTest {
  private static final List<HearingAnswer> ANSWERS =
      List.of(new HearingAnswer("How much?", "Some of it: <script>alert(1)</script> & more."));
  private static final List<SheetInput> INPUTS =
      List.of(new SheetInput("beds.gpkg", "0123456789abcdef0123456789abcdef"));

  @TempDir private Path folder;

  @Test
  void holdsAnswersMapTablesAndCautionsOnAFewPages() throws Exception {
    AssessedSurvey survey = InventedSurvey.survey();
    HearingPaper.write(folder, survey, ANSWERS, INPUTS, "0");
    byte[] bytes = Files.readAllBytes(folder.resolve(HearingPaper.FILE_NAME));
    Files.write(Files.createDirectories(Path.of("target", "look")).resolve("hearing.pdf"), bytes);
    try (PDDocument pdf = Loader.loadPDF(bytes)) {
      assertThat(pdf.getNumberOfPages()).isBetween(1, 4);
      String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
      assertThat(text)
          .contains("How much?", "<script>alert(1)</script> & more.")
          .contains("Heron Bight", "whole survey")
          .contains("Pelican Cut S2")
          .contains("Grid north is up", "Not for navigation")
          .contains("“No scar seen” is not", "permits")
          .contains("beds.gpkg 0123456789ab");
    }
    Path second = Files.createDirectory(folder.resolve("second"));
    HearingPaper.write(second, survey, ANSWERS, INPUTS, "0");
    assertThat(second.resolve(HearingPaper.FILE_NAME)).hasBinaryContent(bytes);
  }
}
