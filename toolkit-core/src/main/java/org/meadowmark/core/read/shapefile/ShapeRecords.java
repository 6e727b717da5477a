package org.meadowmark.core.read.shapefile;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.Optional;
import org.h2gis.functions.io.shp.internal.IndexFile;
import org.h2gis.functions.io.shp.internal.ShapefileException;
import org.h2gis.functions.io.shp.internal.ShapefileReader;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.meadowmark.core.read.LayerProblems;

/**
 * Geometries of a shapefile by record number, from 0. Lengths and counts that the file states are
 * held against its size before the library allocates by them.
 */
final class ShapeRecords implements Closeable {
  private static final int HEADER_BYTES = 100;
  private static final int RECORD_HEADER_BYTES = 8;
  private static final int NULL_SHAPE = 0;

  // Last digits of the types: 1x has heights, 2x measures.
  private static final int LINE = 3;
  private static final int POLYGON = 5;
  private static final int MULTI_POINT = 8;

  private static final int BOX_BYTES = 4 * Double.BYTES;
  private static final int PART_BYTES = Integer.BYTES;
  private static final int POINT_BYTES = 2 * Double.BYTES;

  /** Type, box, number of parts and number of points. */
  private static final int LONGEST_HEAD_BYTES = Integer.BYTES + BOX_BYTES + 2 * Integer.BYTES;

  /** A record that is no geometry, though the file as a whole is in order. */
  static final class BadShapeException extends Exception {
    private static final long serialVersionUID = 1L;

    BadShapeException(String problem) {
      super(problem);
    }

    BadShapeException(String problem, Throwable cause) {
      super(problem, cause);
    }
  }

  private final FileChannel shp;
  private final FileChannel shx;
  private final ShapefileReader reader;
  private final IndexFile index;
  private final int count;
  private boolean ringsChanged;

  private ShapeRecords(FileChannel shp, FileChannel shx, LayerProblems problems)
      throws IOException {
    this.shp = shp;
    this.shx = shx;
    refuseIfTooShort(shp, ".shp", problems);
    refuseIfTooShort(shx, ".shx", problems);
    if (shp.size() > Integer.MAX_VALUE) {
      throw problems.refused(
          "its .shp file is larger than 2 GB", "write the layer as a GeoPackage");
    }
    try {
      this.reader = new ShapefileReader(shp);
      this.index = new IndexFile(shx);
    } catch (ShapefileException e) {
      throw problems.refused(
          "holds shapes of a type that is not read (" + LayerProblems.detail(e) + ")",
          "write it as points, lines or polygons",
          e);
    } catch (IOException | RuntimeException e) {
      throw problems.refused(
          "is no shapefile (" + LayerProblems.detail(e) + ")", "get a whole copy", e);
    }
    this.count = (int) ((shx.size() - HEADER_BYTES) / RECORD_HEADER_BYTES);
    refuseIfCutShort(problems);
  }

  static ShapeRecords open(Path shpFile, Path shxFile, LayerProblems problems) throws IOException {
    FileChannel shp = FileChannel.open(shpFile);
    FileChannel shx = null;
    try {
      shx = FileChannel.open(shxFile);
      return new ShapeRecords(shp, shx, problems);
    } catch (IOException | RuntimeException e) {
      shp.close();
      if (shx != null) {
        shx.close();
      }
      throw e;
    }
  }

  private static void refuseIfTooShort(FileChannel channel, String part, LayerProblems problems)
      throws IOException {
    if (channel.size() < HEADER_BYTES) {
      throw problems.refused(
          "its %s file is cut short".formatted(part), "get a whole copy of the shapefile");
    }
  }

  /** Also if the index leads to the same bytes again and again, and so to more than there are. */
  private void refuseIfCutShort(LayerProblems problems) throws IOException {
    long bytesOfRecords = HEADER_BYTES;
    for (int i = 0; i < count; i++) {
      int start = index.getOffset(i);
      long end = (long) start + RECORD_HEADER_BYTES + 2L * index.getContentLength(i);
      if (start < HEADER_BYTES || index.getContentLength(i) < 0 || end > shp.size()) {
        throw problems.refused(
            "its .shp file is cut short: record %d of %d ends beyond its end"
                .formatted(i + 1, count),
            "get a whole copy of the shapefile");
      }
      bytesOfRecords += RECORD_HEADER_BYTES + 2L * index.getContentLength(i);
    }
    if (bytesOfRecords > shp.size()) {
      throw problems.refused(
          "its .shx file leads to more records than its .shp file holds",
          "get a whole copy of the shapefile");
    }
  }

