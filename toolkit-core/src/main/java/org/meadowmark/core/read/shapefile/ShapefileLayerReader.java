package org.meadowmark.core.read.shapefile;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.LayerReader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.read.shapefile.ShapeRecords.BadShapeException;
import org.meadowmark.core.survey.LayerSource;

/**
 * Reads a shapefile. Ids are record numbers from 1; a geometry of one part is single; measures (M)
 * are dropped, heights kept.
 *
 * <p>Attribute text is decoded by the .cpg file, else by the language driver of the .dbf, else as
 * UTF-8 where it is that and windows-1252 where not.
 */
public final class ShapefileLayerReader implements LayerReader {
  private static final String WHOLE_COPY = "get a whole copy of the shapefile";
  private static final int LONGEST_SIDE_FILE_BYTES = 100_000;

  @Override
  public void read(LayerSource source, FeatureSink sink) {
    LayerProblems problems = LayerProblems.ofFile(source);
    problems.refuseOtherLayer(List.of(problems.layer()));
    try {
      ShapefileParts parts = ShapefileParts.find(source.file(), problems);
      try (ShapeRecords shapes = ShapeRecords.open(parts.shp(), parts.shx(), problems);
          AttributeTable table =
              AttributeTable.open(parts.dbf(), charset(parts, problems), problems)) {
        if (shapes.count() != table.recordCount()) {
          throw problems.refused(
              "has %d shapes but %d attribute records"
                  .formatted(shapes.count(), table.recordCount()),
              WHOLE_COPY);
        }
        readRecords(shapes, table, referenceSystem(parts, problems), problems, sink);
      }
    } catch (IOException e) {
      throw problems.unreadable(e);
    }
  }

  private static void readRecords(
      ShapeRecords shapes,
      AttributeTable table,
      Optional<CrsText> crs,
      LayerProblems problems,
      FeatureSink sink)
      throws IOException {
    sink.header(new LayerHeader(problems.layer(), table.names(), crs, shapes.count()));
    if (!table.namesNotRead().isEmpty()) {
      sink.finding(
          problems.remark(
              FindingCode.VALUE_UNREADABLE,
              Level.NOTE,
              "",
              "attributes of a type that is not read: " + String.join(", ", table.namesNotRead()),
              "attributes left out"));
    }
    boolean badTextReported = false;
    for (int i = 0; i < shapes.count(); i++) {
      String id = Integer.toString(i + 1);
      if (!table.next()) {
        sink.finding(
            problems.skipped(
                id, FindingCode.UNREADABLE_FEATURE, "it is marked as deleted in the .dbf file"));
        continue;
      }
      Optional<Geometry> geometry;
      try {
        geometry = shapes.geometry(i);
      } catch (BadShapeException e) {
        sink.finding(problems.skipped(id, FindingCode.UNREADABLE_FEATURE, LayerProblems.detail(e)));
        continue;
      }
      if (shapes.ringsChanged()) {
        sink.finding(
            problems.repaired(
                id,
                FindingCode.INVALID_POLYGON,
                "a ring is not closed, or has fewer than four points",
                "ring closed or left out"));
      }
      sink.feature(new SourceFeature(problems.ref(id), geometry, table.values()));
      if (table.badTextMet() && !badTextReported) {
        badTextReported = true;
        sink.finding(
            problems.remark(
                FindingCode.VALUE_UNREADABLE,
                Level.WARNING,
                id,
                "its text is not of the stated character set, and perhaps that of later features",
                "read as windows-1252; correct the .cpg file"));
      }
    }
  }

  private static Optional<Charset> charset(ShapefileParts parts, LayerProblems problems)
      throws IOException {
    if (parts.cpg().isEmpty()) {
      return Optional.empty();
    }
    String name = smallText(parts.cpg().get(), problems);
    if (name.isEmpty() || CodePage.isLanguageDriver(name)) {
      return Optional.empty();
    }
    return Optional.of(
        CodePage.parse(name)
            .orElseThrow(
                () ->
                    problems.refused(
                        "its .cpg file names an unknown character set '"
                            + LayerProblems.oneLine(name)
                            + "'",
                        "write UTF-8, or the set that was used, into the .cpg file")));
  }

  private static Optional<CrsText> referenceSystem(ShapefileParts parts, LayerProblems problems)
      throws IOException {
    if (parts.prj().isEmpty()) {
      return Optional.empty();
    }
    String wkt = smallText(parts.prj().get(), problems);
    return wkt.isEmpty() ? Optional.empty() : Optional.of(CrsText.ofWkt(wkt));
  }

  private static String smallText(Path file, LayerProblems problems) throws IOException {
    if (Files.size(file) > LONGEST_SIDE_FILE_BYTES) {
      throw problems.refused(
          "its file " + file.getFileName() + " is too long to be what its name says", WHOLE_COPY);
    }
    String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
    return (text.startsWith("\uFEFF") ? text.substring(1) : text).strip();
  }
}
