package org.meadowmark.core.read.geopackage;

import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.meadowmark.core.read.LayerProblems;

/**
 * Geometries in GeoPackage binary: a header, then well-known binary of any dimension.
 *
 * <p>Source: OGC 12-128r17, <i>GeoPackage Encoding Standard</i> 1.3, clause 2.1.3.
 */
final class GeoPackageBinary {
  private static final int FIXED_HEADER_BYTES = 8;
  private static final int FLAGS_OFFSET = 3;
  private static final int EXTENDED_TYPE = 0b00100000;

  /** Envelope lengths in bytes by the three-bit indicator: none, XY, XYZ, XYM, XYZM. */
  private static final int[] ENVELOPE_BYTES = {0, 32, 48, 48, 64};

  private final WKBReader wkb = new WKBReader(new GeometryFactory());

  /**
   * Decodes a geometry.
   *
   * @throws ParseException if the bytes are no geometry
   */
  Geometry decode(byte[] bytes) throws ParseException {
    if (bytes.length < FIXED_HEADER_BYTES || bytes[0] != 'G' || bytes[1] != 'P') {
      throw new ParseException("no GeoPackage header");
    }
    int flags = bytes[FLAGS_OFFSET];
    if ((flags & EXTENDED_TYPE) != 0) {
      throw new ParseException("an extended geometry type");
    }
    int indicator = (flags >> 1) & 0b111;
    if (indicator >= ENVELOPE_BYTES.length) {
      throw new ParseException("envelope indicator " + indicator + " has no meaning");
    }
    int start = FIXED_HEADER_BYTES + ENVELOPE_BYTES[indicator];
    if (start >= bytes.length) {
      throw new ParseException("the header is all there is");
    }
    byte[] geometry = Arrays.copyOfRange(bytes, start, bytes.length);
    WkbDepth.check(geometry);
    try {
      return wkb.read(geometry);
    } catch (RuntimeException e) {
      throw new ParseException(LayerProblems.detail(e));
    }
  }
}
