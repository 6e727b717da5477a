package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.OutputExistsException;

/** The file without a browser. */
class ReportTest {
  private static final String PAGE = Report.page(HostileSurvey.input(), ReportLayers.MOST_FEATURES);

  @TempDir Path folder;

  @Test
  void sameResultsGiveTheSameBytes() {
    assertThat(Report.page(HostileSurvey.input(), ReportLayers.MOST_FEATURES)).isEqualTo(PAGE);
  }

  @Test
  void pointsToNothingOutside() {
    String markup = PAGE.replaceAll("(?s)<script.*?</script>", "");
    List<String> addresses =
        Pattern.compile("(?:src|href|action|srcset|poster|data)\\s*=\\s*[\"']?([^\"'\\s>]*)")
            .matcher(markup)
            .results()
            .map(result -> result.group(1))
            .toList();
    assertThat(addresses)
        .isNotEmpty()
        .allMatch(a -> a.startsWith("#") || a.startsWith("data:image/"));
    assertThat(markup).doesNotContain("url(", "@import", "<link", "<iframe", "<base");
    assertThat(PAGE).doesNotContain("sourceMappingURL");
  }

  @Test
  void namesAreEscapedInMarkupAndData() {
    String data = data();
    assertThat(data).doesNotContain("<", ">", "&", "\u2028", "\u2029");
    String markup = PAGE.replaceAll("(?s)<script.*?</script>", "");
    assertThat(markup)
        .contains("&lt;script&gt;window.hurt", "&lt;/script&gt;&lt;img src", "{{t.lang}} ends")
        .doesNotContain("<script>window.hurt", "<img src=x");
    assertThat(Pattern.compile("<script").matcher(PAGE.replace(data, "")).results().count())
        .as("three elements, and what the map library says of itself")
        .isEqualTo(3 + scriptsNamedByTheLibrary());
  }

  private static long scriptsNamedByTheLibrary() {
    return Pattern.compile("<script").matcher(MapLibrary.script()).results().count();
  }

  @Test
  void dataIsJsonWithTheNamesAsTheyWere() throws IOException {
    JsonNode data = new ObjectMapper().readTree(data());
    JsonNode beds = layer(data, "beds");
    assertThat(beds.get("columns").get(0).get("values"))
        .extracting(JsonNode::asText)
        .startsWith(HostileSurvey.NAMES.toArray(String[]::new));
    assertThat(beds.get("columns").get(1).get("words").get(0).asText()).isEqualTo("shoal grass");
    assertThat(data.get("layers").size()).isEqualTo(11);
  }

  @Test
  void whatIsLeftOutIsCounted() throws IOException {
    String thinned = Report.page(HostileSurvey.input(), 2);
    assertThat(thinned)
        .contains(
            "Beds: of 7 only 2 are there, largest scarred share first; all are in tables/beds.csv")
        .contains("Scars: of 4 only 2 are there")
        .contains("Proposed marks: ");
    assertThat(PAGE).contains("Beds: all 7 are there").doesNotContain(" of 7 only ");
    JsonNode data =
        new ObjectMapper().readTree(between(thinned, "id=\"report-data\">", "</script>"));
    assertThat(layer(data, "beds").get("count").asInt()).isEqualTo(2);
    assertThat(layer(data, "beds").get("columns").get(0).get("values")).hasSize(2);
  }

  @Test
  void answersUseTheFiguresOfTheRun() {
    assertThat(PAGE)
        .contains(
            "Scars take up 505\u00a0m² of 1.20\u00a0ha of surveyed bed, 4.20\u00a0% of it (class Light)")
        .contains("they cut 3 patches of grass into 6")
        .contains("Segment Pelican Cut S2 leads, with 100\u00a0m/ha")
        .contains("No budget is set");
  }

  @Test
  void cautionsAreThere() {
    assertThat(PAGE)
        .contains("Boat work over shallow beds", "Signs and marks in navigable water")
        .contains("Planting and diving", "not for navigation", "BSD 2-Clause License");
  }

  @Test
  void existingFileStays() throws IOException {
    Files.writeString(folder.resolve(Report.FILE_NAME), "mine");
    assertThatThrownBy(() -> Report.write(folder, HostileSurvey.input()))
        .isInstanceOf(OutputExistsException.class);
    assertThat(folder.resolve(Report.FILE_NAME)).hasContent("mine");
  }

  private static String data() {
    return between(PAGE, "id=\"report-data\">", "</script>");
  }

  private static String between(String text, String start, String end) {
    MatchResult found =
        Pattern.compile(Pattern.quote(start) + "(.*?)" + Pattern.quote(end), Pattern.DOTALL)
            .matcher(text)
            .results()
            .findFirst()
            .orElseThrow();
    return found.group(1);
  }

  private static JsonNode layer(JsonNode data, String key) {
    for (JsonNode layer : data.get("layers")) {
      if (layer.get("key").asText().equals(key)) {
        return layer;
      }
    }
    throw new AssertionError("no layer " + key);
  }
}
