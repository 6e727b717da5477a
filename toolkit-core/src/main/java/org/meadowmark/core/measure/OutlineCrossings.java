package org.meadowmark.core.measure;

import java.util.List;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.chain.MonotoneChain;
import org.locationtech.jts.index.chain.MonotoneChainBuilder;
import org.locationtech.jts.index.chain.MonotoneChainSelectAction;
import org.locationtech.jts.index.strtree.STRtree;

/** Where a short straight way first meets the outline of a shape, through an index of its edges. */
final class OutlineCrossings {
  private final STRtree index = new STRtree();

  OutlineCrossings(Geometry shape) {
    for (Object ring : LinearComponentExtracter.getLines(shape)) {
      for (Object chain : MonotoneChainBuilder.getChains(((LineString) ring).getCoordinates())) {
        index.insert(((MonotoneChain) chain).getEnvelope(), chain);
      }
    }
    index.build();
  }

  /** Distance from the start to the first crossing; infinite where there is none. */
  double first(Coordinate from, Coordinate to) {
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
    List<MonotoneChain> chains = StrTreeQuery.items(index, envelope);
    chains.forEach(chain -> chain.select(envelope, action));
    return nearest[0];
  }
}
