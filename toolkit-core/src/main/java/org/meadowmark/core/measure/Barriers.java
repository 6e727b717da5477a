package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.model.MapArea;

/**
 * Land and structures: what a way over water must not touch. Safe for use by several threads once
 * built.
 */
public final class Barriers {
  /** A barrier drawn as a line is given this thickness so that it parts an area. */
  private static final double LINE_THICKNESS_METRES = 0.02;

  /** How far a way around a barrier keeps off it. */
  static final double CLEARANCE_METRES = 0.01;

  private static final BufferParameters AROUND_CORNERS =
      new BufferParameters(2, BufferParameters.CAP_SQUARE, BufferParameters.JOIN_MITRE, 2);

  /** No barrier at all. */
  static final Barriers NONE = new Barriers(List.of(), new GeometryFactory());

  private final STRtree index = new STRtree();
  private final List<Geometry> parts = new ArrayList<>();
  private STRtree corners;
  private final GeometryFactory factory;

  /**
   * Indexes barriers.
   *
   * @param barriers polygons or lines on the analysis grid
   * @param factory makes lines
   */
  public Barriers(List<MapArea> barriers, GeometryFactory factory) {
    this.factory = factory;
    for (MapArea barrier : barriers) {
      for (int i = 0; i < barrier.geometry().getNumGeometries(); i++) {
        Geometry part = barrier.geometry().getGeometryN(i);
        parts.add(part);
        index.insert(part.getEnvelopeInternal(), PreparedGeometryFactory.prepare(part));
      }
    }
    index.build();
  }

  boolean isEmpty() {
    return index.isEmpty();
  }

  /**
   * {@return whether the straight way between two points touches a barrier}
   *
   * @param from one end, on the analysis grid
   * @param to the other end
   */
  public boolean block(Coordinate from, Coordinate to) {
    List<PreparedGeometry> near = near(new Envelope(from, to));
    if (near.isEmpty()) {
      return false;
    }
    LineString way = factory.createLineString(new Coordinate[] {from, to});
    return near.stream().anyMatch(barrier -> barrier.intersects(way));
  }

  /**
   * {@return the part of an area around a line that can be reached from the line without crossing a
   * barrier; the area itself where no barrier meets it; may be empty where a barrier lies on the
   * line}
   *
   * @param around area to look at, on the analysis grid
   * @param line where the way starts, such as a channel segment
   */
  public Geometry reachable(Geometry around, LineString line) {
    Geometry open = around;
    for (PreparedGeometry barrier : near(around.getEnvelopeInternal())) {
      if (barrier.intersects(around)) {
        Geometry shape = barrier.getGeometry();
        Geometry body =
            shape.getDimension() == 2 ? shape : BufferOp.bufferOp(shape, LINE_THICKNESS_METRES / 2);
        open = OverlayNGRobust.overlay(open, body, OverlayNG.DIFFERENCE);
      }
    }
    if (open == around) {
      return around;
    }
    List<Geometry> reached = new ArrayList<>();
    for (int i = 0; i < open.getNumGeometries(); i++) {
      if (open.getGeometryN(i).intersects(line)) {
        reached.add(open.getGeometryN(i));
      }
    }
    return factory.buildGeometry(reached);
  }

  /**
   * Corners in a box that a shortest way can turn at: vertices of the barriers' outlines a little
   * way off.
   */
  List<Coordinate> corners(Envelope box) {
    return StrTreeQuery.items(corners(), box);
  }

  private synchronized STRtree corners() {
    if (corners == null) {
      STRtree tree = new STRtree();
      for (Geometry part : parts) {
        Geometry around = BufferOp.bufferOp(part, CLEARANCE_METRES, AROUND_CORNERS);
        for (Coordinate corner : around.getCoordinates()) {
          tree.insert(new Envelope(corner), corner);
        }
      }
      tree.build();
      corners = tree;
    }
    return corners;
  }

  /** Whether a barrier meets a box. */
  boolean meet(Envelope box) {
    List<PreparedGeometry> near = near(box);
    if (near.isEmpty()) {
      return false;
    }
    Geometry shape = factory.toGeometry(box);
    return near.stream().anyMatch(barrier -> barrier.intersects(shape));
  }

  /** Barriers whose envelope meets an envelope. */
  List<PreparedGeometry> near(Envelope envelope) {
    return StrTreeQuery.items(index, envelope);
  }
}
