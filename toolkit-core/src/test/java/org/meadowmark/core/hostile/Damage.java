package org.meadowmark.core.hostile;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Damages a file as accidents and enemies do: the same seed gives the same damage. */
final class Damage {
  private static final int MOST_CHANGES = 4;
  private static final int LONGEST_PIECE = 64;
  private static final int MOST_BYTES = 200_000;

  private static final long[] EXTREMES = {
    0,
    1,
    -1,
    Byte.MAX_VALUE,
    Short.MAX_VALUE,
    0xFFFF,
    Integer.MAX_VALUE,
    Integer.MIN_VALUE,
    0x10000000L,
    Long.MAX_VALUE,
    Long.MIN_VALUE
  };
  private static final String[] EXTREME_NUMBERS = {
    "-1",
    "0",
    "1e308",
    "-1e308",
    "1e-400",
    "1e999999999",
    "NaN",
    "Infinity",
    "2147483648",
    "99999999999999999999",
    "-0",
    "1e5",
    ""
  };
  private static final String[] PIECES = {
    "\0",
    "\"",
    "'",
    ",",
    ";",
    "\n",
    "\r",
    "\u001b[2J",
    "\uFEFF",
    "\u202E",
    "{",
    "}",
    "[",
    "]",
    "<",
    ">",
    "&",
    "&#0;",
    "]]>",
    "<!DOCTYPE gpx [<!ENTITY a 'a'>]>",
    "../../x",
    "= 1",
    "null",
    "true",
    "\"type\":",
    "GEOMETRYCOLLECTION(",
    "EMPTY",
    "SRID=1;",
    "'''",
    "[[a]]\n",
    "\uD83D\uDE00"
  };
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(?:\\.[0-9]+)?");
  private static final String[] OPENINGS = {
    "[", "{\"a\":", "(", "GEOMETRYCOLLECTION(", "<trk>", "A[", "[a.", "a."
  };

  private final Random random;
  private final List<byte[]> examples;

  Damage(long seed, List<byte[]> examples) {
    this.random = new Random(seed);
    this.examples = examples;
  }

  /** A damaged copy of one of the examples. */
  byte[] next() {
    byte[] copy = examples.get(random.nextInt(examples.size())).clone();
    for (int i = random.nextInt(MOST_CHANGES); i >= 0; i--) {
      copy = changed(copy);
    }
    return copy.length <= MOST_BYTES ? copy : Arrays.copyOf(copy, MOST_BYTES);
  }

  private byte[] changed(byte[] bytes) {
    if (bytes.length == 0) {
      return piece();
    }
    int at = random.nextInt(bytes.length);
    int end = Math.min(bytes.length, at + 1 + random.nextInt(LONGEST_PIECE));
    return switch (random.nextInt(10)) {
      case 0 -> flipped(bytes, at);
      case 1 -> Arrays.copyOf(bytes, at);
      case 2 -> spliced(bytes, at, Arrays.copyOfRange(bytes, at, end), at);
      case 3 -> spliced(bytes, at, new byte[0], end);
      case 4 -> extremeBytes(bytes, at);
      case 5, 6 -> extremeNumber(bytes, at);
      case 7 -> spliced(bytes, at, piece(), at);
      case 8 -> spliced(bytes, at, nested(), at);
      default -> {
        byte[] other = examples.get(random.nextInt(examples.size()));
        int from = random.nextInt(other.length);
        yield spliced(bytes, at, Arrays.copyOfRange(other, from, other.length), end);
      }
    };
  }

  private byte[] flipped(byte[] bytes, int at) {
    bytes[at] ^= (byte) (1 << random.nextInt(8));
    return bytes;
  }

  /** A length or number of two, four or eight bytes, in either order. */
  private byte[] extremeBytes(byte[] bytes, int at) {
    long extreme = EXTREMES[random.nextInt(EXTREMES.length)];
    int length = 2 << random.nextInt(3);
    boolean bigEndian = random.nextBoolean();
    for (int i = 0; i < length && at + i < bytes.length; i++) {
      int shift = Byte.SIZE * (bigEndian ? length - 1 - i : i);
      bytes[at + i] = (byte) (extreme >> shift);
    }
    return bytes;
  }

  private byte[] extremeNumber(byte[] bytes, int at) {
    Matcher number = NUMBER.matcher(new String(bytes, StandardCharsets.ISO_8859_1));
    if (!number.find(at)) {
      return flipped(bytes, at);
    }
    String extreme = EXTREME_NUMBERS[random.nextInt(EXTREME_NUMBERS.length)];
    return spliced(
        bytes, number.start(), extreme.getBytes(StandardCharsets.US_ASCII), number.end());
  }

  private byte[] piece() {
    return PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8);
  }

  private byte[] nested() {
    String opening = OPENINGS[random.nextInt(OPENINGS.length)];
    return opening.repeat(1 << random.nextInt(13)).getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] spliced(byte[] bytes, int start, byte[] inserted, int end) {
    ByteArrayOutputStream spliced = new ByteArrayOutputStream();
    spliced.write(bytes, 0, start);
    spliced.writeBytes(inserted);
    spliced.write(bytes, end, bytes.length - end);
    return spliced.toByteArray();
  }
}
