package org.meadowmark.core.read.geopackage;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.locationtech.jts.io.ParseException;
import org.meadowmark.core.read.Nesting;

/**
 * Passes over well-known binary before it is decoded. The library decodes nested collections by
 * recursion and allocates in each by a number that the file states, so that a small blob could fill
 * stack or memory.
 *
 * <p>Source: OGC 06-103r4, <i>Simple feature access, part 1</i>, clause 8; the thousands for Z and
 * M and the high bits of the extended form, from memory.
 */
final class WkbDepth {
  private static final int POINT = 1;
  private static final int LINE = 2;
  private static final int POLYGON = 3;
  private static final int FIRST_MULTI = 4;
  private static final int COLLECTION = 7;
  private static final int HAS_Z = 0x80000000;
  private static final int HAS_M = 0x40000000;
  private static final int HAS_SRID = 0x20000000;

  private final ByteBuffer bytes;

  private WkbDepth(ByteBuffer bytes) {
    this.bytes = bytes;
  }

  /**
   * Refuses bytes that end too early, or are nested too deeply.
   *
   * @throws ParseException if they do
   */
  static void check(byte[] wkb) throws ParseException {
    try {
      new WkbDepth(ByteBuffer.wrap(wkb)).passGeometry(1);
    } catch (BufferUnderflowException e) {
      throw new ParseException("it states more points than it holds");
    }
  }

  private void passGeometry(int depth) throws ParseException {
    if (depth > Nesting.DEEPEST) {
      throw new ParseException(Nesting.TOO_DEEP);
    }
    bytes.order(bytes.get() == 0 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    int stated = bytes.getInt();
    int plain = stated & 0xFFFF;
    int thousands = plain / 1000;
    int type = plain % 1000;
    int ordinates =
        2
            + ((stated & HAS_Z) != 0 || thousands == 1 || thousands == 3 ? 1 : 0)
            + ((stated & HAS_M) != 0 || thousands == 2 || thousands == 3 ? 1 : 0);
    if ((stated & HAS_SRID) != 0) {
      bytes.getInt();
    }
    if (type == POINT) {
      pass(1, ordinates);
    } else if (type == LINE) {
      pass(count(), ordinates);
    } else if (type == POLYGON) {
      for (long rings = count(); rings > 0; rings--) {
        pass(count(), ordinates);
      }
    } else if (type >= FIRST_MULTI && type <= COLLECTION) {
      ByteOrder order = bytes.order();
      for (long parts = count(); parts > 0; parts--) {
        passGeometry(depth + 1);
        bytes.order(order);
      }
    } else {
      throw new ParseException(
          "geometry type " + Integer.toUnsignedString(stated) + " is not read");
    }
  }

  private long count() {
    long count = Integer.toUnsignedLong(bytes.getInt());
    // Each ring, part or point takes four bytes or more.
    if (count * Integer.BYTES > bytes.remaining()) {
      throw new BufferUnderflowException();
    }
    return count;
  }

  private void pass(long points, int ordinates) {
    long length = points * ordinates * Double.BYTES;
    if (length > bytes.remaining()) {
      throw new BufferUnderflowException();
    }
    bytes.position(bytes.position() + (int) length);
  }
}
