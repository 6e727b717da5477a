package org.meadowmark.core.write.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Point;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.InventedSurvey;
import org.meadowmark.core.write.ResultTable;

class ZoneTablesTest {
  private final ZonePlan plan = InventedSurvey.survey().zones();

  @Test
  void theInventedSurveyHasZonesToShow() {
    assertThat(plan.zones()).isNotEmpty();
    assertThat(plan.zones().get(0).markers()).isNotEmpty();
    assertThat(plan.zones().get(0).devices()).isNotEmpty();
  }

  @Test
  void zonesAreThoseOfThePlan() {
    ResultTable table = ZoneTables.zones().table(plan.zones());
    Zone first = plan.zones().get(0);
    assertThat(column(table, "zone_id").get(0)).isEqualTo("Z1");
    assertThat(column(table, "scar_length_m").get(0)).isEqualTo(first.scarMetres());
    assertThat((double) column(table, "covered_pct").get(0)).isBetween(0.0, 100.0);
    assertThat((String) column(table, "extra_time").get(0)).contains("9.3 instead of 37.0 km/h");
    assertThat(table.rows()).allMatch(row -> !row.geometry().orElseThrow().isEmpty());
  }

  @Test
  void marksAreInOrderWithTheirPlace() {
    ResultTable table = ZoneTables.markers().table(ZoneTables.markerRows(plan));
    List<Object> ids = column(table, "marker_id");
    assertThat(ids.get(0)).isEqualTo("Z1-M1");
    assertThat(ids).hasSameSizeAs(ZoneTables.markerRows(plan)).doesNotHaveDuplicates();
    assertThat(table.rows()).allMatch(row -> row.geometry().orElseThrow() instanceof Point);
    assertThat(column(table, "bearing_deg")).allMatch(b -> (double) b >= 0 && (double) b < 360);
  }

  @Test
  void segmentsAndDevicesNameTheirZone() {
    ResultTable segments = ZoneTables.segments().table(ZoneTables.segmentRows(plan));
    assertThat(column(segments, "segment_id"))
        .containsExactlyInAnyOrderElementsOf(
            plan.zones().stream().flatMap(zone -> zone.segmentIds().stream()).toList());
    ResultTable devices = ZoneTables.devices().table(ZoneTables.deviceRows(plan));
    assertThat(column(devices, "legal_basis")).contains("missing");
    assertThat(column(devices, "place").get(0)).isEqualTo(1L);
  }

  @Test
  void coverIsTheCurve() {
    ResultTable table = ZoneTables.cover().table(plan.curve());
    assertThat(column(table, "allowed_length_m")).hasSize(10);
    assertThat(column(table, "proven_best")).containsOnly("yes");
  }

  private static List<Object> column(ResultTable table, String name) {
    int at = table.columns().stream().map(Column::name).toList().indexOf(name);
    List<Object> values = new ArrayList<>();
    table.rows().forEach(row -> values.add(row.values().get(at)));
    return values;
  }
}
