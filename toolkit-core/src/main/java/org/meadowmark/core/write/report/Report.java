package org.meadowmark.core.write.report;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.AtomicFile;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.XmlText;
import org.meadowmark.core.write.proposal.GridPlaces;
import org.meadowmark.core.write.proposal.HearingAnswer;

/**
 * The report of a run: one HTML file with an interactive map that opens from disk and loads nothing
 * from outside, which its own content security policy enforces.
 *
 * <p>The same results give the same bytes. Time n log n in vertices and features. Memory: the page
 * is put together in memory, some 100 bytes a feature and 3 a vertex.
 */
public final class Report {
  /** Name of the file. */
  public static final String FILE_NAME = "report.html";

  /** Vertices of a layer to aim for; beyond it lines are simplified more. */
  static final long MOST_VERTICES = 400_000;

  private static final String BUNDLE = "org.meadowmark.core.write.report.report";
  private static final String SCRIPT_PHRASES = "js.";

  private Report() {}

  /**
   * Writes the report.
   *
   * @param folder where the file goes; must exist
   * @throws org.meadowmark.core.model.MeadowmarkException if the file exists or cannot be written
   */
  public static void write(Path folder, ReportInput input) {
    String page = page(input, ReportLayers.MOST_FEATURES);
    AtomicFile.write(
        folder.resolve(FILE_NAME),
        false,
        file -> Files.writeString(file, page, StandardCharsets.UTF_8));
  }

  /** The questions that people ask and what the survey says, as the report has them. */
  public static List<HearingAnswer> answers(AssessedSurvey assessed) {
    Phrases text = Phrases.english(BUNDLE);
    return new ReportWords(assessed, text, List.of(), List.of())
        .answers().stream()
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
    AssessedSurvey assessed = input.assessed();
    Phrases text = Phrases.english(BUNDLE);
    List<MapLayer> layers = new ReportLayers(assessed, text, mostFeatures).all();
    Envelope extent = extent(layers);
    Coordinate origin = new Coordinate(Math.rint(extent.getMinX()), Math.rint(extent.getMinY()));
    List<GeometryCode> codes =
        layers.stream()
            .map(layer -> GeometryCode.of(layer.geometries(), origin, MOST_VERTICES))
            .toList();
    Optional<GridPlaces> places = GridPlaces.of(assessed.survey().gridWkt());
    GridFit fit = GridFit.of(extent, places, assessed.survey().scale());
    String data =
        ReportData.json(
            origin,
            extent,
            assessed.survey().gridLabel(),
            places.map(GridPlaces::datum).orElse(""),
            fit,
            layers,
            codes,
            text.all(SCRIPT_PHRASES));
    String css = MapLibrary.style() + style();
    String library = MapLibrary.script();
    String script = resource("report.js");
    ReportWords words = new ReportWords(assessed, text, layers, codes);
    List<ReportView.FindingRow> findings = words.findings();
    ReportView view =
        new ReportView(
            text.all(""),
            ContentPolicy.of(List.of(library, script), css),
            css,
            library,
            script,
            data,
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
            words.grid(places, extent.centre(), extent),
            text.get("libraryText", MapLibrary.NAME),
            MapLibrary.licence(),
            text.get("made", input.toolVersion()));
    return template().execute(view);
  }

  private static Envelope extent(List<MapLayer> layers) {
    Envelope extent = new Envelope();
    layers.stream()
        .filter(layer -> !layer.isBackground())
        .flatMap(layer -> layer.geometries().stream())
        .forEach(geometry -> extent.expandToInclude(geometry.getEnvelopeInternal()));
    return extent.isNull() ? new Envelope(0, 1, 0, 1) : extent;
  }

  private static String style() {
    return resource("report.css")
        .replace("DAY_COLOURS", ReportPalette.DAY.css())
        .replace("NIGHT_COLOURS", ReportPalette.NIGHT.css());
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
