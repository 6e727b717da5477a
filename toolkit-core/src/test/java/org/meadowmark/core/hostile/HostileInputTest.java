package org.meadowmark.core.hostile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files made to do harm are read or refused in words, in a heap of 128 MB and within a limit of
 * processor time. Each run is a program of its own, so that a full heap or an endless loop ends
 * that program and not the tests.
 */
class HostileInputTest {
  private static final int DAMAGED_COPIES = 60;
  private static final long SEED = 20260614;
  private static final int MOST_PROCESSOR_SECONDS = 60;
  private static final int MOST_MINUTES = 20;

  @TempDir Path folder;

  private String run(String what, Path input, String... more) throws Exception {
    Path work = Files.createDirectories(folder.resolve("work"));
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Djava.awt.headless=true",
                "-Djava.io.tmpdir=" + folder,
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                HostileRuns.class.getName(),
                what,
                input.toString(),
                work.toString(),
                Integer.toString(MOST_PROCESSOR_SECONDS)));
    command.addAll(List.of(more));
    Path printed = folder.resolve("printed.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile())
            .start();
    boolean ended = process.waitFor(MOST_MINUTES, TimeUnit.MINUTES);
    process.destroyForcibly();
    String text = Files.readString(printed, StandardCharsets.UTF_8);
    assertThat(ended).as("ended; it printed: " + text).isTrue();
    assertThat(process.waitFor()).as("exit code; it printed: " + text).isZero();
    return text;
  }

  private static Path examples() throws Exception {
    return Path.of(Objects.requireNonNull(HostileInputTest.class.getResource("/hostile")).toURI());
  }

  @Test
  void casesMadeToDoHarmComeToWhatIsExpected() throws Exception {
    String printed = run("cases", examples());
    assertThat(printed.lines())
        .hasSizeGreaterThan(70)
        .allSatisfy(line -> assertThat(line).startsWith("as expected | "));
  }

  @Test
  void examplesAndWhatFuzzingFoundAreReadOrRefused() throws Exception {
    String printed = run("examples", examples());
    assertThat(printed.lines()).hasSize(HostileReader.values().length);
    assertThat(printed).doesNotContain("| 0 examples").doesNotContain("| 0 read");
  }

  @Test
  void damagedFilesAreReadOrRefused() throws Exception {
    String printed =
        run("damaged", examples(), Integer.toString(DAMAGED_COPIES), Long.toString(SEED));
    assertThat(printed.lines())
        .as("a line a reader, and nothing that a library prints")
        .hasSize(HostileReader.values().length)
        .allSatisfy(line -> assertThat(line).contains("| " + DAMAGED_COPIES + " damaged |"));
    assertThat(printed).doesNotContain("| 0 read");
  }

  @Test
  void aLineOfHundredMegabytesIsRefusedBeforeItFillsMemory() throws Exception {
    Path file = folder.resolve("t.csv");
    Files.writeString(file, "id,wkt\n");
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(100_000_000);
    }
    assertThat(run("layer", file))
        .startsWith("refused: " + file + ": t: has more than 20000000 characters in the record");
  }

  @Test
  void nothingIsFetchedForAGridOrATrack() throws Exception {
    try (ServerSocket server = new ServerSocket(0)) {
      server.setSoTimeout(300);
      String url = "http://127.0.0.1:" + server.getLocalPort() + "/x";
      Files.copy(examples().resolve("geotiff").resolve("seed.tif"), folder.resolve("t.tif"));
      Files.writeString(
          folder.resolve("t.tif.aux.xml"),
          "<!DOCTYPE PAMDataset SYSTEM \"%s\" [<!ENTITY a SYSTEM \"%s\">]><PAMDataset>&a;</PAMDataset>"
              .formatted(url, url));
      HostileReader.GEOTIFF.outcome(folder, Files.readAllBytes(folder.resolve("t.tif")));
      HostileReader.GPX.outcome(
          folder,
          "<!DOCTYPE gpx SYSTEM \"%s\"><gpx xmlns=\"%s\" version=\"1.1\" creator=\"x\"/>"
              .formatted(url, url)
              .getBytes(StandardCharsets.UTF_8));
      HostileReader.CRS.outcome(folder, url.getBytes(StandardCharsets.UTF_8));
      assertThat(isCalled(server)).isFalse();
    }
  }

  private static boolean isCalled(ServerSocket server) throws IOException {
    try {
      server.accept().close();
      return true;
    } catch (java.net.SocketTimeoutException e) {
      return false;
    }
  }

  @Test
  void namesOfAGeoPackageAreNeverRunAsStatements() throws Exception {
    Path made = Files.createDirectories(folder.resolve("made"));
    HostileCases.Case wicked =
        HostileCases.all(made, new Examples(examples())).stream()
            .filter(one -> one.name().equals("names that are SQL"))
            .findFirst()
            .orElseThrow();
    HostileReader.GEOPACKAGE.outcome(folder, wicked.bytes());
    assertThat(Files.readAllBytes(folder.resolve("t.gpkg"))).isEqualTo(wicked.bytes());
  }
}
