package org.meadowmark.core.assessment.comparison;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.TableLibrary;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyFile;

/**
 * Survey folders of an invented place: a straight channel of 4 km with bed on one side in twenty
 * beds and two management areas, and yearly surveys in which scars are cut across the bed, healed
 * at random and mapped again a little off their place. From a day on, fewer are cut beside some
 * segments.
 */
final class ComparedPlace {
  static final ReferenceTables TABLES = ReferenceTablesReader.read(TableLibrary.bundled());
  private static final double EAST = 500_000;
  private static final double NORTH = 3_320_000;
  private static final int KILOMETRES = 4;
  private static final double ERROR = 0.1;

  private final Path folder;

  private record Cut(double x, double y, double length, double width) {}

  ComparedPlace(Path folder) {
    this.folder = folder;
  }

  /**
   * Writes surveys.
   *
   * @param seasons seasons; there is one survey more
   * @param perSeason scars cut in a season, on average
   * @param seed seed of the draws
   * @param markedFrom season from which the marks stand, 0 for the first
   * @param factor what the marks leave of the scars beside the marked parts: metres 400 to 600,
   *     1,600 to 1,800 and 2,800 to 3,000 of the channel
   */
  void write(int seasons, int perSeason, long seed, int markedFrom, double factor) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Cut> open = new ArrayList<>();
    cut(open, 2 * perSeason, 1, random);
    for (int survey = 0; survey <= seasons; survey++) {
      if (survey > 0) {
        open.removeIf(scar -> random.nextDouble() < 0.2 / scar.width());
        cut(open, perSeason, survey - 1 >= markedFrom ? factor : 1, random);
      }
      survey(survey, open, random);
    }
  }

  static boolean isMarked(double alongMetres) {
    return (alongMetres >= 400 && alongMetres < 600)
        || (alongMetres >= 1_600 && alongMetres < 1_800)
        || (alongMetres >= 2_800 && alongMetres < 3_000);
  }

  private static void cut(List<Cut> open, int count, double factor, SplittableRandom random) {
    for (int i = 0; i < count; i++) {
      double along = 1_000 * KILOMETRES * random.nextDouble();
      boolean kept = !isMarked(along) || random.nextDouble() < factor;
      Cut scar =
          new Cut(
              along,
              12 + 150 * random.nextDouble(),
              8 + 12 * random.nextDouble(),
              0.25 + 0.5 * random.nextDouble());
      if (kept) {
        open.add(scar);
      }
    }
  }

  private void survey(int number, List<Cut> scars, SplittableRandom random) {
    Path survey = folder.resolve("survey-" + number);
    StringBuilder lines = new StringBuilder("id,cause,width,wkt\n");
    int id = 0;
    for (Cut scar : scars) {
      id++;
      double x = EAST + scar.x() + ERROR * (2 * random.nextDouble() - 1);
      double y = NORTH + scar.y() + ERROR * (2 * random.nextDouble() - 1);
      lines.append(
          String.format(
              Locale.ROOT,
              "%d,propeller,%.3f,\"LINESTRING (%.3f %.3f, %.3f %.3f)\"%n",
              id,
              scar.width(),
              x,
              y,
              x + 0.3 * scar.length(),
              y + scar.length()));
    }
    StringBuilder beds = new StringBuilder("id,species,wkt\n");
    for (int bed = 0; bed < 20; bed++) {
      beds.append(
          String.format(
              Locale.ROOT,
              "B%d,shoalgrass,\"%s\"%n",
              bed,
              box(200 * bed, 10, 200 * bed + 199, 200)));
    }
    try {
      Files.createDirectories(survey);
      write(survey, "scars.csv", lines.toString());
      write(survey, "beds.csv", beds.toString());
      write(
          survey,
          "channels.csv",
          "id,name,wkt\nC1,Long Reach,\"LINESTRING (%.0f %.0f, %.0f %.0f)\"\n"
              .formatted(EAST, NORTH, EAST + 1_000 * KILOMETRES, NORTH));
      write(
          survey,
          "areas.csv",
          "id,name,wkt\nA1,West,\"%s\"\nA2,East,\"%s\"\n"
              .formatted(box(-100, -100, 1_999.5, 900), box(1_999.5, -100, 4_100, 900)));
      write(survey, SurveyFile.NAME, toml(LocalDate.of(2020 + number, 6, 14), ""));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String toml(LocalDate date, String facts) {
    return """
        [survey]
        name = "Long Reach %d"
        date = %s
        %s

        [layers.scars]
        file = "scars.csv"
        crs = "EPSG:32621"
        [layers.scars.attributes]
        id = "id"
        cause = "cause"
        width = "width"

        [layers.beds]
        file = "beds.csv"
        crs = "EPSG:32621"
        [layers.beds.attributes]
        id = "id"
        species = "species"

        [layers.channels]
        file = "channels.csv"
        crs = "EPSG:32621"
        [layers.channels.attributes]
        id = "id"
        name = "name"

        [layers.management_areas]
        file = "areas.csv"
        crs = "EPSG:32621"
        [layers.management_areas.attributes]
        id = "id"
        name = "name"

        [parameters]
        position_rmse_m = 0.2
        analysis_crs = "EPSG:32621"
        ground_scale = false
        channel_reach_m = 220
        control_minimum_exposure_ha = 0.5
        effect_permutations = 999
        """
        .formatted(date.getYear(), date, facts);
  }

  private static String box(double x1, double y1, double x2, double y2) {
    double west = EAST + x1;
    double east = EAST + x2;
    double south = NORTH + y1;
    double north = NORTH + y2;
    return String.format(
        Locale.ROOT,
        "POLYGON ((%.1f %.1f, %.1f %.1f, %.1f %.1f, %.1f %.1f, %.1f %.1f))",
        west,
        south,
        east,
        south,
        east,
        north,
        west,
        north,
        west,
        south);
  }

  private static void write(Path survey, String name, String text) throws IOException {
    Files.writeString(survey.resolve(name), text, StandardCharsets.UTF_8);
  }

  /** The file of markers: a row each marked segment by its id, one by its position. */
  Path markers(LocalDate placed) throws IOException {
    StringBuilder rows = new StringBuilder("segment,x,y,date,device\n");
    for (int number = 1; number <= 10 * KILOMETRES; number++) {
      double middle = 100 * number - 50;
      if (isMarked(middle)) {
        rows.append(
            number == 5
                ? String.format(
                    Locale.ROOT, ",%.1f,%.1f,%s,speed mark%n", EAST + middle, NORTH + 3, placed)
                : String.format(Locale.ROOT, "long-reach-%04d,,,%s,speed mark%n", number, placed));
      }
    }
    Path file = folder.resolve("marks.csv");
    Files.writeString(file, rows);
    return file;
  }

  Path survey(int number) {
    return folder.resolve("survey-" + number);
  }

  static SurveyDefinition read(Path survey) {
    return SurveyFile.read(survey, ParametersTable.bundled(), TABLES);
  }
}
