package org.meadowmark.core.write.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.write.InventedSurvey;

class FindingsReportTest {
  @Test
  void groupsFindingsAndListsEachOnALine() {
    FindingsReport report = new FindingsReport(InventedSurvey.findings(), InventedSurvey.counts());
    assertThat(report.lines(10))
        .containsExactly(
            "scars.gpkg: scars: scars: 6 read, 4 used (0 repaired), 2 skipped, in EPSG:4326",
            "beds.shp: beds: beds: 3 read, 3 used (1 repaired), 0 skipped, in EPSG:2882",
            "",
            "warning: invalid polygon (1)",
            "  beds.shp: beds: 2: invalid polygon; repaired",
            "",
            "warning: zero length or zero area (2)",
            "  scars.gpkg: scars: 7: zero length or zero area; skipped",
            "  scars.gpkg: scars: 12: zero length or zero area; skipped",
            "",
            "note: no width given (1)",
            "  scars.gpkg: scars: 10: no width given; default used",
            "",
            "0 errors, 3 warnings, 1 note");
  }

  @Test
  void textStopsAtTheLimitAndJsonDoesNot() throws IOException {
    List<Finding> many = new ArrayList<>();
    for (int i = 0; i < 2_500; i++) {
      many.add(
          InventedSurvey.finding(
              FindingCode.DUPLICATE_SCAR,
              Treatment.SKIPPED,
              LayerRole.SCARS,
              "scars.gpkg",
              "" + i));
    }
    List<Finding> shuffled = new ArrayList<>(many);
    Collections.shuffle(shuffled, new Random(1));
    FindingsReport report = new FindingsReport(shuffled, List.of());
    assertThat(report.lines(20)).hasSize(1 + 1 + 20 + 1 + 1 + 1).contains("  and 2480 more");
    assertThat(report.lines(2)).contains("  scars.gpkg: scars: 0: same scar mapped twice; skipped");
    JsonNode root = new ObjectMapper().readTree(report.toJson());
    assertThat(root.path("findings").size()).isEqualTo(2_500);
    assertThat(root.at("/findings/10/feature").asText()).isEqualTo("10");
    assertThat(root.at("/totals/warning").asInt()).isEqualTo(2_500);
    assertThat(report.toJson()).isEqualTo(new FindingsReport(many, List.of()).toJson());
  }

  @Test
  void aProblemWithLineEndsStaysOnOneLine() {
    Finding finding = InventedSurvey.findings().get(0);
    Finding broken =
        new Finding(
            finding.code(),
            Level.ERROR,
            Treatment.REFUSED,
            finding.role(),
            finding.where(),
            "first\r\nsecond",
            "fix it");
    assertThat(new FindingsReport(List.of(broken), List.of()).lines(5))
        .contains("  beds.shp: beds: 2: first second; fix it")
        .contains("1 error, 0 warnings, 0 notes");
  }

  @Test
  void saysSoWhenThereIsNothing() {
    assertThat(new FindingsReport(List.of(), List.of()).lines(5)).containsExactly("no findings");
  }
}
