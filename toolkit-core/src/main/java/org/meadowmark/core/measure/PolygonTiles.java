package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * A polygonal geometry cut into tiles of few vertices, so that measuring a small shape inside a bed
 * of a hundred thousand vertices looks at a few hundred of them. Lengths and areas add up over
 * tiles.
 *
 * <p>Building takes n log n for n vertices. Thread-safe once built.
 */
public final class PolygonTiles {
  private static final int MAX_VERTICES = 256;

  /** Off the middle, so that a line on a round coordinate does not run along a cut. */
  private static final double CUT_AT = 0.5 + 1.37e-4;

  private static final int MAX_DEPTH = 24;

  private record Tile(Geometry geometry, PreparedGeometry prepared) {}

  private final STRtree index = new STRtree();

  /**
   * Cuts a geometry.
   *
   * @param geometry valid polygonal geometry
   */
  public PolygonTiles(Geometry geometry) {
    this(List.of(geometry));
  }

  /**
   * Cuts several geometries that do not overlap into one set of tiles.
   *
   * @param geometries valid polygonal geometries
   */
  public PolygonTiles(List<? extends Geometry> geometries) {
    List<Geometry> tiles = new ArrayList<>();
    for (Geometry geometry : geometries) {
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        cut(geometry.getGeometryN(i), 0, tiles);
      }
    }
    for (Geometry tile : tiles) {
      index.insert(
          tile.getEnvelopeInternal(), new Tile(tile, PreparedGeometryFactory.prepare(tile)));
    }
    index.build();
  }

  /** The halves of a box, cut across its longer side; both have the numbers of the common side. */
  static List<Envelope> halves(Envelope box) {
    if (box.getWidth() >= box.getHeight()) {
      double x = box.getMinX() + CUT_AT * box.getWidth();
      return List.of(
          new Envelope(box.getMinX(), x, box.getMinY(), box.getMaxY()),
          new Envelope(x, box.getMaxX(), box.getMinY(), box.getMaxY()));
    }
    double y = box.getMinY() + CUT_AT * box.getHeight();
    return List.of(
        new Envelope(box.getMinX(), box.getMaxX(), box.getMinY(), y),
        new Envelope(box.getMinX(), box.getMaxX(), y, box.getMaxY()));
  }

  private static void cut(Geometry geometry, int depth, List<Geometry> tiles) {
    if (geometry.isEmpty() || geometry.getDimension() < 2) {
      return;
    }
    if (geometry.getNumPoints() <= MAX_VERTICES || depth == MAX_DEPTH) {
      tiles.add(geometry);
      return;
    }
    for (Envelope half : halves(geometry.getEnvelopeInternal())) {
      Geometry part =
          OverlayNGRobust.overlay(
              geometry, geometry.getFactory().toGeometry(half), OverlayNG.INTERSECTION);
      for (int i = 0; i < part.getNumGeometries(); i++) {
        cut(part.getGeometryN(i), depth + 1, tiles);
      }
    }
  }

  /**
   * {@return grid length of a line inside the geometry}
   *
   * @param line line on the same grid; may reach outside
   */
  public double lengthInside(Geometry line) {
    return sum(line, Geometry::getLength);
  }

  /**
   * {@return grid area of a polygonal shape inside the geometry}
   *
   * @param shape valid polygonal geometry on the same grid; may reach outside
   */
  public double areaInside(Geometry shape) {
    return sum(shape, Geometry::getArea);
  }

  private double sum(Geometry shape, ToDoubleFunction<Geometry> size) {
    double sum = 0;
    Envelope envelope = shape.getEnvelopeInternal();
    PreparedGeometry preparedShape = null;
    for (Tile tile : StrTreeQuery.<Tile>items(index, envelope)) {
      if (tile.geometry.getEnvelopeInternal().contains(envelope) && tile.prepared.contains(shape)) {
        return size.applyAsDouble(shape);
      }
      if (shape.getDimension() == 2 && envelope.contains(tile.geometry.getEnvelopeInternal())) {
        if (preparedShape == null) {
          preparedShape = PreparedGeometryFactory.prepare(shape);
        }
        if (preparedShape.contains(tile.geometry)) {
          sum += size.applyAsDouble(tile.geometry);
          continue;
        }
      }
      if (tile.prepared.intersects(shape)) {
        sum +=
            size.applyAsDouble(
                OverlayNGRobust.overlay(shape, tile.geometry, OverlayNG.INTERSECTION));
      }
    }
    return sum;
  }
}
