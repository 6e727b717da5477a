package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.statistics.descriptive.Quantile;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.survey.Parameters;

/**
 * Pieces of grass in one scope (a bed, a management area, the survey), and their summary.
 *
 * @param patches pieces large enough to count
 * @param crumbs number of smaller ones
 */
record Pieces(List<Polygon> patches, int crumbs) {

  /** Sorts pieces by the smallest area that counts. */
  static Pieces of(List<Polygon> all, double minimumSquareMetres) {
    List<Polygon> patches = all.stream().filter(p -> p.getArea() >= minimumSquareMetres).toList();
    return new Pieces(patches, all.size() - patches.size());
  }

  /** Parts of the patches in a shape, or outside it. */
  Pieces clipped(Geometry shape, int operation, double minimumSquareMetres) {
    PreparedGeometry prepared = PreparedGeometryFactory.prepare(shape);
    boolean inside = operation == OverlayNG.INTERSECTION;
    List<Polygon> parts =
        patches.parallelStream()
            .flatMap(
                patch -> {
                  if (!prepared.intersects(patch)) {
                    return inside ? Stream.<Polygon>empty() : Stream.of(patch);
                  }
                  if (prepared.contains(patch)) {
                    return inside ? Stream.of(patch) : Stream.<Polygon>empty();
                  }
                  return Scarring.polygonsOf(OverlayNGRobust.overlay(patch, shape, operation))
                      .stream();
                })
            .toList();
    return of(parts, minimumSquareMetres);
  }

  OptionalDouble largestShare() {
    double total = patches.stream().mapToDouble(Polygon::getArea).sum();
    return total > 0
        ? OptionalDouble.of(
            patches.stream().mapToDouble(Polygon::getArea).max().getAsDouble() / total)
        : OptionalDouble.empty();
  }

  /** Summary of a scope before and after scarring. */
  static Fragmentation compare(
      Pieces before,
      Pieces after,
      double[] gapWidthsMetres,
      Parameters parameters,
      GroundScale scale) {
    double reach = reachMetres(parameters);
    return compare(
        before,
        after,
        gapWidthsMetres,
        new PieceGraph(before.patches, scale, reach),
        new PieceGraph(after.patches, scale, reach),
        parameters);
  }

  /** Largest distance that a graph must keep links for. */
  static double reachMetres(Parameters parameters) {
    List<Double> distances = parameters.allCrossingDistancesMetres();
    return distances.get(distances.size() - 1);
  }

  /** The same where the graphs are there already. */
  static Fragmentation compare(
      Pieces before,
      Pieces after,
      double[] gapWidthsMetres,
      PieceGraph graphBefore,
      PieceGraph graphAfter,
      Parameters parameters) {
    List<Fragmentation.Crossing> crossings = new ArrayList<>();
    for (double distance : parameters.allCrossingDistancesMetres()) {
      PieceGraph.GroupSummary groupsBefore = graphBefore.summary(distance);
      PieceGraph.GroupSummary groupsAfter = graphAfter.summary(distance);
      crossings.add(
          new Fragmentation.Crossing(
              distance,
              groupsBefore.count(),
              groupsAfter.count(),
              groupsBefore.largestShare(),
              groupsAfter.largestShare()));
    }
    return new Fragmentation(
        before.patches.size(),
        after.patches.size(),
        after.crumbs,
        before.largestShare(),
        after.largestShare(),
        gapWidths(gapWidthsMetres),
        crossings);
  }

  /** Percentiles interpolate between order statistics (Hyndman and Fan 1996, type 7). */
  static Fragmentation.GapWidths gapWidths(double[] metres) {
    if (metres.length == 0) {
      OptionalDouble none = OptionalDouble.empty();
      return new Fragmentation.GapWidths(0, none, none, none, none);
    }
    double[] sorted = metres.clone();
    Arrays.sort(sorted);
    // Without the copy the library reorders the array while it selects.
    Quantile quantile = Quantile.withDefaults().withCopy(true).with(Quantile.EstimationMethod.HF7);
    return new Fragmentation.GapWidths(
        sorted.length,
        OptionalDouble.of(sorted[0]),
        OptionalDouble.of(quantile.evaluate(sorted, 0.5)),
        OptionalDouble.of(quantile.evaluate(sorted, 0.9)),
        OptionalDouble.of(sorted[sorted.length - 1]));
  }
}
