package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * The parts of the survey's patches in a management area or outside all of them; each part knows
 * the whole patch that it belongs to.
 *
 * @param pieces the parts
 * @param figures their ground figures, with the scale factor of the whole patch
 * @param origins where they come from
 */
record ClippedPieces(Pieces pieces, PatchFigures figures, Origins origins) {
  /** A patch that loses less of its area than this only touches the boundary. */
  private static final double SMALLEST_LOSS = 1e-12;

  /**
   * Where parts come from: whole patches and crumbs, by their position.
   *
   * @param patches whole patch of each part
   * @param edges for each whole patch the length of its own outline in the area
   * @param patchCrumbs whole patch of each part that is a crumb
   * @param crumbs positions of whole crumbs, after those
   * @param nearest whole patches whose nearest other counts
   */
  record Origins(int[] patches, double[] edges, int[] patchCrumbs, int[] crumbs, int[] nearest) {}

  /**
   * Parts of one patch.
   *
   * @param polygons the parts, on the grid
   * @param gridEdge length of the patch's own outline that lies among them, on the grid
   */
  private record Parts(List<Polygon> polygons, double gridEdge) {
    static final Parts NONE = new Parts(List.of(), 0);
  }

  /**
   * Clips pieces of the whole survey. Time n log n in the vertices of patches that the boundary
   * crosses, linear in the rest.
   *
   * @param complete pieces of the survey
   * @param figures their figures
   * @param shape an area, or the union of all areas
   * @param operation {@link OverlayNG#INTERSECTION} for the inside, {@link OverlayNG#DIFFERENCE}
   *     for the outside
   * @param minimumSquareMetres smaller parts are crumbs
   */
  static ClippedPieces of(
      Pieces complete,
      PatchFigures figures,
      Geometry shape,
      int operation,
      double minimumSquareMetres) {
    PreparedGeometry prepared = PreparedGeometryFactory.prepare(shape);
    boolean inside = operation == OverlayNG.INTERSECTION;
    List<Parts> partsOfPatch =
        complete.patches().parallelStream()
            .map(patch -> clip(patch, prepared, shape, inside))
            .toList();

    List<Polygon> patches = new ArrayList<>();
    List<Polygon> crumbs = new ArrayList<>();
    List<double[]> rows = new ArrayList<>();
    double edge = 0;
    List<Double> crumbAreas = new ArrayList<>();
    List<Double> nearest = new ArrayList<>();
    List<Integer> patchOfPart = new ArrayList<>();
    double[] edges = new double[partsOfPatch.size()];
    List<Integer> patchOfCrumb = new ArrayList<>();
    List<Integer> wholeCrumbs = new ArrayList<>();
    List<Integer> nearestOf = new ArrayList<>();
    for (int i = 0; i < partsOfPatch.size(); i++) {
      Polygon patch = complete.patches().get(i);
      double perGridArea = figures.squareMetres()[i] / patch.getArea();
      double perGridLength = figures.perimeterMetres()[i] / patch.getLength();
      int before = patches.size();
      for (Polygon part : partsOfPatch.get(i).polygons) {
        double area = part.getArea() * perGridArea;
        if (part.getArea() < minimumSquareMetres) {
          crumbs.add(part);
          crumbAreas.add(area);
          patchOfCrumb.add(i);
        } else {
          patches.add(part);
          patchOfPart.add(i);
          rows.add(
              new double[] {area, figures.squareMetres()[i], part.getLength() * perGridLength});
        }
      }
      edges[i] = partsOfPatch.get(i).gridEdge * perGridLength;
      edge += edges[i];
      if (patches.size() > before) {
        nearestOf.add(i);
        nearest.add(figures.nearestMetres()[i]);
      }
    }
    for (int i = 0; i < complete.crumbs().size(); i++) {
      Polygon crumb = complete.crumbs().get(i);
      if (prepared.contains(crumb.getInteriorPoint()) == inside) {
        crumbs.add(crumb);
        crumbAreas.add(figures.crumbSquareMetres()[i]);
        wholeCrumbs.add(i);
      }
    }
    return new ClippedPieces(
        new Pieces(patches, crumbs),
        new PatchFigures(
            column(rows, 0),
            column(rows, 1),
            column(rows, 2),
            edge,
            array(crumbAreas),
            array(nearest)),
        new Origins(
            positions(patchOfPart),
            edges,
            positions(patchOfCrumb),
            positions(wholeCrumbs),
            positions(nearestOf)));
  }

  private static int[] positions(List<Integer> values) {
    return values.stream().mapToInt(Integer::intValue).toArray();
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private static double[] column(List<double[]> rows, int column) {
    return IntStream.range(0, rows.size()).mapToDouble(i -> rows.get(i)[column]).toArray();
  }

  private static Parts clip(
      Polygon patch, PreparedGeometry prepared, Geometry shape, boolean inside) {
    Parts whole = new Parts(List.of(patch), patch.getLength());
    if (!prepared.intersects(patch)) {
      return inside ? Parts.NONE : whole;
    }
    if (prepared.contains(patch)) {
      return inside ? whole : Parts.NONE;
    }
    List<Polygon> parts =
        Scarring.polygonsOf(
            OverlayNGRobust.overlay(
                patch, shape, inside ? OverlayNG.INTERSECTION : OverlayNG.DIFFERENCE));
    double area = parts.stream().mapToDouble(Polygon::getArea).sum();
    if (patch.getArea() - area <= SMALLEST_LOSS * patch.getArea()) {
      return whole;
    }
    if (parts.isEmpty()) {
      return Parts.NONE;
    }
    double edgeInside =
        OverlayNGRobust.overlay(patch.getBoundary(), shape, OverlayNG.INTERSECTION).getLength();
    return new Parts(parts, inside ? edgeInside : Math.max(0, patch.getLength() - edgeInside));
  }
}
