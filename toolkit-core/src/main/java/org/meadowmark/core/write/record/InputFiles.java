package org.meadowmark.core.write.record;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.SurveyDefinition;

/** The files a survey is read from: its own file, its layers, and the files that go with them. */
public final class InputFiles {
  /** Endings of the files that are read together with one of some ending. */
  private static final Map<String, Set<String>> COMPANIONS =
      Map.of(
          ".shp", Set.of(".shx", ".dbf", ".prj", ".cpg"),
          ".asc", Set.of(".prj"),
          ".tif", Set.of(".prj"),
          ".tiff", Set.of(".prj"));

  private static final List<String> LOGS_OF_A_DATABASE = List.of("-wal", "-journal");

  private InputFiles() {}

  /**
   * {@return digests of every input file, once each, by label}
   *
   * @param definition the survey; its files are read whole, once each
   * @throws MeadowmarkException if a file cannot be read
   */
  public static List<FileDigest> digests(SurveyDefinition definition) {
    List<FileDigest> digests = new ArrayList<>();
    paths(definition).forEach((label, path) -> digests.add(digest(label, path)));
    return digests;
  }

  /**
   * Every input file by label; files that are missing only where the survey names them.
   *
   * @param definition the survey
   * @return where each file is, by the name that messages and the run record give it
   */
  public static SortedMap<String, Path> paths(SurveyDefinition definition) {
    SortedMap<String, Path> files = new TreeMap<>();
    definition.file().ifPresent(file -> files.put(String.valueOf(file.getFileName()), file));
    for (LayerSource layer : definition.layers()) {
      files.put(layer.fileLabel(), layer.file());
      addCompanions(layer, files);
      addLogs(layer, files);
    }
    return files;
  }

  private static FileDigest digest(String label, Path path) {
    try {
      return FileDigest.of(label, path);
    } catch (IOException e) {
      throw new MeadowmarkException(
          label + ": cannot be read for its digest; check that it is a file you may read", e);
    }
  }

  private static void addCompanions(LayerSource layer, Map<String, Path> files) {
    String name = String.valueOf(layer.file().getFileName());
    String main = ending(name);
    Set<String> companions = COMPANIONS.getOrDefault(main.toLowerCase(Locale.ROOT), Set.of());
    if (companions.isEmpty()) {
      return;
    }
    String stem = name.substring(0, name.length() - main.length());
    String label = layer.fileLabel();
    String labelStem = label.substring(0, label.length() - main.length());
    Path folder = layer.file().toAbsolutePath().getParent();
    try (DirectoryStream<Path> siblings = Files.newDirectoryStream(folder)) {
      for (Path sibling : siblings) {
        String other = String.valueOf(sibling.getFileName());
        String ending = ending(other);
        if (other.equals(stem + ending) && companions.contains(ending.toLowerCase(Locale.ROOT))) {
          files.put(labelStem + ending, sibling);
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      // The reader of the layer says what is wrong with its folder.
      return;
    }
  }

  /** What a program that writes to a GeoPackage keeps beside it is a part of its content. */
  private static void addLogs(LayerSource layer, Map<String, Path> files) {
    for (String ending : LOGS_OF_A_DATABASE) {
      Path log = layer.file().resolveSibling(layer.file().getFileName() + ending);
      if (Files.isRegularFile(log)) {
        files.put(layer.fileLabel() + ending, log);
      }
    }
  }

  private static String ending(String name) {
    int dot = name.lastIndexOf('.');
    return dot < 0 ? "" : name.substring(dot);
  }
}
