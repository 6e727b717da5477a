package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.InventedSurvey;

class SurveySheetsTest {
  private final AssessedSurvey assessed = InventedSurvey.survey();
  private final Map<String, RankedSegment> segments =
      assessed.ranking().segments().stream()
          .collect(Collectors.toMap(ranked -> ranked.segment().id(), ranked -> ranked));

  @TempDir Path folder;

  private List<ZoneSheet> sheets() {
    return SurveySheets.of(assessed, List.of(new SheetInput("scars.gpkg", "abc")), "1.2");
  }

  private static EvidenceRow row(ZoneSheet sheet, String label) {
    return sheet.evidence().stream()
        .filter(row -> row.label().equals(label))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyZoneHasASheet() {
    List<ZoneSheet> sheets = sheets();
    assertThat(sheets)
        .isNotEmpty()
        .extracting(ZoneSheet::zone)
        .containsExactlyElementsOf(assessed.zones().zones());
    for (ZoneSheet sheet : sheets) {
      assertThat(sheet.survey()).isSameAs(sheets.get(0).survey());
      assertThat(sheet.survey().seed()).isEqualTo(assessed.definition().parameters().seed());
    }
    ProposalSheets.write(folder, sheets);
    assertThat(folder.resolve("proposals/" + sheets.get(0).zone().id() + ".pdf")).exists();
  }

  /** Means are weighted by scar length: worked out here once more from the segments. */
  @Test
  void evidenceIsThatOfTheZonesSegments() {
    for (ZoneSheet sheet : sheets()) {
      Zone zone = sheet.zone();
      double metres = 0;
      double edge = 0;
      double highest = 0;
      for (String id : zone.segmentIds()) {
        RankedSegment segment = segments.get(id);
        highest = Math.max(highest, segment.ratePerHectare().orElse(0));
        if (segment.evidence().edge().isPresent()) {
          metres += segment.scarLengthMetres();
          edge += segment.scarLengthMetres() * segment.evidence().edge().get().lengthShare();
        }
      }
      assertThat(
              Double.parseDouble(
                  row(sheet, "Scars that reach the channel’s edge").value().orElseThrow()))
          .isCloseTo(100 * edge / metres, org.assertj.core.data.Offset.offset(0.06));
      assertThat(Double.parseDouble(row(sheet, "Highest scar rate").value().orElseThrow()))
          .isCloseTo(highest, org.assertj.core.data.Offset.offset(0.06));
      assertThat(sheet.channel())
          .isEqualTo(segments.get(zone.segmentIds().get(0)).segment().channel());
      assertThat(sheet.uncertainty()).isNotEmpty();
    }
  }

  @Test
  void whatNoSegmentKnowsIsMissingWithAReason() {
    Zone zone = InventedSheets.zone("Z1");
    List<EvidenceRow> rows =
        new ZoneEvidence(zone, List.of(), InventedSheets.TABLES, SheetText.english()).rows();
    assertThat(rows.stream().filter(EvidenceRow::isMissing).map(EvidenceRow::label))
        .contains(
            "Highest scar rate",
            "Hot spots",
            "Mean angle of scars to the channel",
            "Scars shallower than the draft",
            "Worst bed within reach",
            "Connected area lost to scars",
            "Scarred again since an earlier season",
            "Highest score");
    assertThat(rows.stream().filter(EvidenceRow::isMissing)).allMatch(row -> !row.note().isBlank());
  }
}
