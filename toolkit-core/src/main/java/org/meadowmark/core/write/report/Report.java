package org.meadowmark.core.write.report;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.MustacheException;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.AtomicFile;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.XmlText;
import org.meadowmark.core.write.proposal.HearingAnswer;

/**
 * The report of a run: one HTML file with an interactive map that opens from disk and loads nothing
 * from outside, which its own content security policy enforces.
 *
 * <p>The same results give the same bytes. Time n log n in vertices and features. The page is put
 * together in memory; what a layer holds at most bounds its size.
 */
public final class Report {
  /** Name of the file. */
  public static final String FILE_NAME = "report.html";

  /** Vertices of a layer to aim for; beyond it lines are simplified more. */
  static final long MOST_VERTICES = 400_000;

  private static final String BUNDLE = "org.meadowmark.core.write.report.report";
  private static final String SCRIPT_PHRASES = "js.";

  private static final List<String> SCRIPTS =
      List.of(
          "page",
          "numbers",
          "geometry",
          "grid",
          "drawing",
          "frame",
          "map",
          "choice",
          "switches",
          "tables",
          "theme",
          "paper");

  private Report() {}

  /**
   * Writes the report.
   *
   * @param folder where the file goes; must exist
   * @param input results and charts to show
   * @throws org.meadowmark.core.model.MeadowmarkException if the file exists or cannot be written
   */
  public static void write(Path folder, ReportInput input) {
    ReportView view = view(input, ReportLayers.MOST_FEATURES);
    AtomicFile.write(
        folder.resolve(FILE_NAME),
        false,
        file -> {
          // Straight to the file: the page of a large survey is not to stand in memory three times.
          try (Writer page = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            template().execute(view, page);
          } catch (MustacheException e) {
            if (e.getCause() instanceof IOException failed) {
              throw failed;
            }
            throw e;
          }
        });
  }

  /**
   * {@return the questions that people ask and what the survey says, as the report has them}
   *
   * @param assessed results of an assessment
   */
  public static List<HearingAnswer> answers(AssessedSurvey assessed) {
    Phrases text = Phrases.english(BUNDLE);
    return ReportWords.answers(assessed, text).stream()
        .map(
            each ->
                new HearingAnswer(
                    each.question(),
                    Stream.concat(Stream.of(each.answer()), each.more().stream())
                        .collect(Collectors.joining(" "))))
        .toList();
  }

  /**
   * The page.
   *
   * @param mostFeatures features of a layer beyond this are left out, and counted
   */
  static String page(ReportInput input, int mostFeatures) {
    return template().execute(view(input, mostFeatures));
  }

  private static ReportView view(ReportInput input, int mostFeatures) {
    AssessedSurvey assessed = input.assessed();
    Phrases text = Phrases.english(BUNDLE);
    List<MapLayer> layers = ReportLayers.of(assessed, text, mostFeatures);
    ReportMap map = ReportMap.of(assessed.survey(), layers, MOST_VERTICES);
    String css = MapLibrary.style() + style();
    String library = MapLibrary.script();
    String script = script();
    ReportWords words = new ReportWords(assessed, text, map);
    List<ReportView.FindingRow> findings = words.findings();
    return new ReportView(
        text.all(""),
        ContentPolicy.of(List.of(library, script), css),
        css,
        library,
        script,
        ReportData.json(map, text.all(SCRIPT_PHRASES)),
        words.title(),
        words.surveyLine(),
        words.answers(),
        words.figures(),
        words.tables(),
        words.simplified(),
        input.charts(),
        !findings.isEmpty(),
        findings,
        words.inputs(),
        words.conventions(),
        words.cautions(),
        words.gaps(),
        words.grid(),
        text.get("libraryText", MapLibrary.NAME),
        MapLibrary.licence(),
        text.get("made", input.toolVersion()));
  }

  private static String style() {
    return resource("report.css")
        .replace("DAY_COLOURS", ReportPalette.DAY.css())
        .replace("NIGHT_COLOURS", ReportPalette.NIGHT.css());
  }

  /** The parts of the script, which share one scope that nothing else of the page sees. */
  private static String script() {
    return SCRIPTS.stream()
        .map(name -> resource("script/" + name + ".js"))
        .collect(Collectors.joining("\n", "(function () {\n'use strict';\n\n", "})();\n"));
  }

  private static Template template() {
    return Mustache.compiler()
        .withEscaper(raw -> Escapers.HTML.escape(XmlText.legal(raw)))
        .strictSections(true)
        .compile(resource("report.mustache"));
  }

  private static String resource(String name) {
    try (InputStream in = Report.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the resource " + name, e);
    }
  }
}
