package org.meadowmark.core.write.folder;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.InventedSurvey;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.RunRecord;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.record.Versions;

class ResultFilesTest {
  @TempDir Path home;

  @Test
  void writesTablesLayersChartsSummaryAndRecord() throws IOException {
    Path out = home.resolve("out");
    new OutputFolder(out, false).write(files(Instant.parse("2025-05-01T10:00:00Z")));
    List<String> written = FolderTree.files(out);
    assertThat(written)
        .hasSize(14 + 1 + 3 + 1 + 1)
        .contains(
            "tables/beds.csv",
            "results.gpkg",
            "charts/severity-by-area.png",
            "charts/gap-widths.png",
            "charts/ranked-segments.png",
            "summary.txt",
            RunRecord.FILE_NAME);
    JsonNode record = new ObjectMapper().readTree(out.resolve(RunRecord.FILE_NAME).toFile());
    List<String> listed = new ArrayList<>();
    for (JsonNode output : record.path("outputs")) {
      String file = output.path("file").asText();
      listed.add(file);
      assertThat(FileDigest.of(file, out.resolve(file)).sha256())
          .isEqualTo(output.path("sha256").asText());
    }
    listed.add(RunRecord.FILE_NAME);
    assertThat(listed).containsExactlyInAnyOrderElementsOf(written);
    new OutputFolder(out, true).write(files(Instant.parse("2025-05-02T10:00:00Z")));
  }

  @Test
  void onlyTheRunRecordDiffersBetweenTwoRuns() throws IOException {
    Path first = home.resolve("first");
    Path second = home.resolve("second");
    new OutputFolder(first, false).write(files(Instant.parse("2025-05-01T10:00:00Z")));
    new OutputFolder(second, false).write(files(Instant.parse("2026-01-09T23:00:00Z")));
    for (String file : FolderTree.files(first)) {
      boolean same = Files.mismatch(first.resolve(file), second.resolve(file)) < 0;
      assertThat(same).as(file).isEqualTo(!file.equals(RunRecord.FILE_NAME));
    }
  }

  private static ResultFiles files(Instant now) {
    AssessedSurvey survey = InventedSurvey.survey();
    return new ResultFiles(
        survey,
        List.of(new FileDigest("scars.gpkg", 3, "00")),
        new Versions("test", "17", Map.of()),
        Map.of(),
        now.minusSeconds(5),
        new StageMeter(),
        Clock.fixed(now, ZoneOffset.UTC),
        Progress.NONE);
  }
}
