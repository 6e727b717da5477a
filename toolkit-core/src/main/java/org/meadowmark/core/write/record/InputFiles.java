package org.meadowmark.core.write.record;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.SurveyDefinition;

/** The files a survey is read from: its own file, its layers, and the parts of shapefiles. */
public final class InputFiles {
  private static final String SHAPEFILE = ".shp";
  private static final Set<String> SHAPEFILE_PARTS = Set.of(".shx", ".dbf", ".prj", ".cpg");

  private InputFiles() {}

  /**
   * Digests of every input file, once each, by label.
   *
   * @throws MeadowmarkException if a file cannot be read
   */
  public static List<FileDigest> digests(SurveyDefinition definition) {
    Map<String, Path> files = new TreeMap<>();
    definition.file().ifPresent(file -> files.put(String.valueOf(file.getFileName()), file));
    for (LayerSource layer : definition.layers()) {
      files.put(layer.fileLabel(), layer.file());
      addShapefileParts(layer, files);
    }
    List<FileDigest> digests = new ArrayList<>();
    files.forEach((label, path) -> digests.add(digest(label, path)));
    return digests;
  }

  private static FileDigest digest(String label, Path path) {
    try {
      return FileDigest.of(label, path);
    } catch (IOException e) {
      throw new MeadowmarkException(
          label + ": cannot be read for its digest; check that it is a file you may read", e);
    }
  }

  private static void addShapefileParts(LayerSource layer, Map<String, Path> files) {
    String label = layer.fileLabel();
    if (!label.toLowerCase(Locale.ROOT).endsWith(SHAPEFILE)) {
      return;
    }
    String stem = stem(String.valueOf(layer.file().getFileName()));
    Path folder = layer.file().toAbsolutePath().getParent();
    try (DirectoryStream<Path> siblings = Files.newDirectoryStream(folder)) {
      for (Path sibling : siblings) {
        String name = String.valueOf(sibling.getFileName());
        String ending = name.substring(Math.min(stem.length(), name.length()));
        if (name.startsWith(stem) && SHAPEFILE_PARTS.contains(ending.toLowerCase(Locale.ROOT))) {
          files.put(stem(label) + ending, sibling);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String stem(String shapefile) {
    return shapefile.substring(0, shapefile.length() - SHAPEFILE.length());
  }
}
