package org.meadowmark.core.write.proposal;

import com.samskivert.mustache.Template;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.AtomicFile;

/**
 * The paper on a whole survey for a public hearing, {@code hearing.pdf}: answers, map, key tables,
 * cautions on a few pages. The same survey gives the same bytes.
 */
public final class HearingPaper {
  /** Name of the file. */
  public static final String FILE_NAME = "hearing.pdf";

  private static final String TEMPLATE = "hearing.mustache";
  private static final double MAP_MILLIMETRES = 180;

  private HearingPaper() {}

  /**
   * Writes the paper.
   *
   * @param folder where the file goes; must exist
   * @param assessed the survey
   * @param answers what people ask, in the order to show
   * @param inputs files that were read
   * @param toolVersion version of the program
   * @throws org.meadowmark.core.model.MeadowmarkException if the file exists or cannot be written
   */
  public static void write(
      Path folder,
      AssessedSurvey assessed,
      List<HearingAnswer> answers,
      List<SheetInput> inputs,
      String toolVersion) {
    SheetText text = SheetText.english();
    String page = page(assessed, answers, inputs, toolVersion, Paper.A4);
    SheetPdf pdf = new SheetPdf(text);
    AtomicFile.write(folder.resolve(FILE_NAME), false, file -> Files.write(file, pdf.of(page)));
  }

  /** The page that the paper is laid out from. */
  static String page(
      AssessedSurvey assessed,
      List<HearingAnswer> answers,
      List<SheetInput> inputs,
      String toolVersion,
      Paper paper) {
    SheetText text = SheetText.english();
    MapLayers layers = new MapLayers(SurveySheets.survey(assessed, inputs, toolVersion));
    MapDrawing map = SurveyMap.draw(layers, assessed.zones().zones(), text);
    String css = SheetHtml.style(paper, MAP_MILLIMETRES * map.height() / SurveyMap.WIDTH);
    Template template = SheetHtml.template(TEMPLATE);
    return template.execute(
        new HearingWords(assessed, layers.survey(), text).view(answers, map, css));
  }
}
