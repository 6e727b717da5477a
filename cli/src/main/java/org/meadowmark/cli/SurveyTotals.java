package org.meadowmark.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.Damage;

/** Totals of several surveys, a line each and one for all. */
final class SurveyTotals {
  static final String FILE_NAME = "totals.csv";

  private static final String HEADER =
      "folder,state,beds,scars,bed_area_m2,surveyed_area_m2,scarred_area_m2,scarred_percent,"
          + "scar_length_in_beds_m,patches_before,patches_after,message\n";
  private static final double PERCENT = 100;

  private final StringBuilder lines = new StringBuilder();
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
    int before = whole.fragmentation().before().patchCount();
    int after = whole.fragmentation().after().patchCount();
    line(
        folder,
        "done",
        whole.bedCount(),
        assessed.scarCount(),
        damage.grassSquareMetres(),
        damage.surveyedSquareMetres(),
        damage.scarredSquareMetres(),
        damage.scarLengthMetres(),
        before,
        after);
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
    lines.append(quoted(folder)).append(",failed,,,,,,,,,,").append(quoted(message)).append('\n');
  }

  private void line(
      String folder,
      String state,
      long bedCount,
      long scarCount,
      double grassSquareMetres,
      double surveyedSquareMetres,
      double scarredSquareMetres,
      double lengthMetres,
      long before,
      long after) {
    OptionalDouble share =
        surveyedSquareMetres > 0
            ? OptionalDouble.of(PERCENT * scarredSquareMetres / surveyedSquareMetres)
            : OptionalDouble.empty();
    lines.append(
        String.format(
            Locale.ROOT,
            "%s,%s,%d,%d,%.6f,%.6f,%.6f,%s,%.6f,%d,%d,\n",
            quoted(folder),
            state,
            bedCount,
            scarCount,
            grassSquareMetres,
            surveyedSquareMetres,
            scarredSquareMetres,
            share.isPresent() ? String.format(Locale.ROOT, "%.6f", share.getAsDouble()) : "",
            lengthMetres,
            before,
            after));
  }

  /** Writes the table into a folder, all of it or nothing. */
  void writeInto(Path folder) throws IOException {
    line(
        "all of these",
        failed.isEmpty() ? "done" : "incomplete",
        beds,
        scars,
        grass,
        surveyed,
        scarred,
        length,
        patchesBefore,
        patchesAfter);
    Files.createDirectories(folder);
    Path part = Files.createTempFile(folder, "." + FILE_NAME, ".part");
    Files.writeString(part, HEADER + lines, StandardCharsets.UTF_8);
    Files.move(
        part,
        folder.resolve(FILE_NAME),
        StandardCopyOption.REPLACE_EXISTING,
        StandardCopyOption.ATOMIC_MOVE);
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
        surveyed / 10_000,
        failed.isEmpty() ? "" : "Failed: " + String.join(", ", failed) + ".\n");
  }

  private static String quoted(String text) {
    return text.matches("[\\w .:;/-]*") ? text : '"' + text.replace("\"", "\"\"") + '"';
  }
}
