package org.meadowmark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Writes {@code docs/dependencies.md} from the bills of materials that the build makes, and holds
 * the committed one against it. {@code -Dmeadowmark.renew-dependencies=true} renews it.
 */
class DependenciesTest {
  private static final Path ROOT = Path.of(System.getProperty("meadowmark.root"));
  private static final Path DOCUMENT = ROOT.resolve("docs/dependencies.md");
  private static final String WRAPPER = "geotools-wrapper";
  private static final Pattern LICENCE_NAME = Pattern.compile("(?s)<license>.*?<name>(.*?)</name>");

  private static BillOfMaterials distribution;
  private static BillOfMaterials everything;
  private static Set<BillOfMaterials.Library> shipped;
  private static Set<BillOfMaterials.Library> tests;

  @BeforeAll
  static void read() throws IOException {
    for (String bill : List.of("cli/target/bom.json", "target/bom-with-tests.json")) {
      assumeThat(ROOT.resolve(bill))
          .as("%s, which only an online build makes (leave out -o)", bill)
          .exists();
    }
    distribution = BillOfMaterials.read(ROOT.resolve("cli/target/bom.json"));
    everything = BillOfMaterials.read(ROOT.resolve("target/bom-with-tests.json"));
    shipped = others(distribution.all());
    tests = new TreeSet<>();
    for (String module : List.of("toolkit-core", "gis-samples", "cli")) {
      tests.addAll(everything.neededBy(module).orElseThrow());
    }
    tests.removeAll(shipped);
  }

  private static Set<BillOfMaterials.Library> others(Set<BillOfMaterials.Library> all) {
    Set<BillOfMaterials.Library> others = new TreeSet<>(all);
    others.removeIf(library -> library.artifact().startsWith(BillOfMaterials.OURS + ":"));
    return others;
  }

  @Test
  void everythingShippedHasALicenceThatSuits() {
    assertThat(shipped).hasSizeGreaterThan(50);
    for (BillOfMaterials.Library library : shipped) {
      assertThat(library.licences()).as("licences of %s", library).isNotEmpty();
      assertThat(library.licences().stream().map(name -> known(library, name).allowed()))
          .as("a licence of %s that suits a program under the Apache licence", library.artifact())
          .contains(Licences.YES);
    }
  }

  @Test
  void theDocumentListsWhatIsThere() throws IOException {
    String committed = Files.exists(DOCUMENT) ? Files.readString(DOCUMENT) : "";
    String now = document(committed);
    if (Boolean.getBoolean("meadowmark.renew-dependencies")) {
      Files.writeString(DOCUMENT, now);
    }

    assertThat(committed)
        .as("docs/dependencies.md; renew it with -Dmeadowmark.renew-dependencies=true")
        .isEqualTo(now);
  }

  private static Licences.Licence known(BillOfMaterials.Library library, String name) {
    return Licences.named(name)
        .orElseThrow(
            () ->
                new AssertionError(
                    library.artifact()
                        + " states the licence \""
                        + name
                        + "\", which is not in cli/src/test/resources/licences/licences.csv;"
                        + " look it up, and add it if it suits"));
  }

  private static String document(String committed) throws IOException {
    StringBuilder text = new StringBuilder();
    text.append(
        """
        # Dependencies and their licences

        Made by `DependenciesTest` from the bills of materials of the build (CycloneDX: `cli/target/bom.json`, in the
        distribution as `bom.json`, and `target/bom-with-tests.json`); do not edit. A licence that is on no list fails the
        build. Renew: `mvn -B -ntp -pl cli -am test -Dtest=DependenciesTest -Dsurefire.failIfNoSpecifiedTests=false -Dmeadowmark.renew-dependencies=true`.

        Licences are as the projects state them in their descriptors, under the short names of
        [SPDX](https://spdx.org/licenses/) where there is one. Where several are named the user may choose. This is a list,
        not legal advice.

        ## In the distribution

        Each library is unchanged, in a jar of its own in `lib`, and may be replaced there; that is what the LGPL asks for.
        Licence and notice files of the libraries are in their jars; texts of the LGPL, GPL, MPL and EPL are in `licences`.

        """);
    table(text, shipped);
    text.append(
        """

        Not libraries, but inside `toolkit-core`: the Lato typeface (SIL Open Font License 1.1; its text is beside the font)
        and, taken from the jar above, Leaflet (BSD-2-Clause) in each report.

        `commons-logging` is kept out: its classes are in `jcl-over-slf4j`.

        ### Inside geotools-wrapper

        This jar bundles GeoTools and what GeoTools needs. Licences that the descriptors in the jar state stand as they are;
        "from memory" marks the others, which those descriptors leave to a parent that is not in the jar. GeoTools is
        LGPL-2.1 (from memory, as its descriptors state no version). The EPSG data in `gt-epsg-hsql` are under the terms of use of the
        EPSG Geodetic Parameter Dataset: they may be passed on with their source named and unchanged (from memory).
        Without a descriptor of their own the jar also holds, all from memory: Java Advanced Imaging and its image readers
        (javax.media.jai, com.sun.media: the distribution licence of Sun), JJ2000 (jj2000: its own licence), HSQLDB (BSD), EJML and JSR 385 units
        (Apache-2.0, BSD), annotations of the Checker Framework (MIT) and RE2/J (BSD-like).

        | library | version | licence |
        |---|---|---|
        """);
    bundled(text);
    text.append("\n## For tests only\n\n");
    table(text, tests);
    for (String module : List.of("benchmarks", "cluster")) {
      optional(text, module, committed);
    }
    return text.toString();
  }

