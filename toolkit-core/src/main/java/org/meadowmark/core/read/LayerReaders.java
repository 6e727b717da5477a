package org.meadowmark.core.read;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.meadowmark.core.read.csv.CsvLayerReader;
import org.meadowmark.core.read.geojson.GeoJsonLayerReader;
import org.meadowmark.core.read.geopackage.GeoPackageReader;
import org.meadowmark.core.read.gpx.GpxLayerReader;
import org.meadowmark.core.read.shapefile.ShapefileLayerReader;
import org.meadowmark.core.survey.LayerSource;

/** Chooses the reader of a file by its content, and by its extension where that says nothing. */
public final class LayerReaders {
  private static final String KNOWN =
      "GeoPackage (.gpkg), shapefile (.shp), GeoJSON (.geojson, .json), CSV (.csv, .tsv, .txt),"
          + " GPX (.gpx)";
  private static final List<String> PARTS_OF_SHAPEFILE = List.of("dbf", "shx", "prj", "cpg");
  private static final int BYTES_LOOKED_AT = 1_024;

  private enum Format {
    GEOPACKAGE,
    SHAPEFILE,
    GEOJSON,
    CSV,
    GPX
  }

  private LayerReaders() {}

  /**
   * Reads a layer.
   *
   * @param source the layer
   * @param sink takes header, features and findings
   * @throws org.meadowmark.core.model.SurveyInputException if the file does not exist, is empty, is
   *     of no known format, or cannot be read as a whole
   */
  public static void read(LayerSource source, FeatureSink sink) {
    of(source).read(source, sink);
  }

  /**
   * {@return the reader of a file}
   *
   * @param source the layer; its file is looked at, up to its first 1,024 bytes
   * @throws org.meadowmark.core.model.SurveyInputException if the file does not exist, is empty or
   *     is of no known format
   */
  public static LayerReader of(LayerSource source) {
    LayerProblems problems = new LayerProblems(source, "");
    return switch (format(source.file(), problems)) {
      case GEOPACKAGE -> new GeoPackageReader();
      case SHAPEFILE -> new ShapefileLayerReader();
      case GEOJSON -> new GeoJsonLayerReader();
      case CSV -> new CsvLayerReader();
      case GPX -> new GpxLayerReader();
    };
  }

  private static Format format(Path file, LayerProblems problems) {
    if (!Files.exists(file)) {
      throw problems.refused("does not exist", "check the name and the folder");
    }
    if (Files.isDirectory(file)) {
      throw problems.refused("is a folder", "name the file inside it");
    }
    if (!Files.isRegularFile(file)) {
      throw problems.refused(
          "is no ordinary file, and would have to be read more than once", "save it as a file");
    }
    byte[] start = start(file, problems);
    if (start.length == 0) {
      throw problems.refused("has zero bytes", "get a whole copy");
    }
    String extension = extension(file);
    if (PARTS_OF_SHAPEFILE.contains(extension)) {
      throw problems.refused("is a part of a shapefile", "name its .shp file");
    }
    return byContent(start)
        .or(() -> byExtension(extension))
        .orElseThrow(() -> problems.refused("is not of a known format", "give one of: " + KNOWN));
  }

  private static byte[] start(Path file, LayerProblems problems) {
    try (InputStream stream = Files.newInputStream(file)) {
      return stream.readNBytes(BYTES_LOOKED_AT);
    } catch (IOException e) {
      throw problems.unreadable(e);
    }
  }

  private static Optional<Format> byContent(byte[] start) {
    String text = new String(start, StandardCharsets.ISO_8859_1);
    if (text.startsWith("SQLite format 3\0")) {
      return Optional.of(Format.GEOPACKAGE);
    }
    if (text.startsWith("\0\0\u0027\n")) {
      return Optional.of(Format.SHAPEFILE);
    }
    String visible = text.replaceFirst("\\A\u00EF\u00BB\u00BF", "").stripLeading();
    if (visible.startsWith("{")) {
      return Optional.of(Format.GEOJSON);
    }
    if (visible.startsWith("<") && visible.contains("<gpx")) {
      return Optional.of(Format.GPX);
    }
    return Optional.empty();
  }

  private static Optional<Format> byExtension(String extension) {
    return switch (extension) {
      case "gpkg" -> Optional.of(Format.GEOPACKAGE);
      case "shp" -> Optional.of(Format.SHAPEFILE);
      case "geojson", "json" -> Optional.of(Format.GEOJSON);
      case "csv", "tsv", "txt" -> Optional.of(Format.CSV);
      case "gpx" -> Optional.of(Format.GPX);
      default -> Optional.empty();
    };
  }

  private static String extension(Path file) {
    String name = file.getFileName().toString();
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }
}
