package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The same survey gives the same bytes, whatever the threads, the language, time zone and character
 * set of the computer, and the order in which features and attributes stand in the files.
 */
class DeterminismTest {
  private static final String RECORD = "run-record.json";
  private static final long SEED = 99;

  @TempDir static Path folder;
  private static Path sample;
  private static Path shuffled;
  private static SortedMap<String, String> assessed;

  @BeforeAll
  static void assess() throws Exception {
    sample = folder.resolve("sample");
    SmallSample.make(sample);
    shuffled = folder.resolve("shuffled");
    for (String season : List.of("season-1", "season-2")) {
      shuffle(sample.resolve(season), Files.createDirectories(shuffled.resolve(season)));
    }
    Path output = folder.resolve("assessed");
    run("assess", sample.resolve("season-2").toString(), "--threads=2", "--output=" + output);
    assessed = OutputState.of(output);
    assertThat(assessed).hasSizeGreaterThan(40).containsKey(RECORD);
  }

  @Test
  void anotherRunOnAnotherComputerGivesTheSameBytes() throws Exception {
    Path output = folder.resolve("elsewhere");
    ChildProgram.Outcome outcome =
        ChildProgram.run(
            List.of(
                "-Xmx1g",
                "-XX:ActiveProcessorCount=1",
                "-Duser.language=tr",
                "-Duser.country=TR",
                "-Duser.timezone=Asia/Kathmandu",
                "-Dfile.encoding=ISO-8859-1"),
            Map.of(),
            "assess",
            sample.resolve("season-2").toString(),
            "--quiet",
            "--output=" + output);
    assertThat(outcome.errorText()).isEmpty();
    assertThat(outcome.exitCode()).isZero();
    assertSame(OutputState.of(output), assessed);
    assertThat(differences(folder.resolve("assessed"), output))
        .as("what differs in the record")
        .allMatch(
            path ->
                path.startsWith("/options/")
                    || path.matches("/run/(started|ended|wall_seconds)")
                    || path.matches("/run/stages/\\d+/(wall_seconds|peak_heap_bytes)"));
  }

  /** With the run of the others and that on another computer these are five. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 4})
  void runAfterRunGivesTheSameBytes(int threads, @TempDir Path again) throws Exception {
    Path output = again.resolve("again");
    run(
        "assess",
        sample.resolve("season-2").toString(),
        "--threads=" + threads,
        "--output=" + output);
    assertSame(OutputState.of(output), assessed);
  }

  /** Sheets, paper and record name the digests of the input, so they differ and nothing else. */
  @Test
  void theOrderInTheFilesDoesNotMatter() throws Exception {
    Path output = folder.resolve("of shuffled");
    run("assess", shuffled.resolve("season-2").toString(), "--threads=2", "--output=" + output);
    assertSame(withoutDigests(OutputState.of(output)), withoutDigests(assessed));
  }

  @Test
  void comparisonsAreTheSameToo() throws Exception {
    Path first = folder.resolve("compared");
    run(compare(sample, first, 2));
    Locale language = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    Path second = folder.resolve("compared again");
    try {
      Locale.setDefault(Locale.forLanguageTag("tr-TR"));
      TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kathmandu"));
      run(compare(shuffled, second, 1));
    } finally {
      Locale.setDefault(language);
      TimeZone.setDefault(zone);
    }
    assertSame(OutputState.of(second), OutputState.of(first));
  }

  private static String[] compare(Path surveys, Path output, int threads) {
    return new String[] {
      "compare-seasons",
      surveys.resolve("season-1").toString(),
      surveys.resolve("season-2").toString(),
      "--set=position_rmse_m=0.42",
      "--threads=" + threads,
      "--output=" + output
    };
  }

  private static void run(String... arguments) {
    String[] all = Stream.concat(Stream.of(arguments), Stream.of("--quiet")).toArray(String[]::new);
    Terminal.Outcome outcome = Terminal.run(Main.commandLine(), all);
    assertThat(outcome.exitCode()).as(outcome.err()).isZero();
  }

  private static void assertSame(
      SortedMap<String, String> state, SortedMap<String, String> expected) {
    assertThat(state.keySet()).isEqualTo(expected.keySet());
    assertThat(state.keySet())
        .filteredOn(file -> !file.equals(RECORD))
        .allSatisfy(file -> assertThat(state.get(file)).as(file).isEqualTo(expected.get(file)));
  }

