package org.meadowmark.core.measure.recovery;

import java.util.OptionalDouble;

/**
 * The bare ground of a scar that grass closes from its edges: what is left of the footprint when
 * its outline has moved inwards.
 *
 * <p>The offset counts, not a share of the area: for the same area, regrowth from the edges goes
 * with the perimeter. Source: Fonseca, Whitfield, Kenworthy, Colby and Julius (2004), Aquatic
 * Conservation 14, doi:10.1002/aqc.610 (abstract read).
 */
public interface ScarShape {
  /** {@return ground area of the footprint} */
  double areaSquareMetres();

  /**
   * {@return ground area that is still bare}
   *
   * @param offsetMetres how far the outline has moved inwards, 0 or more
   */
  double bareSquareMetres(double offsetMetres);

  /** {@return offset at which nothing is bare: radius of the largest circle that fits in} */
  double closingOffsetMetres();

  /** {@return width, where the shape is one of strips of one width} */
  OptionalDouble stripWidthMetres();
}
