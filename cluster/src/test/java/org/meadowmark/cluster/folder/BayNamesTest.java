package org.meadowmark.cluster.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BayNamesTest {
  @ParameterizedTest
  @CsvSource({
    "north bay, north bay",
    "Älvö Sund, Älvö Sund",
    "../../etc, bay..-..-etc",
    "/, bay-",
    "'..', bay",
    "'. .', bay",
    ".hidden, bay.hidden",
    "_temporary, bay_temporary",
    "-rf, bay-rf",
    "a:b*c?, a-b-c-",
    "'a\\b', a-b",
    "'end. ', end",
    "con, baycon",
    "NUL.txt, bayNUL.txt",
    "console, console",
  })
  void namesAreSafe(String bay, String folder) {
    assertThat(BayNames.of(List.of(bay))).containsExactly(Map.entry(bay, folder));
  }

  @Test
  void differentBaysHaveDifferentFolders() {
    List<String> bays = List.of("a/b", "a:b", "A-B", "a-b-2", "e\u0301", "\u00e9");
    Map<String, String> names = BayNames.of(bays);
    assertThat(names.keySet()).containsExactlyInAnyOrderElementsOf(bays);
    assertThat(names.values().stream().map(name -> name.toLowerCase(Locale.ROOT)))
        .doesNotHaveDuplicates();
    assertThat(BayNames.of(List.of("\u00e9", "a-b-2", "A-B", "e\u0301", "a:b", "a/b")))
        .isEqualTo(names);
  }

  @Test
  void longNamesFitAndAreToldApart() {
    String start = "海".repeat(200);
    Map<String, String> names = BayNames.of(List.of(start + "1", start + "2"));
    assertThat(names.values())
        .doesNotHaveDuplicates()
        .allSatisfy(
            name -> assertThat(name.getBytes(StandardCharsets.UTF_8).length).isBetween(90, 110));
  }
}
