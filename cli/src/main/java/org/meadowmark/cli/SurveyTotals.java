package org.meadowmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.CsvTableWriter;
import org.meadowmark.core.write.ResultTable;

/** Totals of several surveys, a line each and one for all. */
final class SurveyTotals {
  private static final String NAME = "totals";
  static final String FILE_NAME = NAME + ".csv";

  private static final double PERCENT = 100;
  private static final List<Column> COLUMNS =
      List.of(
          new Column("folder", Column.Type.TEXT, "", "Folder of the survey's results."),
          new Column("state", Column.Type.TEXT, "", "Whether it was assessed."),
          new Column("beds", Column.Type.INTEGER, "", "Beds."),
          new Column("scars", Column.Type.INTEGER, "", "Scars."),
          new Column("bed_area_m2", Column.Type.REAL, "m²", "Area of the beds."),
          new Column("surveyed_area_m2", Column.Type.REAL, "m²", "What was looked at of it."),
          new Column("scarred_area_m2", Column.Type.REAL, "m²", "What is scarred of that."),
          new Column(
              "scarred_percent", Column.Type.REAL, "%", "Scarred share of what was looked at."),
          new Column("scar_length_in_beds_m", Column.Type.REAL, "m", "Length of scars in beds."),
          new Column("patches_before", Column.Type.INTEGER, "", "Patches before the scars."),
          new Column("patches_after", Column.Type.INTEGER, "", "Patches with them."),
          new Column("message", Column.Type.TEXT, "", "Why it could not be assessed."));

  private final List<ResultTable.Row> rows = new ArrayList<>();
  private final List<String> failed = new ArrayList<>();
  private int done;
  private long beds;
  private long scars;
  private long patchesBefore;
  private long patchesAfter;
  private double grass;
  private double surveyed;
  private double scarred;
  private double length;

  /** Adds a survey that was assessed. */
  void add(String folder, Assessment.Done assessed) {
    AreaMeasure whole = assessed.whole();
    Damage damage = whole.damage();
    long before = whole.fragmentation().before().patchCount();
    long after = whole.fragmentation().after().patchCount();
    row(
        folder,
        "done",
        (long) whole.bedCount(),
        (long) assessed.scarCount(),
        damage.grassSquareMetres(),
        damage.surveyedSquareMetres(),
        damage.scarredSquareMetres(),
        percent(damage.scarredSquareMetres(), damage.surveyedSquareMetres()),
        damage.scarLengthMetres(),
        before,
        after,
        null);
    done++;
    beds += whole.bedCount();
    scars += assessed.scarCount();
    grass += damage.grassSquareMetres();
    surveyed += damage.surveyedSquareMetres();
    scarred += damage.scarredSquareMetres();
    length += damage.scarLengthMetres();
    patchesBefore += before;
    patchesAfter += after;
  }

  /** Adds a survey that could not be assessed. */
  void addFailure(String folder, String message) {
    failed.add(folder);
    row(folder, "failed", null, null, null, null, null, null, null, null, null, message);
  }

  /** Writes the table into a folder, all of it or nothing. */
  void writeInto(Path folder) throws IOException {
    row(
        "all of these",
        failed.isEmpty() ? "done" : "incomplete",
        beds,
        scars,
        grass,
        surveyed,
        scarred,
        percent(scarred, surveyed),
        length,
        patchesBefore,
        patchesAfter,
        null);
    Files.createDirectories(folder);
    CsvTableWriter.write(
        folder.resolve(FILE_NAME),
        true,
        new ResultTable(
            NAME, "A survey, or all.", COLUMNS, ResultTable.GeometryKind.NONE, List.copyOf(rows)),
        false);
  }

  /** What a terminal shows. */
  String text() {
    return String.format(
        Locale.ROOT,
        "%,d survey(s) assessed: %,d beds, %,d scars, %,.0f m² scarred of %,.1f ha surveyed.\n%s",
        done,
        beds,
        scars,
        scarred,
        surveyed / Hectare.SQUARE_METRES,
        failed.isEmpty() ? "" : "Failed: " + String.join(", ", failed) + ".\n");
  }

  private void row(Object... values) {
    rows.add(new ResultTable.Row(Arrays.asList(values), Optional.empty()));
  }

  /** The share, or null where nothing was looked at. */
  private static Double percent(double part, double of) {
    return of > 0 ? PERCENT * part / of : null;
  }
}
