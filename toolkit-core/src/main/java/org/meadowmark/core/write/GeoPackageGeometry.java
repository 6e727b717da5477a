package org.meadowmark.core.write;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.WKBWriter;

/**
 * Geometries as GeoPackage binary: a header and two-dimensional well-known binary, little endian.
 *
 * <p>Source: OGC 12-128r17, <i>GeoPackage Encoding Standard</i> 1.3, clause 2.1.3.
 */
final class GeoPackageGeometry {
  private static final int LITTLE_ENDIAN = 0b00000001;
  private static final int ENVELOPE_XY = 0b00000010;
  private static final int EMPTY = 0b00010000;
  private static final int FIXED_HEADER_BYTES = 8;
  private static final int ENVELOPE_BYTES = 4 * Double.BYTES;

  private final int srsId;
  private final WKBWriter wkb = new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN);

  GeoPackageGeometry(int srsId) {
    this.srsId = srsId;
  }

  byte[] encode(Geometry geometry) {
    byte[] body = wkb.write(geometry);
    boolean empty = geometry.isEmpty();
    ByteBuffer bytes =
        ByteBuffer.allocate(FIXED_HEADER_BYTES + (empty ? 0 : ENVELOPE_BYTES) + body.length)
            .order(ByteOrder.LITTLE_ENDIAN);
    bytes.put((byte) 'G').put((byte) 'P').put((byte) 0);
    bytes.put((byte) (LITTLE_ENDIAN | (empty ? EMPTY : ENVELOPE_XY)));
    bytes.putInt(srsId);
    if (!empty) {
      Envelope box = geometry.getEnvelopeInternal();
      bytes.putDouble(box.getMinX()).putDouble(box.getMaxX());
      bytes.putDouble(box.getMinY()).putDouble(box.getMaxY());
    }
    return bytes.put(body).array();
  }
}