  int count() {
    return count;
  }

  /** Whether the library closed a ring of the last geometry, or left out one that was too short. */
  boolean ringsChanged() {
    return ringsChanged;
  }

  /**
   * The geometry of a record, single where it has one part; empty for a null shape.
   *
   * @throws BadShapeException if the record is no geometry
   */
  Optional<Geometry> geometry(int record) throws IOException, BadShapeException {
    ringsChanged = false;
    int start = index.getOffset(record);
    int contentBytes = 2 * index.getContentLength(record);
    int contentStart = start + RECORD_HEADER_BYTES;
    ByteBuffer head = bytes(contentStart, Math.min(contentBytes, LONGEST_HEAD_BYTES));
    if (head.remaining() < Integer.BYTES) {
      throw new BadShapeException("its record is empty");
    }
    int type = head.getInt();
    if (type == NULL_SHAPE) {
      return Optional.empty();
    }
    int points = checkedPointCount(type, head, contentStart, contentBytes);
    Geometry geometry;
    try {
      geometry = reader.geomAt(start);
    } catch (RuntimeException e) {
      throw new BadShapeException(
          "its geometry cannot be read (" + LayerProblems.detail(e) + ")", e);
    }
    if (geometry == null) {
      throw new BadShapeException("its geometry cannot be read");
    }
    ringsChanged = type % 10 == POLYGON && points != geometry.getNumPoints();
    boolean onePart = geometry instanceof GeometryCollection && geometry.getNumGeometries() == 1;
    return Optional.of(onePart ? geometry.getGeometryN(0) : geometry);
  }

  private ByteBuffer bytes(int start, int length) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    while (bytes.hasRemaining() && shp.read(bytes, start + bytes.position()) >= 0) {
      // read on
    }
    return bytes.flip();
  }

  private int checkedPointCount(int type, ByteBuffer head, int contentStart, int contentBytes)
      throws IOException, BadShapeException {
    boolean lineOrPolygon = type % 10 == LINE || type % 10 == POLYGON;
    boolean multiPoint = type % 10 == MULTI_POINT;
    if (!lineOrPolygon && !multiPoint) {
      return 0;
    }
    int counts = lineOrPolygon ? 2 : 1;
    if (head.remaining() < BOX_BYTES + counts * Integer.BYTES) {
      throw new BadShapeException("its record is too short for a geometry");
    }
    head.position(head.position() + BOX_BYTES);
    int parts = lineOrPolygon ? head.getInt() : 0;
    int points = head.getInt();
    boolean heights = type >= 10 && type < 20;
    long needed =
        Integer.BYTES
            + BOX_BYTES
            + (long) counts * Integer.BYTES
            + (long) parts * PART_BYTES
            + (long) points * POINT_BYTES
            + (heights ? 2L * Double.BYTES + (long) points * Double.BYTES : 0);
    if (parts < 0 || points < 0 || needed > contentBytes) {
      throw new BadShapeException("its record states more points than it holds");
    }
    if (!lineOrPolygon) {
      return 0;
    }
    checkParts(
        bytes(contentStart + LONGEST_HEAD_BYTES, parts * PART_BYTES), points, type % 10 == LINE);
    return points;
  }

  /** The library allocates by the distance between two part starts, and reads on past one point. */
  private static void checkParts(ByteBuffer starts, int points, boolean line)
      throws BadShapeException {
    int parts = starts.remaining() / PART_BYTES;
    int previous = 0;
    for (int i = 0; i <= parts; i++) {
      int start = i == parts ? points : starts.getInt();
      boolean inOrder = i == 0 ? start == 0 || parts == 0 : start > previous && start <= points;
      if (!inOrder) {
        throw new BadShapeException("the parts of its geometry are out of order");
      }
      if (line && i > 0 && start - previous < 2) {
        throw new BadShapeException("a part of its line has a single point");
      }
      previous = start;
    }
  }

  @Override
  public void close() throws IOException {
    shp.close();
    shx.close();
  }
}
