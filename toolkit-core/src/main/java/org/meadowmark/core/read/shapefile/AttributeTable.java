package org.meadowmark.core.read.shapefile;

import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.h2gis.functions.io.dbf.internal.DbaseFileHeader;
import org.meadowmark.core.read.DateText;
import org.meadowmark.core.read.LayerProblems;

/**
 * Attributes of a shapefile, record after record.
 *
 * <p>The library reads the table's description. The values are taken here, because its own reader
 * gives no dates, cuts text at the first byte that is not of the character set, and returns records
 * that are marked as deleted.
 */
final class AttributeTable implements Closeable {
  private static final int SMALLEST_HEADER_BYTES = 33;
  private static final int DELETED = '*';
  private static final int MAX_LONG_DIGITS = 18;
  private static final String TYPES_READ = "CNFDL";
  private static final Pattern WHOLE = Pattern.compile("[+-]?[0-9]+");
  private static final Charset FALLBACK = Charset.forName("windows-1252");

  /**
   * A field of the table.
   *
   * @param name name as in the file
   * @param type dBASE type letter
   * @param decimals digits after the point
   * @param start first byte in a record
   * @param length bytes
   */
  private record DbaseField(String name, char type, int decimals, int start, int length) {}

  private final FileChannel channel;
  private final DataInputStream stream;
  private final List<DbaseField> fields;
  private final List<String> namesNotRead;
  private final byte[] record;
  private final int recordCount;
  private final Charset charset;
  private final boolean charsetStated;
  private boolean badTextMet;

  private AttributeTable(
      FileChannel channel, DbaseFileHeader header, Charset charset, boolean charsetStated)
      throws IOException {
    this.channel = channel;
    this.charset = charset;
    this.charsetStated = charsetStated;
    this.fields = new ArrayList<>();
    this.namesNotRead = new ArrayList<>();
    int start = 1;
    for (int i = 0; i < header.getNumFields(); i++) {
      int length = header.getFieldLength(i);
      char type = Character.toUpperCase(header.getFieldType(i));
      String name = header.getFieldName(i);
      if (TYPES_READ.indexOf(type) >= 0) {
        fields.add(new DbaseField(name, type, header.getFieldDecimalCount(i), start, length));
      } else {
        namesNotRead.add(name);
      }
      start += length;
    }
    this.record = new byte[header.getRecordLength()];
    this.recordCount = header.getNumRecords();
    channel.position(header.getHeaderLength());
    this.stream = new DataInputStream(new BufferedInputStream(Channels.newInputStream(channel)));
  }

  /**
   * Opens a table.
   *
   * @param file the .dbf file
   * @param stated character set that a .cpg file states, if any
   */
  static AttributeTable open(Path file, Optional<Charset> stated, LayerProblems problems)
      throws IOException {
    FileChannel channel = FileChannel.open(file);
    try {
      DbaseFileHeader header = readHeader(channel, stated, problems);
      boolean known = stated.isPresent() || languageDriver(channel) != 0;
      Charset charset =
          stated.orElseGet(
              () -> CodePage.parse(header.getFileEncoding()).orElse(StandardCharsets.UTF_8));
      return new AttributeTable(channel, header, charset, known);
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  private static DbaseFileHeader readHeader(
      FileChannel channel, Optional<Charset> stated, LayerProblems problems) throws IOException {
    if (channel.size() < SMALLEST_HEADER_BYTES) {
      throw cutShort(problems);
    }
    DbaseFileHeader header = new DbaseFileHeader();
    try {
      header.readHeader(channel, stated.map(Charset::name).orElse(null));
    } catch (RuntimeException e) {
      throw problems.refused(
          "its .dbf file is no dBASE table", "get a whole copy of the shapefile", e);
    }
    long fieldBytes = 1;
    for (int i = 0; i < header.getNumFields(); i++) {
      fieldBytes += header.getFieldLength(i);
    }
    if (header.getNumRecords() < 0
        || header.getHeaderLength() < SMALLEST_HEADER_BYTES
        || fieldBytes > header.getRecordLength()) {
      throw problems.refused(
          "its .dbf file contradicts itself", "write the shapefile anew with a GIS");
    }
    long end = header.getHeaderLength() + (long) header.getNumRecords() * header.getRecordLength();
    if (end > channel.size()) {
      throw cutShort(problems);
    }
    return header;
  }

  private static RuntimeException cutShort(LayerProblems problems) {
    return problems.refused("its .dbf file is cut short", "get a whole copy of the shapefile");
  }

  private static int languageDriver(FileChannel channel) throws IOException {
    ByteBuffer driver = ByteBuffer.allocate(1);
    channel.read(driver, 29);
    return driver.get(0);
  }

  List<String> names() {
    return fields.stream().map(DbaseField::name).toList();
  }

  /** Fields of types that are not read, such as memos. */
  List<String> namesNotRead() {
    return namesNotRead;
  }

  int recordCount() {
    return recordCount;
  }

  /** Goes to the next record; false if it is marked as deleted. */
  boolean next() throws IOException {
    badTextMet = false;
    stream.readFully(record);
    return record[0] != DELETED;
  }

  /** Values of the record that {@link #next} went to. */
  Map<String, Object> values() {
    Map<String, Object> values = new HashMap<>();
    for (DbaseField field : fields) {
      Object value = value(field);
      if (value != null) {
        values.put(field.name(), value);
      }
    }
    return values;
  }

  /** Whether a text of the record was not of the stated character set. */
  boolean badTextMet() {
    return badTextMet;
  }

  private Object value(DbaseField field) {
    String text = text(field);
    if (text.isEmpty()) {
      return null;
    }
    return switch (field.type()) {
      case 'D' -> date(text);
      case 'L' -> truth(text);
      case 'N', 'F' -> number(text, field.decimals());
      default -> text;
    };
  }

  private String text(DbaseField field) {
    int start = field.start();
    int end = start + field.length();
    while (end > start && (record[end - 1] == ' ' || record[end - 1] == 0)) {
      end--;
    }
    if (field.type() != 'C') {
      return new String(record, start, end - start, StandardCharsets.ISO_8859_1).strip();
    }
    try {
      return charset
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT)
          .decode(ByteBuffer.wrap(record, start, end - start))
          .toString();
    } catch (CharacterCodingException e) {
      badTextMet |= charsetStated;
      return new String(record, start, end - start, FALLBACK);
    }
  }

  private static Object date(String text) {
    if (text.length() != 8) {
      return null;
    }
    return DateText.of(text.substring(0, 4), text.substring(4, 6), text.substring(6)).orElse(null);
  }

  private static Object truth(String text) {
    return switch (text.charAt(0)) {
      case 'T', 't', 'Y', 'y' -> true;
      case 'F', 'f', 'N', 'n' -> false;
      default -> null;
    };
  }

  private static Object number(String text, int decimals) {
    try {
      if (decimals == 0 && text.length() <= MAX_LONG_DIGITS && WHOLE.matcher(text).matches()) {
        return Long.valueOf(text);
      }
      double number = Double.parseDouble(text);
      return Double.isFinite(number) ? number : null;
    } catch (NumberFormatException e) {
      // Asterisks mean that no number was known.
      return null;
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
