package org.meadowmark.core.read.geopackage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.meadowmark.core.read.LayerProblems;
import org.sqlite.SQLiteConfig;

/**
 * A GeoPackage opened so that nothing is written to it or beside it.
 *
 * <p>Without a log of changes beside it, the file is taken as it is: no lock is asked for, and a
 * file in write-ahead mode gets no new files beside it. With one (another program has the file open
 * or was stopped in the middle of a change), file and log are copied to the temporary folder, where
 * SQLite puts the two together: changes of the write-ahead log count, a change that was not
 * finished does not.
 */
final class ReadOnlyDatabase implements AutoCloseable {
  private static final List<String> LOGS = List.of("-wal", "-journal");

  private final List<Path> copies;
  private final Connection connection;

  private ReadOnlyDatabase(Connection connection, List<Path> copies) {
    this.connection = connection;
    this.copies = copies;
  }

  /**
   * Opens a file.
   *
   * @param file the GeoPackage
   * @param config limits of the connection; made read-only where the file is taken as it is
   * @param problems words for a copy that cannot be made
   */
  static ReadOnlyDatabase open(Path file, SQLiteConfig config, LayerProblems problems)
      throws SQLException {
    Path absolute = file.toAbsolutePath();
    List<Path> logs =
        LOGS.stream()
            .map(ending -> absolute.resolveSibling(absolute.getFileName() + ending))
            .filter(ReadOnlyDatabase::hasContent)
            .toList();
    if (logs.isEmpty()) {
      config.setReadOnly(true);
      String url = "jdbc:sqlite:" + absolute.toUri() + "?immutable=1";
      return new ReadOnlyDatabase(config.createConnection(url), List.of());
    }
    List<Path> copies = new ArrayList<>();
    try {
      Path copy = copy(absolute, logs, copies, problems);
      return new ReadOnlyDatabase(config.createConnection("jdbc:sqlite:" + copy.toUri()), copies);
    } catch (SQLException | RuntimeException e) {
      delete(copies);
      throw e;
    }
  }

  Connection connection() {
    return connection;
  }

  private static boolean hasContent(Path log) {
    try {
      return Files.size(log) > 0;
    } catch (IOException e) {
      return false;
    }
  }

  private static Path copy(Path file, List<Path> logs, List<Path> copies, LayerProblems problems) {
    List<Path> sources = new ArrayList<>(List.of(file));
    sources.addAll(logs);
    try {
      List<String> before = stamps(sources);
      Path folder = Files.createTempDirectory("meadowmark-");
      copies.add(folder);
      folder.toFile().deleteOnExit();
      String name = file.getFileName().toString();
      for (Path source : sources) {
        String ending = source.getFileName().toString().substring(name.length());
        Path copy = folder.resolve("copy.gpkg" + ending);
        copies.add(copy);
        copy.toFile().deleteOnExit();
        Files.copy(source, copy);
      }
      if (!before.equals(stamps(sources))) {
        throw problems.refused(
            "is being changed by another program", "save and close it there, and run again");
      }
      return folder.resolve("copy.gpkg");
    } catch (IOException e) {
      throw problems.refused(
          "has unsaved changes beside it ("
              + logs.get(0).getFileName()
              + "), and a copy to work on cannot be made ("
              + LayerProblems.detail(e)
              + ")",
          "save and close it in the other program, and run again",
          e);
    }
  }

  private static List<String> stamps(List<Path> files) throws IOException {
    List<String> stamps = new ArrayList<>();
    for (Path file : files) {
      BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
      stamps.add(attributes.size() + " " + attributes.lastModifiedTime());
    }
    return stamps;
  }

  @Override
  public void close() throws SQLException {
    try {
      connection.close();
    } finally {
      delete(copies);
    }
  }

  /** Files before the folder that they are in. */
  private static void delete(List<Path> copies) {
    for (int i = copies.size() - 1; i >= 0; i--) {
      try {
        if (i == 0) {
          Files.deleteIfExists(copies.get(0).resolve("copy.gpkg-shm"));
        }
        Files.deleteIfExists(copies.get(i));
      } catch (IOException e) {
        // It is deleted when the program ends.
      }
    }
  }
}
