package org.meadowmark.core.measure;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.model.GroundScale;

/**
 * Ground figures of patches, or of the parts of patches in an area, each array in their order.
 *
 * @param squareMetres areas
 * @param completeSquareMetres areas of the whole patches that parts belong to; of a whole patch its
 *     own
 * @param perimeterMetres lengths of the outlines, holes included
 * @param edgeMetres length of grass edge of all: outlines without lines of cut
 * @param crumbSquareMetres areas of the pieces that are too small for a patch
 * @param nearestMetres for each whole patch the distance to the nearest other, NaN for the only one
 */
record PatchFigures(
    double[] squareMetres,
    double[] completeSquareMetres,
    double[] perimeterMetres,
    double edgeMetres,
    double[] crumbSquareMetres,
    double[] nearestMetres) {

  /**
   * Figures of whole patches.
   *
   * @param pieces patches and crumbs
   * @param scale grid-to-ground scale; that at the middle of a piece applies to it
   * @param nearest nearest other patch of each, null for the only one
   */
  static PatchFigures of(Pieces pieces, GroundScale scale, PieceGraph.Nearest[] nearest) {
    int count = pieces.patches().size();
    double[] areas = new double[count];
    double[] perimeters = new double[count];
    double[] distances = new double[count];
    for (int i = 0; i < count; i++) {
      Polygon patch = pieces.patches().get(i);
      Coordinate centre = patch.getEnvelopeInternal().centre();
      areas[i] = patch.getArea() / scale.areaFactor(centre.x, centre.y);
      perimeters[i] = patch.getLength() / scale.lengthFactor(centre.x, centre.y);
      distances[i] = nearest[i] == null ? Double.NaN : nearest[i].metres();
    }
    double[] crumbs = new double[pieces.crumbs().size()];
    for (int i = 0; i < crumbs.length; i++) {
      Polygon crumb = pieces.crumbs().get(i);
      Coordinate centre = crumb.getEnvelopeInternal().centre();
      crumbs[i] = crumb.getArea() / scale.areaFactor(centre.x, centre.y);
    }
    return new PatchFigures(
        areas, areas, perimeters, Arrays.stream(perimeters).sum(), crumbs, distances);
  }

  /** Area of patches and crumbs. */
  double totalSquareMetres() {
    return Arrays.stream(squareMetres).sum() + Arrays.stream(crumbSquareMetres).sum();
  }
}