  private static SortedMap<String, String> withoutDigests(SortedMap<String, String> state) {
    SortedMap<String, String> rest = new TreeMap<>(state);
    rest.keySet().removeIf(file -> file.startsWith("proposals/") || file.equals("hearing.pdf"));
    return rest;
  }

  private static List<String> differences(Path one, Path other) throws IOException {
    ObjectMapper json = new ObjectMapper();
    List<String> paths = new ArrayList<>();
    addDifferences(
        json.readTree(Files.readString(one.resolve(RECORD))),
        json.readTree(Files.readString(other.resolve(RECORD))),
        "",
        paths);
    assertThat(paths).as("the times of the run").contains("/run/started");
    return paths;
  }

  private static void addDifferences(
      JsonNode one, JsonNode other, String path, List<String> paths) {
    if (one.isObject() && other.isObject()) {
      one.fieldNames()
          .forEachRemaining(
              name -> addDifferences(one.path(name), other.path(name), path + "/" + name, paths));
      other
          .fieldNames()
          .forEachRemaining(
              name -> {
                if (!one.has(name)) {
                  paths.add(path + "/" + name);
                }
              });
    } else if (one.isArray() && other.isArray() && one.size() == other.size()) {
      for (int i = 0; i < one.size(); i++) {
        addDifferences(one.get(i), other.get(i), path + "/" + i, paths);
      }
    } else if (!one.equals(other)) {
      paths.add(path);
    }
  }

  /** Copies a survey folder with features and attributes in another order. */
  private static void shuffle(Path from, Path to) throws IOException, SQLException {
    Random random = new Random(SEED);
    for (String name : OutputState.names(from)) {
      Path copy = to.resolve(name);
      Files.copy(from.resolve(name), copy);
      if (name.endsWith(".gpkg")) {
        shuffleRows(copy, random);
      } else if (name.endsWith(".geojson")) {
        shuffleFeatures(copy, random);
      }
    }
  }

  /** A feature table is read by its row numbers, so these are dealt anew. */
  private static void shuffleRows(Path file, Random random) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file.toUri());
        Statement statement = connection.createStatement()) {
      connection.setAutoCommit(false);
      for (String trigger :
          texts(statement, "SELECT name FROM sqlite_master WHERE type='trigger'")) {
        statement.execute("DROP TRIGGER \"" + trigger + "\"");
      }
      for (String table : texts(statement, "SELECT table_name FROM gpkg_geometry_columns")) {
        List<String> ids = texts(statement, "SELECT fid FROM \"" + table + "\" ORDER BY fid");
        List<String> dealt = new ArrayList<>(ids);
        Collections.shuffle(dealt, random);
        try (PreparedStatement update =
            connection.prepareStatement("UPDATE \"" + table + "\" SET fid = ? WHERE fid = ?")) {
          for (int i = 0; i < ids.size(); i++) {
            update.setLong(1, -1 - Long.parseLong(dealt.get(i)));
            update.setLong(2, Long.parseLong(ids.get(i)));
            update.executeUpdate();
          }
        }
        statement.execute("UPDATE \"" + table + "\" SET fid = -1 - fid");
      }
      connection.commit();
    }
  }

  private static List<String> texts(Statement statement, String query) throws SQLException {
    List<String> texts = new ArrayList<>();
    try (ResultSet rows = statement.executeQuery(query)) {
      while (rows.next()) {
        texts.add(rows.getString(1));
      }
    }
    return texts;
  }

  private static void shuffleFeatures(Path file, Random random) throws IOException {
    ObjectMapper json = new ObjectMapper();
    ObjectNode root = (ObjectNode) json.readTree(Files.readString(file));
    List<JsonNode> features = new ArrayList<>();
    root.path("features").forEach(features::add);
    Collections.shuffle(features, random);
    ArrayNode array = root.putArray("features");
    for (JsonNode feature : features) {
      List<String> names = new ArrayList<>();
      feature.path("properties").fieldNames().forEachRemaining(names::add);
      Collections.reverse(names);
      ObjectNode properties = json.createObjectNode();
      names.forEach(name -> properties.set(name, feature.path("properties").path(name)));
      array.add(((ObjectNode) feature).set("properties", properties));
    }
    Files.writeString(file, json.writeValueAsString(root));
  }
}
