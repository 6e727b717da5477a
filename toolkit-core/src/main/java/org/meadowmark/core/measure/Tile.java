package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * A box of a meadow with few enough scars to be cut in one go.
 *
 * @param box the box; neighbours share the numbers of a common side
 * @param parts what lies in it of the joined meadow and, where that is of several beds, of each bed
 * @param footprints scars that meet the box or its margin, by position, ascending
 */
record Tile(Envelope box, List<Part> parts, int[] footprints) {
  /** Scars this near a tile's side are known in it. */
  static final double MARGIN_METRES = 2;

  private static final double BEYOND_MARGIN_METRES = 0.5;
  private static final int MOST_FOOTPRINTS = 400;
  private static final int MOST_VERTICES = 4_000;
  private static final double SMALLEST_SIDE_METRES = 4;

  /**
   * A part of a shape.
   *
   * @param shape number of the shape
   * @param geometry the part
   */
  record Part(int shape, Geometry geometry) {}

  /**
   * Cuts shapes into tiles. Time n log n in vertices and scars.
   *
   * @param shapes the joined meadow and its beds
   * @param footprints scars near them, by position, ascending
   * @param all footprints of the survey
   */
  static List<Tile> of(List<Geometry> shapes, int[] footprints, List<Footprint> all) {
    Envelope box = new Envelope(shapes.get(0).getEnvelopeInternal());
    shapes.forEach(shape -> box.expandToInclude(shape.getEnvelopeInternal()));
    // Nothing may lie on an outer side: what lies on a side is taken to go on beyond it.
    box.expandBy(1);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < shapes.size(); i++) {
      parts.add(new Part(i, shapes.get(i)));
    }
    return new Tile(box, parts, footprints).cut(all);
  }

  private List<Tile> cut(List<Footprint> all) {
    int vertices = parts.stream().mapToInt(part -> part.geometry.getNumPoints()).sum();
    boolean small = footprints.length <= MOST_FOOTPRINTS && vertices <= MOST_VERTICES;
    if (small || Math.max(box.getWidth(), box.getHeight()) < SMALLEST_SIDE_METRES) {
      return List.of(withNearScars(all));
    }
    return PolygonTiles.halves(box).parallelStream()
        .flatMap(half -> half(half, all).stream())
        .toList();
  }

  private List<Tile> half(Envelope half, List<Footprint> all) {
    List<Part> inside = new ArrayList<>();
    for (Part part : parts) {
      Geometry cut = clipped(part.geometry, half);
      if (!cut.isEmpty()) {
        inside.add(new Part(part.shape, cut));
      }
    }
    if (inside.isEmpty()) {
      return List.of();
    }
    Envelope grass = new Envelope();
    inside.forEach(part -> grass.expandToInclude(part.geometry.getEnvelopeInternal()));
    grass.expandBy(MARGIN_METRES);
    int[] near =
        Arrays.stream(footprints).filter(i -> grass.intersects(all.get(i).extent())).toArray();
    return new Tile(half, inside, near).cut(all);
  }

  /** The tile without scars that are farther from its grass than the margin. */
  private Tile withNearScars(List<Footprint> all) {
    List<PreparedGeometry> grass =
        parts.stream().map(part -> PreparedGeometryFactory.prepare(part.geometry)).toList();
    int[] near =
        Arrays.stream(footprints)
            .filter(
                i -> {
                  Envelope around = all.get(i).extent();
                  around.expandBy(MARGIN_METRES);
                  Geometry window = parts.get(0).geometry.getFactory().toGeometry(around);
                  return grass.stream().anyMatch(part -> part.intersects(window));
                })
            .toArray();
    return new Tile(box, parts, near);
  }

  private static Geometry clipped(Geometry geometry, Envelope half) {
    Envelope extent = geometry.getEnvelopeInternal();
    if (half.contains(extent)) {
      return geometry;
    }
    if (!half.intersects(extent)) {
      return geometry.getFactory().createPolygon();
    }
    Geometry cut =
        OverlayNGRobust.overlay(
            geometry, geometry.getFactory().toGeometry(half), OverlayNG.INTERSECTION);
    return geometry
        .getFactory()
        .createMultiPolygon(Scarring.polygonsOf(cut).toArray(Polygon[]::new));
  }

  /** Whether a point is in the tile; each point is in one tile only. */
  boolean holds(Coordinate point) {
    return point.x >= box.getMinX()
        && point.x < box.getMaxX()
        && point.y >= box.getMinY()
        && point.y < box.getMaxY();
  }

  /** The box with its margin, and a little more: the side of the margin itself is known too. */
  Envelope known() {
    Envelope known = new Envelope(box);
    known.expandBy(MARGIN_METRES + BEYOND_MARGIN_METRES);
    return known;
  }

  /** Whether every scar at a point is known in the tile. */
  boolean knows(Coordinate point) {
    return point.x >= box.getMinX() - MARGIN_METRES
        && point.x <= box.getMaxX() + MARGIN_METRES
        && point.y >= box.getMinY() - MARGIN_METRES
        && point.y <= box.getMaxY() + MARGIN_METRES;
  }
}
