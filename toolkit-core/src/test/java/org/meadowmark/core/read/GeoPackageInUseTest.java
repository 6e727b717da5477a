package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.write.record.FileDigest;

/** GeoPackages that another program has open, or had open when it was stopped. */
class GeoPackageInUseTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void copyFixture() throws IOException {
    file = folder.resolve("ten.gpkg");
    Files.copy(ReadLayer.fixture("ten-32617.gpkg"), file);
  }

  /** A writer holds the strongest lock: what was there before its change is read. */
  @Test
  void aLockedFileIsReadAsItWasBeforeTheChange() throws Exception {
    try (Connection writer = connect();
        Statement statement = writer.createStatement()) {
      statement.execute("BEGIN EXCLUSIVE");
      SortedMap<String, String> before = state();
      assertThat(ReadLayer.of(file).features()).hasSize(10);
      statement.execute("DELETE FROM ten WHERE fid = 1");
      assertThat(ReadLayer.of(file).features()).hasSize(10);
      assertThat(state()).containsAllEntriesOf(before);
      statement.execute("COMMIT");
    }
    assertThat(ReadLayer.of(file).features()).hasSize(9);
  }

  /**
   * A program was killed in the middle of a change that had reached the file already. Taken as it
   * is, the file holds half the change; with its journal it is as before.
   */
  @Test
  void aChangeThatWasNeverFinishedDoesNotCount() throws Exception {
    Path torn = Files.createDirectory(folder.resolve("torn"));
    try (Connection writer = connect();
        Statement statement = writer.createStatement()) {
      statement.execute("PRAGMA synchronous = FULL");
      statement.execute("PRAGMA cache_size = 1");
      statement.execute("BEGIN IMMEDIATE");
      statement.execute("UPDATE ten SET name = 'half a change'");
      // More than the cache holds, so that the pages changed before are written to the file.
      statement.execute("CREATE TABLE filler (content)");
      for (int i = 0; i < 50; i++) {
        statement.execute("INSERT INTO filler VALUES (randomblob(100000))");
      }
      for (Path each : List.of(file, folder.resolve("ten.gpkg-journal"))) {
        Files.copy(each, torn.resolve(each.getFileName()));
      }
      statement.execute("ROLLBACK");
    }
    Path copy = torn.resolve("ten.gpkg");
    assertThat(copy.resolveSibling("ten.gpkg-journal")).isNotEmptyFile();
    assertThat(Files.size(copy)).isNotEqualTo(Files.size(file));
    assertThat(names(copy)).isEqualTo(names(file));
  }

  /** The log and its index stay as they are, and none is made where there was none. */
  @Test
  void aWriteAheadLogIsReadAndNothingIsMadeBesideIt() throws Exception {
    Path crashed = Files.createDirectory(folder.resolve("crashed"));
    try (Connection writer = connect();
        Statement statement = writer.createStatement()) {
      statement.execute("PRAGMA journal_mode = WAL");
      statement.execute("DELETE FROM ten WHERE fid <= 3");
      SortedMap<String, String> before = state();
      assertThat(ReadLayer.of(file).features()).hasSize(7);
      assertThat(state()).isEqualTo(before);
      for (String name : List.of("ten.gpkg", "ten.gpkg-wal")) {
        Files.copy(folder.resolve(name), crashed.resolve(name), StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    boolean readOnly = crashed.toFile().setWritable(false);
    try {
      assertThat(readOnly).isTrue();
      assertThat(ReadLayer.of(crashed.resolve("ten.gpkg")).features()).hasSize(7);
      try (Stream<Path> left = Files.list(crashed)) {
        assertThat(left).hasSize(2);
      }
    } finally {
      crashed.toFile().setWritable(true);
    }
  }

  private static List<Object> names(Path path) {
    return ReadLayer.of(path).features().stream()
        .map(feature -> feature.attributes().getOrDefault("name", ""))
        .toList();
  }

  private SortedMap<String, String> state() throws IOException {
    SortedMap<String, String> state = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path each : files.filter(Files::isRegularFile).toList()) {
        // The index of a log is shared memory: whoever has it open may write to it.
        boolean isIndex = each.toString().endsWith("-shm");
        state.put(each.getFileName().toString(), isIndex ? "" : FileDigest.of("x", each).sha256());
      }
    }
    return state;
  }

  private Connection connect() throws SQLException {
    Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file.toUri());
    try (Statement statement = connection.createStatement()) {
      for (String trigger : List.of("update1", "update2", "update3", "update4", "delete")) {
        statement.execute("DROP TRIGGER IF EXISTS rtree_ten_geom_" + trigger);
      }
    }
    return connection;
  }
}
