package org.meadowmark.samples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.Column.Type;
import org.meadowmark.core.write.CsvTableWriter;
import org.meadowmark.core.write.GeoJsonTableWriter;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.ResultTable.GeometryKind;
import org.meadowmark.core.write.ResultTable.Row;

/** Writes what is known about a sample because it was made: for checking results, not for input. */
final class TruthWriter {
  private TruthWriter() {}

  /** Writes {@code scar-fates.csv} and {@code planted-hot-spots.geojson} into a new folder. */
  static void write(Path folder, Estuary estuary) {
    SurveyFolderWriter.publish(
        folder,
        temporary -> {
          CsvTableWriter.write(temporary.resolve("scar-fates.csv"), false, fates(estuary), false);
          MapGrids grids = new MapGrids(Estuary.CRS);
          GeoJsonTableWriter.write(
              temporary.resolve("planted-hot-spots.geojson"),
              false,
              SampleTables.moved(
                  SampleTables.hotSpots(estuary.plantedHotSpots()), grids::toDegrees));
        });
  }

  private static ResultTable fates(Estuary estuary) {
    return new ResultTable(
        "scar_fates",
        "A scar in a survey.",
        List.of(
            new Column("season", Type.INTEGER, "", "Survey, from 1."),
            new Column(SampleTables.TRUTH_ID, Type.INTEGER, "", "The scar itself."),
            new Column(SampleTables.SCAR_ID, Type.TEXT, "", "Its number in the survey."),
            new Column(
                "fate",
                Type.TEXT,
                "",
                "new, persisting, extended, or healed since the survey before.")),
        GeometryKind.NONE,
        () -> rows(estuary));
  }

  private static Iterator<Row> rows(Estuary estuary) {
    return IntStream.range(0, estuary.settings().seasons())
        .boxed()
        .flatMap(season -> rows(estuary, season))
        .iterator();
  }

  private static Stream<Row> rows(Estuary estuary, int season) {
    SampleTables.ScarStyle style = SurveyFolderWriter.style(season);
    Map<Long, Row> rows = new TreeMap<>();
    if (season > 0) {
      estuary
          .scars(season - 1)
          .forEach(scar -> rows.put(scar.truthId(), row(season, scar.truthId(), "", "healed")));
    }
    estuary
        .scars(season)
        .forEach(
            scar ->
                rows.put(
                    scar.truthId(),
                    row(
                        season,
                        scar.truthId(),
                        style.idOf(scar),
                        scar.fate().name().toLowerCase(Locale.ROOT))));
    return new ArrayList<>(rows.values()).stream();
  }

  private static Row row(int season, long truthId, String scarId, String fate) {
    return new Row(
        Arrays.asList(season + 1, truthId, scarId.isEmpty() ? null : scarId, fate),
        Optional.empty());
  }
}
