package org.meadowmark.core.write.proposal;

import com.samskivert.mustache.Template;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.plan.layout.PlantingUnit;
import org.meadowmark.core.write.AtomicFile;

/**
 * Writes a crew sheet for each season of a repair plan, {@code repairs/season-1.html} and {@code
 * .pdf}, and the waypoints of its units, {@code .gpx}. The same plan gives the same bytes.
 */
public final class CrewSheets {
  /** Folder of the sheets. */
  public static final String FOLDER = "repairs";

  private static final String TEMPLATE = "crew.mustache";

  private CrewSheets() {}

  /**
   * Writes sheets and waypoints for A4 paper; nothing where the plan has no season. Where the grid
   * is an invented one there are no waypoints.
   *
   * @param folder where the folder of the sheets goes; must exist
   * @param survey the survey, its repair plan and the grid that the units lie on
   * @throws IOException if a folder cannot be made
   * @throws org.meadowmark.core.model.MeadowmarkException if a file exists or cannot be written
   */
  public static void write(Path folder, CrewSurvey survey) throws IOException {
    if (survey.plan().seasons().isEmpty()) {
      return;
    }
    Path target = Files.createDirectories(folder.resolve(FOLDER));
    SheetText text = SheetText.english();
    SheetPdf pdf = new SheetPdf(text);
    Template template = SheetHtml.template(TEMPLATE);
    String css = SheetHtml.style(Paper.A4);
    Optional<GridPlaces> places = GridPlaces.of(survey.gridWkt());
    Map<String, List<PlantingUnit>> units =
        survey.plan().units().stream().collect(Collectors.groupingBy(PlantingUnit::scarId));
    for (RepairSeason season : survey.plan().seasons()) {
      String name = "season-" + season.number();
      String page = template.execute(new CrewWords(survey, season, places, text).view(css));
      AtomicFile.write(
          target.resolve(name + ".html"),
          false,
          file -> Files.writeString(file, page, StandardCharsets.UTF_8));
      AtomicFile.write(
          target.resolve(name + ".pdf"), false, file -> Files.write(file, pdf.of(page)));
      if (places.isPresent()) {
        byte[] gpx = new CrewWaypoints(places.get(), units).of(season);
        AtomicFile.write(target.resolve(name + ".gpx"), false, file -> Files.write(file, gpx));
      }
    }
  }
}
