package org.meadowmark.core.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.core.read.Broken.assertRefused;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;

class ShapefileLayerReaderTest {
  private static final int FIRST_RECORD = 100;
  private static final int CONTENT = FIRST_RECORD + 8;

  @TempDir Path folder;

  @Test
  void readsDatesThatGdalWrote() {
    ReadLayer layer = ReadLayer.of(ReadLayer.fixture("lines-32617.shp"));
    assertThat(layer.attributes(0)).containsEntry("seen", LocalDate.of(2024, 6, 30));
    assertThat(layer.attributes(1)).containsEntry("seen", LocalDate.of(1999, 12, 31));
    assertThat(layer.attributes(2)).doesNotContainKey("seen");
    assertThat(layer.attributes(3)).containsEntry("seen", LocalDate.of(2024, 2, 29));
  }

  @ParameterizedTest
  @ValueSource(strings = {"lines-32617.shp", "lines-latin1.shp", "lines-ldid.shp"})
  void textIsDecodedAsTheFilesSay(String name) {
    ReadLayer layer = ReadLayer.of(ReadLayer.fixture(name));
    assertThat(layer.attributes(0)).containsEntry("name", "Étang à l'anse");
    assertThat(layer.findings()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "ISO-8859-1, ISO-8859-1",
    "ISO 8859-1, ISO-8859-1",
    "8859-1, ISO-8859-1",
    "88591, ISO-8859-1",
    "1252, windows-1252",
    "ANSI 1252, windows-1252",
    "windows-1252, windows-1252",
    "cp850, IBM850",
    "850, IBM850",
    "UTF8, UTF-8",
    "UTF-8, UTF-8",
    "65001, UTF-8"
  })
  void namesOfCharacterSetsAreUnderstood(String cpg, String charset) throws IOException {
    Path shp = copy("lines-32617");
    Files.writeString(folder.resolve("lines-32617.cpg"), cpg + "\r\n");
    rewriteFirstName("Étang", Charset.forName(charset));
    assertThat(ReadLayer.of(shp).attributes(0)).containsEntry("name", "Étang");
  }

  @Test
  void withoutACharacterSetUtf8AndWindows1252AreToldApart() throws IOException {
    Path shp = copy("lines-32617");
    Files.delete(folder.resolve("lines-32617.cpg"));
    byte[] dbf = Files.readAllBytes(folder.resolve("lines-32617.dbf"));
    dbf[29] = 0;
    Files.write(folder.resolve("lines-32617.dbf"), dbf);
    assertThat(ReadLayer.of(shp).attributes(0)).containsEntry("name", "Étang à l'anse");
    rewriteFirstName("Étang", Charset.forName("windows-1252"));
    assertThat(ReadLayer.of(shp).attributes(0)).containsEntry("name", "Étang");
    assertThat(ReadLayer.of(shp).findings()).isEmpty();
  }

  @Test
  void textOfAnotherSetThanStatedIsWarnedAbout() throws IOException {
    Path shp = copy("lines-32617");
    rewriteFirstName("Étang", StandardCharsets.ISO_8859_1);
    ReadLayer layer = ReadLayer.of(shp);
    assertThat(layer.attributes(0)).containsEntry("name", "Étang");
    assertThat(layer.findings())
        .extracting(Finding::code)
        .containsExactly(FindingCode.VALUE_UNREADABLE);
    assertThat(layer.findings().get(0).action()).contains("correct the .cpg file");
  }

  @Test
  void anUnknownCharacterSetIsRefused() throws IOException {
    Path shp = copy("lines-32617");
    Files.writeString(folder.resolve("lines-32617.cpg"), "klingon");
    assertRefused(shp).contains("unknown character set 'klingon'");
  }

  @Test
  void everyDimensionOfEveryShapeIsRead() {
    assertThat(ReadLayer.of(ReadLayer.fixture("points-XY.shp")).wkt(0))
        .isEqualTo("POINT (341050 3060050)");
    assertThat(ReadLayer.of(ReadLayer.fixture("points-XYM.shp")).wkt(0))
        .isEqualTo("POINT (341050 3060050)");
    assertThat(ReadLayer.of(ReadLayer.fixture("points-XYZ.shp")).wkt(0))
        .isEqualTo("POINT Z(341050 3060050 0)");
    for (String name : List.of("lines-xy.shp", "lines-xym.shp")) {
      ReadLayer lines = ReadLayer.of(ReadLayer.fixture(name));
      assertThat(lines.wkt(1)).isEqualTo("LINESTRING (340000 3060100, 340200 3060100)");
      assertThat(lines.wkt(4)).isEqualTo("none");
    }
    assertThat(ReadLayer.of(ReadLayer.fixture("areas-xym.shp")).geometry(1).getArea())
        .isEqualTo(9_600);
    assertThat(ReadLayer.of(ReadLayer.fixture("areas-32617.shp")).geometry(1).getArea())
        .isEqualTo(9_600);
  }