  /** A module that not every build makes: where it is missing, its section stays as it was. */
  private static void optional(StringBuilder text, String module, String committed) {
    String heading = "\n## For the module " + module + " only\n\n";
    Optional<Set<BillOfMaterials.Library>> needed = everything.neededBy(module);
    if (needed.isPresent()) {
      text.append(heading);
      Set<BillOfMaterials.Library> more = new TreeSet<>(needed.get());
      more.removeAll(shipped);
      more.removeAll(tests);
      table(text, more);
    } else if (committed.contains(heading)) {
      int start = committed.indexOf(heading);
      int end = committed.indexOf("\n## ", start + heading.length());
      text.append(committed, start, end < 0 ? committed.length() : end);
    }
  }

  private static void table(StringBuilder text, Set<BillOfMaterials.Library> libraries) {
    text.append("| library | version | licence |\n|---|---|---|\n");
    for (BillOfMaterials.Library library : libraries) {
      Set<String> names = new LinkedHashSet<>();
      for (String name : library.licences()) {
        names.add(known(library, name).name());
      }
      row(
          text,
          library.artifact(),
          library.version(),
          names.isEmpty() ? "none stated" : String.join(" or ", names));
    }
  }

  private static void row(StringBuilder text, String artifact, String version, String licence) {
    text.append("| ").append(artifact).append(" | ").append(version);
    text.append(" | ").append(licence).append(" |\n");
  }

  private static void bundled(StringBuilder text) throws IOException {
    List<String[]> rows = new ArrayList<>();
    try (JarFile jar = new JarFile(wrapper().toFile())) {
      for (ZipEntry entry : jar.stream().toList()) {
        if (entry.getName().matches("META-INF/maven/.*/pom\\.properties")
            && !entry.getName().contains(WRAPPER)) {
          Properties stated = new Properties();
          try (InputStream in = jar.getInputStream(entry)) {
            stated.load(in);
          }
          String artifact = stated.getProperty("groupId") + ":" + stated.getProperty("artifactId");
          rows.add(
              new String[] {
                artifact, stated.getProperty("version"), licence(jar, entry.getName(), artifact)
              });
        }
      }
    }
    assertThat(rows).hasSizeGreaterThan(50);
    rows.sort((a, b) -> a[0].compareTo(b[0]));
    rows.forEach(row -> row(text, row[0], row[1], row[2]));
  }

  private static String licence(JarFile jar, String properties, String artifact)
      throws IOException {
    ZipEntry descriptor = jar.getEntry(properties.replace("pom.properties", "pom.xml"));
    Set<String> names = new LinkedHashSet<>();
    if (descriptor != null) {
      try (InputStream in = jar.getInputStream(descriptor)) {
        Matcher matcher =
            LICENCE_NAME.matcher(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        while (matcher.find()) {
          String name = matcher.group(1);
          names.add(
              Licences.named(name)
                  .orElseThrow(() -> new AssertionError(artifact + " states \"" + name + "\""))
                  .name());
        }
      }
    }
    if (!names.isEmpty()) {
      return String.join(artifact.contains("epsg-hsql") ? " and " : " or ", names);
    }
    return Licences.remembered(artifact)
            .orElseThrow(
                () ->
                    new AssertionError(
                        artifact
                            + " inside the wrapper states no licence; add it to"
                            + " cli/src/test/resources/licences/memory.csv"))
        + " (from memory)";
  }

  private static Path wrapper() {
    return Stream.of(System.getProperty("java.class.path").split(java.io.File.pathSeparator))
        .map(Path::of)
        .filter(path -> path.getFileName().toString().startsWith(WRAPPER))
        .findFirst()
        .orElseThrow();
  }
}
