package org.meadowmark.core.rank;

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
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.measure.StrTreeQuery;
import org.meadowmark.core.model.MapArea;

/** Land and structures: what a straight way over water must not touch. */
final class Barriers {
  /** A barrier drawn as a line is given this thickness so that it parts an area. */
  private static final double LINE_THICKNESS_METRES = 0.02;

  private final STRtree index = new STRtree();
  private final GeometryFactory factory;

  Barriers(List<MapArea> barriers, GeometryFactory factory) {
    this.factory = factory;
    for (MapArea barrier : barriers) {
      for (int i = 0; i < barrier.geometry().getNumGeometries(); i++) {
        Geometry part = barrier.geometry().getGeometryN(i);
        index.insert(part.getEnvelopeInternal(), PreparedGeometryFactory.prepare(part));
      }
    }
    index.build();
  }

  boolean block(Coordinate from, Coordinate to) {
    List<PreparedGeometry> near = near(new Envelope(from, to));
    if (near.isEmpty()) {
      return false;
    }
    LineString way = factory.createLineString(new Coordinate[] {from, to});
    return near.stream().anyMatch(barrier -> barrier.intersects(way));
  }

  /** The part of an area around a line that can be reached from the line without crossing. */
  Geometry reachable(Geometry around, LineString line) {
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

  private List<PreparedGeometry> near(Envelope envelope) {
    return StrTreeQuery.items(index, envelope);
  }
}
