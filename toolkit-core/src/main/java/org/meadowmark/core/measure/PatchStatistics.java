package org.meadowmark.core.measure;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.meadowmark.core.model.Hectare;

/**
 * Figures of the patches in a bed, a management area or the whole survey, at one time.
 *
 * <p>Densities and the mesh are taken of the total of {@link Fragmentation#totalSquareMetres}, the
 * mapped grass before scarring, so that before and after compare and pure loss shows.
 *
 * @param patchCount patches
 * @param patchSquareMetres area of all of them
 * @param patchesPerHectare patches divided by the total; empty where the total is 0
 * @param meanSquareMetres mean area; empty, like the next ones, where there is no patch
 * @param medianSquareMetres median area
 * @param largestSquareMetres largest area
 * @param largestShare largest area divided by the area of all patches
 * @param edgeMetres length of grass edge, holes included, without lines where the boundary of a
 *     management area cuts a patch
 * @param edgeMetresPerHectare that length divided by the total; empty where the total is 0
 * @param meanShapeIndex mean of perimeter / (2·√(π·area)), 1 for a circle, holes included; of parts
 *     of patches where a boundary cuts them
 * @param areaWeightedShapeIndex the same, weighted by area
 * @param mesh division, splitting index and effective mesh size
 * @param nearest distances from each patch to the nearest other, edge to edge; of the patches that
 *     reach into a management area, to the nearest of the survey, wherever it lies; a single patch
 *     has none
 */
public record PatchStatistics(
    int patchCount,
    double patchSquareMetres,
    OptionalDouble patchesPerHectare,
    OptionalDouble meanSquareMetres,
    OptionalDouble medianSquareMetres,
    OptionalDouble largestSquareMetres,
    OptionalDouble largestShare,
    double edgeMetres,
    OptionalDouble edgeMetresPerHectare,
    OptionalDouble meanShapeIndex,
    OptionalDouble areaWeightedShapeIndex,
    EffectiveMesh mesh,
    LengthDistribution nearest) {

  /** Perimeter / (2·√(π·area)). */
  static double shapeIndex(double perimeterMetres, double squareMetres) {
    return perimeterMetres / (2 * Math.sqrt(Math.PI * squareMetres));
  }

  static PatchStatistics of(PatchFigures patches, double totalSquareMetres) {
    double[] areas = patches.squareMetres();
    double sum = Arrays.stream(areas).sum();
    double shapes = 0;
    double weightedShapes = 0;
    for (int i = 0; i < areas.length; i++) {
      double shape = shapeIndex(patches.perimeterMetres()[i], areas[i]);
      shapes += shape;
      weightedShapes += shape * areas[i];
    }
    boolean any = sum > 0;
    double largest = Arrays.stream(areas).max().orElse(0);
    double hectares = totalSquareMetres / Hectare.SQUARE_METRES;
    return new PatchStatistics(
        areas.length,
        sum,
        when(hectares > 0, areas.length / hectares),
        when(any, sum / areas.length),
        any ? OptionalDouble.of(LengthDistribution.quantile(areas, 0.5)) : OptionalDouble.empty(),
        when(any, largest),
        when(any, largest / sum),
        patches.edgeMetres(),
        when(hectares > 0, patches.edgeMetres() / hectares),
        when(any, shapes / areas.length),
        when(any, weightedShapes / sum),
        EffectiveMesh.of(areas, patches.completeSquareMetres(), totalSquareMetres),
        LengthDistribution.of(
            Arrays.stream(patches.nearestMetres()).filter(d -> !Double.isNaN(d)).toArray()));
  }

  private static OptionalDouble when(boolean known, double value) {
    return known ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
