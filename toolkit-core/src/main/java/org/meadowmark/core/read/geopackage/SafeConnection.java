package org.meadowmark.core.read.geopackage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.meadowmark.core.read.LayerProblems;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConfig;

/**
 * A connection to a GeoPackage of unknown origin: read-only, no value longer than the file, and no
 * more work between two rows than a number of steps. A view can ask for rows without end, or for a
 * blob of a gigabyte, from a file of a few kilobytes.
 */
final class SafeConnection implements AutoCloseable {
  private static final int STEPS_A_CALL = 100_000;

  /** Three hundred million steps: a few seconds of work for one row. */
  private static final int MOST_CALLS_A_ROW = 3_000;

  private static final int SMALLEST_LONGEST_VALUE = 1_000_000;
  private static final int LONGEST_VALUE = 1_000_000_000;

  private final ReadOnlyDatabase database;
  private final long fileBytes;
  private int calls;

  private SafeConnection(ReadOnlyDatabase database, long fileBytes) {
    this.database = database;
    this.fileBytes = fileBytes;
  }

  static SafeConnection open(Path file, LayerProblems problems) throws SQLException, IOException {
    long bytes = Files.size(file) + bytesOfLog(file);
    SQLiteConfig config = new SQLiteConfig();
    config.setPragma(
        SQLiteConfig.Pragma.LIMIT_LENGTH,
        Long.toString(Math.min(LONGEST_VALUE, Math.max(SMALLEST_LONGEST_VALUE, bytes))));
    SafeConnection safe = new SafeConnection(ReadOnlyDatabase.open(file, config, problems), bytes);
    try {
      safe.limit();
      return safe;
    } catch (SQLException e) {
      safe.close();
      throw e;
    }
  }

  /** A write-ahead log may hold more than the file itself. */
  private static long bytesOfLog(Path file) throws IOException {
    Path log = file.resolveSibling(file.getFileName() + "-wal");
    return Files.exists(log) ? Files.size(log) : 0;
  }

  private void limit() throws SQLException {
    try (Statement statement = connection().createStatement()) {
      // Views and defaults of the file may call harmless functions only.
      statement.execute("PRAGMA trusted_schema = OFF");
      statement.execute("PRAGMA cell_size_check = ON");
    }
    ProgressHandler.setHandler(
        connection(),
        STEPS_A_CALL,
        new ProgressHandler() {
          @Override
          protected int progress() {
            calls++;
            return calls > MOST_CALLS_A_ROW ? 1 : 0;
          }
        });
  }

  Connection connection() {
    return database.connection();
  }

  /** A row came: the next one may take as long again. */
  void rowCame() {
    calls = 0;
  }

  /** Whether a table states more rows than its file has bytes. */
  boolean isMoreThanHeld(long rows) {
    return rows > fileBytes;
  }

  @Override
  public void close() throws SQLException {
    database.close();
  }
}
