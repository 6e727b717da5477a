package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Looks into the packed distribution; runs after packing, in the phase {@code verify}. */
class DistributionIT {
  private static final Path TARGET = Path.of(System.getProperty("meadowmark.root"), "cli/target");
  private static final Pattern IN_ZIP = Pattern.compile("meadowmark-[^/]+/(.*)");

  private static Set<String> zipped;

  @BeforeAll
  static void list() throws IOException {
    assumeThat(TARGET.resolve("bom.json"))
        .as("the bill of materials, which only an online build makes (leave out -o)")
        .exists();
    try (ZipFile zip = new ZipFile(zip().toFile())) {
      zipped =
          zip.stream()
              .filter(entry -> !entry.isDirectory())
              .map(
                  entry -> {
                    Matcher matcher = IN_ZIP.matcher(entry.getName());
                    assertThat(matcher.matches()).as(entry.getName()).isTrue();
                    return matcher.group(1);
                  })
              .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  private static Path zip() throws IOException {
    try (Stream<Path> files = Files.list(TARGET)) {
      return files
          .filter(file -> file.getFileName().toString().matches("meadowmark-.*\\.zip"))
          .findFirst()
          .orElseThrow();
    }
  }

  @Test
  void everyLibraryIsInTheBillOfMaterialsAndTheOtherWayRound() throws IOException {
    Set<String> jars =
        zipped.stream()
            .filter(name -> name.startsWith("lib/"))
            .map(name -> name.substring("lib/".length()))
            .collect(Collectors.toCollection(TreeSet::new));
    // The launchers want this one jar without its version.
    assertThat(jars.remove("cli.jar")).isTrue();
    Set<String> listed = new TreeSet<>();
    for (BillOfMaterials.Library library : BillOfMaterials.read(TARGET.resolve("bom.json")).all()) {
      if (!library.artifact().equals("org.meadowmark:cli")) {
        listed.add(library.fileName());
      }
    }

    assertThat(jars).hasSizeGreaterThan(50).isEqualTo(listed);
  }

  @Test
  void theBillNamesNoTimeAndNoSerialNumber() throws IOException {
    assertThat(Files.readString(TARGET.resolve("bom.json")))
        .doesNotContain("serialNumber")
        .doesNotContain("\"timestamp\"");
  }

  @Test
  void licencesNoticesAndTheBillAreInBothForms() throws IOException {
    Path folder = TARGET.resolve("meadowmark");
    Set<String> wanted =
        Set.of(
            "LICENSE",
            "NOTICE",
            "THIRD-PARTY.md",
            "README",
            "bom.json",
            "licences/EPL-2.0.txt",
            "licences/GPL-3.0.txt",
            "licences/LGPL-2.1.txt",
            "licences/LGPL-3.0.txt",
            "licences/MPL-2.0.txt");

    assertThat(zipped).containsAll(wanted);
    for (String name : wanted) {
      assertThat(folder.resolve(name)).isNotEmptyFile();
    }
    try (ZipFile zip = new ZipFile(zip().toFile());
        InputStream in =
            zip.getInputStream(
                zip.stream().filter(e -> e.getName().endsWith("/bom.json")).findFirst().get())) {
      assertThat(in.readAllBytes()).isEqualTo(Files.readAllBytes(TARGET.resolve("bom.json")));
    }
  }
}
