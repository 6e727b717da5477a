package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiLineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.chain.MonotoneChain;
import org.locationtech.jts.index.chain.MonotoneChainBuilder;
import org.locationtech.jts.index.chain.MonotoneChainSelectAction;
import org.locationtech.jts.index.hprtree.HPRtree;

/** Edges of a shape's outline, for local questions about a shape of many vertices. */
final class OutlineIndex {
  private final GeometryFactory factory;
  private final HPRtree index = new HPRtree();

  OutlineIndex(Geometry shape) {
    factory = shape.getFactory();
    for (Object ring : LinearComponentExtracter.getLines(shape)) {
      for (Object chain : MonotoneChainBuilder.getChains(((LineString) ring).getCoordinates())) {
        index.insert(((MonotoneChain) chain).getEnvelope(), chain);
      }
    }
    index.build();
  }

  /** Edges that meet a box, whole. */
  MultiLineString edgesIn(Envelope box) {
    List<LineString> edges = new ArrayList<>();
    MonotoneChainSelectAction action =
        new MonotoneChainSelectAction() {
          @Override
          public void select(LineSegment edge) {
            edges.add(edge.toGeometry(factory));
          }
        };
    index.query(box, chain -> ((MonotoneChain) chain).select(box, action));
    return factory.createMultiLineString(edges.toArray(LineString[]::new));
  }

  /** Distance along a straight way to where it first meets the outline; infinite if it does not. */
  double firstCrossing(Coordinate from, Coordinate to) {
    Envelope envelope = new Envelope(from, to);
    RobustLineIntersector intersector = new RobustLineIntersector();
    double[] nearest = {Double.POSITIVE_INFINITY};
    MonotoneChainSelectAction action =
        new MonotoneChainSelectAction() {
          @Override
          public void select(LineSegment edge) {
            intersector.computeIntersection(from, to, edge.p0, edge.p1);
            for (int i = 0; i < intersector.getIntersectionNum(); i++) {
              nearest[0] = Math.min(nearest[0], from.distance(intersector.getIntersection(i)));
            }
          }
        };
    index.query(envelope, chain -> ((MonotoneChain) chain).select(envelope, action));
    return nearest[0];
  }
}
