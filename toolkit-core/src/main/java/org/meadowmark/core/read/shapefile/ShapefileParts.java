package org.meadowmark.core.read.shapefile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.meadowmark.core.read.LayerProblems;

/**
 * The files that make up one shapefile: same name, upper or lower case.
 *
 * @param shp geometries
 * @param shx where each geometry starts
 * @param dbf attributes
 * @param prj reference system
 * @param cpg character set of the attributes
 */
record ShapefileParts(Path shp, Path shx, Path dbf, Optional<Path> prj, Optional<Path> cpg) {

  static ShapefileParts find(Path shp, LayerProblems problems) throws IOException {
    String base = baseName(shp);
    Map<String, Path> byExtension = new HashMap<>();
    try (Stream<Path> files = Files.list(shp.toAbsolutePath().getParent())) {
      files
          .filter(file -> baseName(file).equalsIgnoreCase(base))
          .sorted()
          .forEach(
              file -> {
                // Of two spellings, the one of the .shp itself.
                if (baseName(file).equals(base)) {
                  byExtension.put(extension(file), file);
                } else {
                  byExtension.putIfAbsent(extension(file), file);
                }
              });
    }
    return new ShapefileParts(
        shp,
        required(byExtension, "shx", problems),
        required(byExtension, "dbf", problems),
        Optional.ofNullable(byExtension.get("prj")),
        Optional.ofNullable(byExtension.get("cpg")));
  }

  private static Path required(
      Map<String, Path> byExtension, String extension, LayerProblems problems) throws IOException {
    Path file = byExtension.get(extension);
    if (file == null) {
      throw problems.refused(
          "its ." + extension + " file is missing",
          "copy all files of the shapefile (.shp, .shx, .dbf, .prj) into one folder");
    }
    if (Files.size(file) == 0) {
      throw problems.refused(
          "its ." + extension + " file has zero bytes", "get a whole copy of the shapefile");
    }
    return file;
  }

  static String baseName(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot <= 0 ? name : name.substring(0, dot);
  }

  private static String extension(Path file) {
    String name = file.getFileName().toString();
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }
}
