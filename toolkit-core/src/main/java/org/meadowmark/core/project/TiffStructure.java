package org.meadowmark.core.project;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Holds what a TIFF file states about its parts against the size of the file, before the library
 * allocates by it: lengths of tags, strips and tiles, the size of the picture, and directories that
 * lead back to themselves.
 *
 * <p>Source: Adobe, <i>TIFF Revision 6.0</i> (1992), section 2; the form with long offsets
 * (BigTIFF), numbers of tags for directories inside directories, from memory.
 */
final class TiffStructure {
  private static final int CLASSIC = 42;
  private static final int BIG = 43;
  private static final int MOST_DIRECTORIES = 64;
  private static final int MOST_TAGS = 4_096;

  /** Bytes of a value by type, 0 where there is no such type. */
  private static final int[] TYPE_BYTES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};

  private static final int WIDTH = 256;
  private static final int HEIGHT = 257;
  private static final int BITS = 258;
  private static final int COMPRESSION = 259;
  private static final int STRIP_PLACES = 273;
  private static final int SAMPLES = 277;
  private static final int STRIP_LENGTHS = 279;
  private static final int TILE_WIDTH = 322;
  private static final int TILE_HEIGHT = 323;
  private static final int TILE_PLACES = 324;
  private static final int TILE_LENGTHS = 325;
  private static final Set<Integer> DIRECTORY_TAGS = Set.of(330, 34_665, 34_853, 40_965);
  private static final int DIRECTORY_TYPE = 13;
  private static final int LONG_DIRECTORY_TYPE = 18;

  private static final int NOT_COMPRESSED = 1;

  /**
   * Deflate makes at most 1,032 bytes of one (RFC 1951: 258 bytes from two bits); LZW with codes of
   * 12 bits less than 2,800.
   */
  private static final double MOST_EXPANSION = 3_000;

  /** A tile may be larger than a small picture, but not without end. */
  private static final double FREE_BYTES = 4e6;

  /** A tag of a directory. */
  private record Tag(int type, long count, long place) {}

  private final FileChannel channel;
  private final long size;
  private ByteOrder order = ByteOrder.LITTLE_ENDIAN;
  private boolean big;

  private TiffStructure(FileChannel channel) throws IOException {
    this.channel = channel;
    this.size = channel.size();
  }

  /**
   * Bytes that the first picture takes when it is decoded.
   *
   * @throws GridFileException if the file contradicts itself
   */
  static double decodedBytes(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file)) {
      return new TiffStructure(channel).walk();
    }
  }

  private double walk() throws IOException {
    ByteBuffer mark = bytes(0, 4);
    if (mark.get(0) == 'M' && mark.get(1) == 'M') {
      order = ByteOrder.BIG_ENDIAN;
    } else if (mark.get(0) != 'I' || mark.get(1) != 'I') {
      throw new GridFileException("it is no TIFF file");
    }
    int version = Short.toUnsignedInt(mark.order(order).getShort(2));
    if (version != CLASSIC && version != BIG) {
      throw new GridFileException("it is no TIFF file");
    }
    big = version == BIG;
    Deque<Long> places = new ArrayDeque<>();
    Set<Long> met = new HashSet<>();
    places.add(big ? bytes(8, 8).getLong() : Integer.toUnsignedLong(bytes(4, 4).getInt()));
    double decoded = -1;
    while (!places.isEmpty()) {
      long place = places.poll();
      if (!met.add(place) || met.size() > MOST_DIRECTORIES) {
        throw new GridFileException("its directories lead in a circle");
      }
      double ofThis = passDirectory(place, places);
      decoded = decoded < 0 ? ofThis : decoded;
    }
    return decoded;
  }

  private double passDirectory(long place, Deque<Long> more) throws IOException {
    int countBytes = big ? 8 : 2;
    int tagBytes = big ? 20 : 12;
    long count = big ? bytes(place, 8).getLong() : Short.toUnsignedInt(bytes(place, 2).getShort());
    if (count < 0 || count > MOST_TAGS) {
      throw new GridFileException("a directory of it states %d tags".formatted(count));
    }
    ByteBuffer tags = bytes(place + countBytes, (int) count * tagBytes);
    Map<Integer, Tag> known = new HashMap<>();
    for (int i = 0; i < count; i++) {
      int start = i * tagBytes;
      int number = Short.toUnsignedInt(tags.getShort(start));
      int type = Short.toUnsignedInt(tags.getShort(start + 2));
      long values = big ? tags.getLong(start + 4) : Integer.toUnsignedLong(tags.getInt(start + 4));
      int valuePlace = start + (big ? 12 : 8);
      Tag tag = new Tag(type, values, placeOf(tags, place + countBytes, valuePlace, type, values));
      known.put(number, tag);
      boolean directory =
          DIRECTORY_TAGS.contains(number) || type == DIRECTORY_TYPE || type == LONG_DIRECTORY_TYPE;
      for (long v = 0; directory && v < Math.min(values, MOST_DIRECTORIES); v++) {
        more.add(value(tag, v));
      }
    }
    long nextPlace = place + countBytes + count * tagBytes;
    long next =
        big ? bytes(nextPlace, 8).getLong() : Integer.toUnsignedLong(bytes(nextPlace, 4).getInt());
    if (next != 0) {
      more.add(next);
    }
    checkParts(known, STRIP_PLACES, STRIP_LENGTHS);
    checkParts(known, TILE_PLACES, TILE_LENGTHS);
    return checkedSize(known);
  }

  /** Where the values of a tag are: in the tag itself if there is room, else where it says. */
  private long placeOf(ByteBuffer tags, long tagsStart, int valuePlace, int type, long values)
      throws GridFileException {
    int each = type < TYPE_BYTES.length ? TYPE_BYTES[type] : 0;
    int room = big ? 8 : 4;
    if (values < 0 || each == 0 || values <= room / each) {
      return tagsStart + valuePlace;
    }
    long place = big ? tags.getLong(valuePlace) : Integer.toUnsignedLong(tags.getInt(valuePlace));
    if (place < 0 || values > size / each || place > size - values * each) {
      throw new GridFileException("a tag of it lies beyond its end");
    }
    return place;
  }

  private void checkParts(Map<Integer, Tag> known, int placesTag, int lengthsTag)
      throws IOException {
    Tag places = known.get(placesTag);
    Tag lengths = known.get(lengthsTag);
    if (places == null || lengths == null) {
      return;
    }
    for (long i = 0; i < Math.min(places.count(), lengths.count()); i++) {
      long place = value(places, i);
      long length = value(lengths, i);
      if (place < 0 || length < 0 || place > size || length > size - place) {
        throw new GridFileException("a part of its picture lies beyond its end");
      }
    }
  }

  private double checkedSize(Map<Integer, Tag> known) throws IOException {
    double bytesACell = 0;
    Tag bits = known.get(BITS);
    double samples = first(known, SAMPLES, 1);
    if (bits != null) {
      bytesACell = samples * Math.max(1, value(bits, 0) / 8.0);
    }
    double decoded = first(known, WIDTH, 0) * first(known, HEIGHT, 0) * Math.max(1, bytesACell);
    double tile =
        first(known, TILE_WIDTH, 0) * first(known, TILE_HEIGHT, 0) * Math.max(1, bytesACell);
    boolean compressed = first(known, COMPRESSION, NOT_COMPRESSED) != NOT_COMPRESSED;
    double most = compressed ? MOST_EXPANSION * size : size;
    if (decoded > most || tile > Math.max(most, FREE_BYTES)) {
      throw new GridFileException(
          "it states a picture of %.0f bytes, which a file of %d bytes cannot hold"
              .formatted(Math.max(decoded, tile), size));
    }
    return decoded;
  }

  private double first(Map<Integer, Tag> known, int number, long otherwise) throws IOException {
    Tag tag = known.get(number);
    return tag == null || tag.count() < 1 ? otherwise : value(tag, 0);
  }

  private long value(Tag tag, long index) throws IOException {
    int each = tag.type() < TYPE_BYTES.length ? TYPE_BYTES[tag.type()] : 0;
    if (each == 0 || index >= tag.count()) {
      return 0;
    }
    ByteBuffer value = bytes(tag.place() + index * each, each);
    return switch (each) {
      case 1 -> Byte.toUnsignedLong(value.get());
      case 2 -> Short.toUnsignedLong(value.getShort());
      case 4 -> Integer.toUnsignedLong(value.getInt());
      default -> value.getLong();
    };
  }

  private ByteBuffer bytes(long place, int length) throws IOException {
    if (place < 0 || place > size - length) {
      throw new GridFileException("it is cut short");
    }
    ByteBuffer bytes = ByteBuffer.allocate(length).order(order);
    while (bytes.hasRemaining()) {
      if (channel.read(bytes, place + bytes.position()) < 0) {
        throw new GridFileException("it is cut short");
      }
    }
    return bytes.flip();
  }
}
