package org.meadowmark.core.project;

import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.ItemBoundable;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.check.Sounding;
import org.meadowmark.core.model.DepthField;

/**
 * Depth of the nearest sounding within 100 m; farther away no depth is known (common practice, no
 * source). Safe for use by several threads.
 */
final class SoundedDepth implements DepthField {
  static final double REACH_METRES = 100;

  private record Point(Coordinate at, double depthMetres) {}

  private final STRtree tree = new STRtree();

  SoundedDepth(List<Sounding> soundings) {
    for (Sounding sounding : soundings) {
      for (Coordinate at : sounding.geometry().getCoordinates()) {
        tree.insert(new Envelope(at), new Point(at, sounding.depthMetres()));
      }
    }
    tree.build();
  }

  @Override
  public OptionalDouble depthMetres(double x, double y) {
    Coordinate here = new Coordinate(x, y);
    Point nearest =
        (Point)
            tree.nearestNeighbour(
                new Envelope(here), new Point(here, Double.NaN), SoundedDepth::distance);
    return nearest.at().distance(here) <= REACH_METRES
        ? OptionalDouble.of(nearest.depthMetres())
        : OptionalDouble.empty();
  }

  private static double distance(ItemBoundable one, ItemBoundable other) {
    return ((Point) one.getItem()).at().distance(((Point) other.getItem()).at());
  }
}
