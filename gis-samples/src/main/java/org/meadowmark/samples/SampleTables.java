package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.ResultTable.GeometryKind;
import org.meadowmark.core.write.ResultTable.Row;

/** Sample features as tables that any format is written from. */
final class SampleTables {
  static final String SCAR_ID = "scar_id";
  static final String TRUTH_ID = "truth_id";

  private SampleTables() {}

  /** How a survey writes its scars down. */
  record ScarStyle(
      String idPrefix,
      String widthColumn,
      double unitsAMetre,
      String propellerWord,
      boolean hasNotes) {
    /** Widths in metres and the toolkit's own words. */
    static final ScarStyle PLAIN = new ScarStyle("S", "width_m", 1, "propeller", false);

    String idOf(SampleScar scar) {
      return String.format(Locale.ROOT, "%s%05d", idPrefix, scar.truthId());
    }

    private Row row(SampleScar scar) {
      Double width =
          scar.widthMetres().isPresent()
              ? Math.rint(scar.widthMetres().getAsDouble() * unitsAMetre * 100) / 100
              : null;
      String cause = scar.cause().equals(CauseKind.PROPELLER.key) ? propellerWord : scar.cause();
      List<Object> values =
          new ArrayList<>(Arrays.asList(idOf(scar), scar.truthId(), cause, width, scar.seenOn()));
      if (hasNotes) {
        values.add(SampleNotes.grazed(scar));
        values.add(SampleNotes.scarredAgain(scar));
      }
      return new Row(values, Optional.of(scar.geometry()));
    }
  }

  static ResultTable scars(
      ScarStyle style, Supplier<Stream<SampleScar>> scars, List<Row> additions) {
    List<Column> columns =
        new ArrayList<>(
            List.of(
                new Column(SCAR_ID, Type.TEXT, "", "Number in this survey."),
                new Column(
                    TRUTH_ID, Type.INTEGER, "", "The scar itself, the same in every survey."),
                new Column("cause", Type.TEXT, "", "What cut it."),
                new Column(
                    style.widthColumn,
                    Type.REAL,
                    style.unitsAMetre == 1 ? "m" : "cm",
                    "Width of a line."),
                new Column("seen_on", Type.DATE, "", "Day it was mapped.")));
    if (style.hasNotes) {
      columns.add(new Column("grazed", Type.TEXT, "", "Whether leaf tips were squared off."));
      columns.add(
          new Column("scarred_again", Type.TEXT, "", "Whether boats keep to the same line."));
    }
    return new ResultTable(
        "scars",
        "A scar as the survey saw it; lines, and polygons for groundings.",
        columns,
        GeometryKind.GEOMETRY,
        () -> rows(Stream.concat(scars.get().map(style::row), additions.stream())));
  }

  private static Iterator<Row> rows(Stream<Row> rows) {
    return rows.iterator();
  }

  static ResultTable beds(List<Bed> beds, boolean hasNotes) {
    List<Row> rows = new ArrayList<>();
    for (Bed bed : beds) {
      List<Object> values = new ArrayList<>(List.of(bed.id(), bed.species(), bed.texture()));
      if (hasNotes) {
        values.add(SampleNotes.muck(bed, rows.size()));
      }
      rows.add(new Row(values, Optional.of(bed.geometry())));
    }
    List<Column> columns =
        new ArrayList<>(
            List.of(
                new Column("bed_id", Type.TEXT, "", "Number of the bed."),
                new Column("species", Type.TEXT, "", "Plant that covers most of it."),
                new Column("texture", Type.TEXT, "", "Patchy or continuous.")));
    if (hasNotes) {
      columns.add(new Column("muck", Type.TEXT, "", "Whether its bottom is bare muck."));
    }
    return new ResultTable("beds", "A seagrass bed.", columns, GeometryKind.POLYGON, rows);
  }

  static ResultTable channels(List<Channel> channels) {
    List<Row> rows = new ArrayList<>();
    for (Channel channel : channels) {
      rows.add(new Row(List.of(channel.id(), channel.name()), Optional.of(channel.geometry())));
    }
    return new ResultTable(
        "channels",
        "A reach of a channel between junctions.",
        List.of(
            new Column("channel_id", Type.TEXT, "", "Number of the reach."),
            new Column("name", Type.TEXT, "", "Name of the channel.")),
        GeometryKind.LINESTRING,
        rows);
  }

  static ResultTable areas(String name, String description, List<MapArea> areas) {
    List<Row> rows = new ArrayList<>();
    for (MapArea area : areas) {
      rows.add(
          new Row(
              Arrays.asList(area.id(), area.name().isEmpty() ? null : area.name()),
              Optional.of(area.geometry())));
    }
    return new ResultTable(
        name,
        description,
        List.of(
            new Column("area_id", Type.TEXT, "", "Number of the area."),
            new Column("name", Type.TEXT, "", "Name of the area.")),
        GeometryKind.POLYGON,
        rows);
  }

  static ResultTable hotSpots(List<PlantedHotSpot> hotSpots) {
    List<Row> rows = new ArrayList<>();
    for (PlantedHotSpot hotSpot : hotSpots) {
      rows.add(
          new Row(
              List.of(hotSpot.id(), hotSpot.channel(), hotSpot.elevation()),
              Optional.of(hotSpot.stretch())));
    }
    return new ResultTable(
        "planted_hot_spots",
        "A channel stretch beside which scars were made more frequent.",
        List.of(
            new Column("hot_spot", Type.INTEGER, "", "Number of the stretch."),
            new Column("channel", Type.TEXT, "", "Name of its channel."),
            new Column("elevation", Type.REAL, "1", "How many times more frequent scars are.")),
        GeometryKind.LINESTRING,
        rows);
  }

  /** The same table with other geometries. */
  static ResultTable moved(ResultTable table, UnaryOperator<Geometry> movement) {
    List<Row> rows = new ArrayList<>();
    for (Row row : table.rows()) {
      rows.add(new Row(row.values(), row.geometry().map(movement)));
    }
    return new ResultTable(
        table.name(), table.description(), table.columns(), table.geometryKind(), rows);
  }
}
