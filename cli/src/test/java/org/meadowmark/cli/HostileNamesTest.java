package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Names in layers that would do harm as paths, formulas, markup, statements or terminal commands,
 * through a whole run: what is written has the files of a run with plain names, and no name is
 * anything but text in them.
 */
class HostileNamesTest {
  private static final List<String> NAMES =
      List.of(
          "../../escaped",
          "C:\\escaped",
          "nul\u0000byte",
          "n".repeat(5_000),
          "CON",
          "\u202Egnp.live",
          "=HYPERLINK(\"http://127.0.0.1/\")",
          "<script>alert(1)</script>",
          "'; DROP TABLE beds; --",
          "@SUM(1)",
          "-1+1",
          "\u001b[2J\nforged: line",
          "+49",
          "\uFF1D1",
          "]]><!ENTITY x SYSTEM 'file:///etc/passwd'>",
          "{{t.lang}} & \"quoted\"");

  @TempDir static Path folder;
  private static Terminal.Outcome hostile;
  private static Path output;
  private static Path plainOutput;

  @BeforeAll
  static void runs() throws IOException {
    List<String> plain = new ArrayList<>();
    for (int i = 0; i < NAMES.size(); i++) {
      plain.add("name" + i);
    }
    plainOutput = folder.resolve("plain").resolve("out");
    output = folder.resolve("hostile").resolve("out");
    Terminal.Outcome usual = run(plain, "Survey", plainOutput);
    assertThat(usual.exitCode()).as(usual.err()).isZero();
    hostile = run(NAMES, "<script>alert(1)</script> ../../name \u001b[2J", output);
    assertThat(hostile.exitCode()).as(hostile.err()).isZero();
  }

  private static Terminal.Outcome run(List<String> names, String name, Path target)
      throws IOException {
    Path home = Files.createDirectories(target.getParent());
    layer(home.resolve("beds.geojson"), names, "Polygon", 0);
    layer(home.resolve("areas.geojson"), names, "Polygon", 0);
    layer(home.resolve("scars.geojson"), names, "LineString", 0);
    layer(home.resolve("channels.geojson"), names, "LineString", 130);
    return Terminal.run(
        Main.commandLine(),
        "assess",
        "--name=" + name,
        "--scars=" + home.resolve("scars.geojson"),
        "--beds=" + home.resolve("beds.geojson"),
        "--areas=" + home.resolve("areas.geojson"),
        "--channels=" + home.resolve("channels.geojson"),
        "--set=uncertainty_draws=0",
        "--set=repair_budget=20000",
        "--output=" + target);
  }

  private static void layer(Path file, List<String> names, String type, double north)
      throws IOException {
    ObjectMapper json = new ObjectMapper();
    ObjectNode root = json.createObjectNode().put("type", "FeatureCollection");
    root.putObject("crs").put("type", "name").putObject("properties").put("name", "EPSG:32617");
    ArrayNode features = root.putArray("features");
    for (int i = 0; i < names.size(); i++) {
      ObjectNode feature = features.addObject().put("type", "Feature");
      feature
          .putObject("properties")
          .put("id", names.get(i))
          .put("name", names.get(i))
          .put("species", "turtlegrass")
          .put("cause", names.get(i))
          .put("width_m", 0.6);
      double x = 500_000 + 120.0 * i;
      double y = 3_000_000;
      ArrayNode coordinates =
          feature.putObject("geometry").put("type", type).putArray("coordinates");
      if (type.equals("Polygon")) {
        ArrayNode ring = coordinates.addArray();
        point(ring, x, y);
        point(ring, x + 120, y);
        point(ring, x + 120, y + 120);
        point(ring, x, y + 120);
        point(ring, x, y);
      } else {
        point(coordinates, x, y + north + (north == 0 ? 100 : 0));
        point(coordinates, x + 119, y + north + (north == 0 ? 90 : 0));
      }
    }
    json.writeValue(file.toFile(), root);
  }

  private static void point(ArrayNode list, double x, double y) {
    list.addArray().add(x).add(y);
  }

  private static TreeSet<String> files(Path root) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      TreeSet<String> names = new TreeSet<>();
      all.forEach(file -> names.add(root.relativize(file).toString()));
      return names;
    }
  }

  private static List<Path> files(String... endings) throws IOException {
    try (Stream<Path> all = Files.walk(output)) {
      return all.filter(
              file -> Stream.of(endings).anyMatch(ending -> file.toString().endsWith(ending)))
          .sorted()
          .toList();
    }
  }

  @Test
  void noNameBecomesAFileName() throws IOException {
    TreeSet<String> written = files(output);
    assertThat(written).isEqualTo(files(plainOutput));
    assertThat(written).anyMatch(name -> name.startsWith("proposals")).hasSizeGreaterThan(40);
    assertThat(files(folder.resolve("hostile")).stream().filter(name -> !name.startsWith("out")))
        .containsExactly("", "areas.geojson", "beds.geojson", "channels.geojson", "scars.geojson");
    assertThat(folder.resolve("escaped")).doesNotExist();
  }

  @Test
  void noTextOfATableIsAFormulaAndNoNumberIsText() throws IOException {
    int guarded = 0;
    for (Path table : files(".csv")) {
      try (CSVParser rows = CSVParser.parse(table, StandardCharsets.UTF_8, CSVFormat.RFC4180)) {
        for (CSVRecord row : rows) {
          for (String cell : row) {
            if (!cell.isEmpty() && "=+-@\t\r\n\uFF1D".indexOf(cell.charAt(0)) >= 0) {
              assertThat(cell).as(table.toString()).matches("-[0-9]+(\\.[0-9]+)?");
            }
            guarded += cell.startsWith("'=") || cell.startsWith("'@SUM") ? 1 : 0;
          }
        }
      }
    }
    assertThat(guarded).isPositive();
  }

  @Test
  void namesAreNoMarkup() throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
    factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    List<Path> drawings = files(".svg", ".sld", ".gpx");
    assertThat(drawings).hasSizeGreaterThan(10);
    for (Path drawing : drawings) {
      factory.newDocumentBuilder().parse(drawing.toFile());
      assertThat(Files.readString(drawing)).doesNotContain("<script", "<!ENTITY");
    }
    for (Path page : files(".html", ".md")) {
      assertThat(Files.readString(page)).as(page.toString()).doesNotContain("<script>alert");
    }
    assertThat(output.resolve("data-dictionary.md"))
        .hasSameTextualContentAs(plainOutput.resolve("data-dictionary.md"));
  }

  @Test
  void namesMoveNoCursorAndForgeNoLine() throws IOException {
    List<String> texts = new ArrayList<>(List.of(hostile.out(), hostile.err()));
    for (Path text : files(".txt")) {
      texts.add(Files.readString(text));
    }
    assertThat(texts)
        .allSatisfy(
            text -> {
              assertThat(text.chars().filter(c -> c != '\n' && Character.isISOControl(c)))
                  .isEmpty();
              assertThat(text).doesNotContain("\u202E").doesNotContainPattern("(?m)^forged");
            });
  }

  @Test
  void namesAreNoStatements() throws Exception {
    assertThat(tablesOf(output)).isEqualTo(tablesOf(plainOutput)).contains("beds");
  }

  private static List<String> tablesOf(Path run) throws Exception {
    List<String> names = new ArrayList<>();
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + run.resolve("results.gpkg"));
        ResultSet rows =
            connection
                .createStatement()
                .executeQuery("SELECT name FROM sqlite_master ORDER BY name")) {
      while (rows.next()) {
        names.add(rows.getString(1));
      }
    }
    return names;
  }
}