  @Test
  void namesInUpperCaseAreFound() throws IOException {
    copy("lines-32617");
    for (String extension : List.of("shp", "shx", "dbf", "prj", "cpg")) {
      Files.move(
          folder.resolve("lines-32617." + extension),
          folder.resolve(
              (extension.equals("prj")
                  ? "lines-32617.PRJ"
                  : "LINES-32617." + extension.toUpperCase(java.util.Locale.ROOT))));
    }
    ReadLayer layer = ReadLayer.of(folder.resolve("LINES-32617.SHP"));
    assertThat(layer.features()).hasSize(5);
    assertThat(layer.header().crs()).isPresent();
  }

  @Test
  void withoutPrjThereIsNoReferenceSystem() throws IOException {
    Path shp = copy("lines-32617");
    Files.delete(folder.resolve("lines-32617.prj"));
    assertThat(ReadLayer.of(shp).header().crs()).isEmpty();
  }

  @Test
  void missingPartsAreNamed() throws IOException {
    for (String part : List.of("dbf", "shx")) {
      Path shp = copy("lines-32617");
      Files.delete(folder.resolve("lines-32617." + part));
      assertRefused(shp).contains("its ." + part + " file is missing; copy all files");
      Files.createFile(folder.resolve("lines-32617." + part));
      assertRefused(shp).contains("its ." + part + " file has zero bytes");
    }
  }

  @Test
  void everyTruncationIsRefused() throws IOException {
    for (String part : List.of("shp", "shx", "dbf")) {
      Path shp = copy("areas-32617");
      Path file = folder.resolve("areas-32617." + part);
      byte[] whole = Files.readAllBytes(file);
      for (int length : new int[] {1, 20, 99, 101, whole.length / 2, whole.length - 9}) {
        Files.write(file, Arrays.copyOf(whole, length));
        assertRefused(shp).matches("areas-32617: .*; get a whole copy.*");
      }
    }
  }

  @Test
  void contentThatIsNoShapefileIsRefused() throws IOException {
    Path shp = copy("areas-32617");
    Files.writeString(shp, "words ".repeat(300));
    assertRefused(shp).contains("is no shapefile");
    copy("areas-32617");
    Files.writeString(folder.resolve("areas-32617.dbf"), "words ".repeat(300));
    assertRefused(shp).contains(".dbf file");
  }

  @Test
  void statedCountsAreNotTrusted() throws IOException {
    for (int[] change :
        new int[][] {
          {CONTENT + 36, Integer.MAX_VALUE}, // parts
          {CONTENT + 40, Integer.MAX_VALUE}, // points
          {CONTENT + 36, -1},
          {CONTENT + 40, 3}, // fewer points than the ring has
          {CONTENT + 44, 1_000_000_000}, // start of the first part
          {CONTENT, 3} // a line among polygons
        }) {
      Path shp = copy("areas-32617");
      ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(shp)).order(ByteOrder.LITTLE_ENDIAN);
      bytes.putInt(change[0], change[1]);
      Files.write(shp, bytes.array());
      ReadLayer layer = ReadLayer.of(shp);
      assertThat(layer.features().size() + layer.findings().size()).isGreaterThanOrEqualTo(5);
      assertThat(layer.findings()).as("change at " + change[0] + " to " + change[1]).hasSize(1);
      assertThat(layer.findings().get(0).where().featureId()).isEqualTo("1");
      assertThat(layer.findings().get(0).message()).doesNotContain("\n");
    }
  }

  @Test
  void recordsMarkedAsDeletedAreReported() throws IOException {
    Path shp = copy("lines-32617");
    Path dbf = folder.resolve("lines-32617.dbf");
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(dbf)).order(ByteOrder.LITTLE_ENDIAN);
    bytes.put(bytes.getShort(8) + bytes.getShort(10), (byte) '*');
    Files.write(dbf, bytes.array());
    ReadLayer layer = ReadLayer.of(shp);
    assertThat(layer.ids()).containsExactly("1", "3", "4", "5");
    assertThat(layer.findings().get(0).message())
        .contains("lines-32617: 2: it is marked as deleted");
  }

  private Path copy(String base) throws IOException {
    for (String extension : List.of("shp", "shx", "dbf", "prj", "cpg")) {
      Files.copy(
          ReadLayer.fixture(base + "." + extension),
          folder.resolve(base + "." + extension),
          StandardCopyOption.REPLACE_EXISTING);
    }
    return folder.resolve(base + ".shp");
  }

  /** The name field is the third of the table; its first record is overwritten. */
  private void rewriteFirstName(String name, Charset charset) throws IOException {
    Path dbf = folder.resolve("lines-32617.dbf");
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(dbf)).order(ByteOrder.LITTLE_ENDIAN);
    int start = bytes.getShort(8) + 1;
    for (int field = 0; field < 2; field++) {
      start += bytes.get(32 + 32 * field + 16) & 0xff;
    }
    int length = bytes.get(32 + 64 + 16) & 0xff;
    byte[] text = Arrays.copyOf(name.getBytes(charset), length);
    Arrays.fill(text, name.getBytes(charset).length, length, (byte) ' ');
    bytes.position(start);
    bytes.put(text);
    Files.write(dbf, bytes.array());
  }
}
