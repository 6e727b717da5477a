package org.meadowmark.core.measure;

import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.meadowmark.core.model.Scar;

/**
 * The whole footprint of a scar on the analysis grid: a polygon as it is, a line buffered by half
 * its width with flat ends, its bends joined by arcs of eight chords a quarter circle.
 */
public final class ScarOutline {
  private static final BufferParameters FLAT_ENDS = flatEnds();

  private ScarOutline() {}

  private static BufferParameters flatEnds() {
    BufferParameters parameters =
        new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_ROUND, 5);
    // By default vertices within 1 % of the half width are dropped, which costs area at every bend.
    parameters.setSimplifyFactor(0);
    return parameters;
  }

  /**
   * {@return the footprint}
   *
   * @param scar a line or polygon on the grid
   * @param lengthFactor grid length divided by ground length there
   */
  public static Geometry of(Scar scar, double lengthFactor) {
    return scar.isLine()
        ? BufferOp.bufferOp(scar.geometry(), scar.widthMetres() * lengthFactor / 2, FLAT_ENDS)
        : scar.geometry();
  }
}
