package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.survey.Parameters;

/**
 * What is compared in one scope at one time.
 *
 * @param pieces pieces of grass
 * @param figures their ground figures
 * @param graph distances between them
 */
record ScopeSummary(Pieces pieces, PatchFigures figures, PieceGraph graph) {

  /** Summary of whole patches with their nearest neighbours in the scope. */
  static ScopeSummary of(Pieces pieces, GroundScale scale, GroundScale areaScale, double reach) {
    PieceGraph graph = new PieceGraph(pieces.patches(), scale, reach);
    return new ScopeSummary(pieces, PatchFigures.of(pieces, areaScale, graph.nearest()), graph);
  }

  /** Parts of the patches in an area; neighbours are those of the whole patches. */
  ScopeSummary clipped(Geometry shape, int operation, Parameters parameters, GroundScale scale) {
    ClippedPieces clipped =
        ClippedPieces.of(pieces, figures, shape, operation, parameters.minimumPatchSquareMetres());
    return new ScopeSummary(
        clipped.pieces(),
        clipped.figures(),
        new PieceGraph(clipped.pieces().patches(), scale, reachMetres(parameters)));
  }

  /** Largest distance that a graph must keep links for. */
  static double reachMetres(Parameters parameters) {
    List<Double> distances = parameters.allCrossingDistancesMetres();
    return distances.get(distances.size() - 1);
  }

  /** Compares a scope before and after scarring. */
  static Fragmentation compare(
      ScopeSummary before, ScopeSummary after, double[] gapWidthsMetres, Parameters parameters) {
    List<Fragmentation.Crossing> crossings = new ArrayList<>();
    for (double distance : parameters.allCrossingDistancesMetres()) {
      PieceGraph.GroupSummary groupsBefore = before.graph.summary(distance);
      PieceGraph.GroupSummary groupsAfter = after.graph.summary(distance);
      crossings.add(
          new Fragmentation.Crossing(
              distance,
              groupsBefore.count(),
              groupsAfter.count(),
              groupsBefore.largestShare(),
              groupsAfter.largestShare()));
    }
    double total = before.figures.totalSquareMetres();
    return new Fragmentation(
        total,
        PatchStatistics.of(before.figures, total),
        PatchStatistics.of(after.figures, total),
        after.pieces.crumbs().size(),
        LengthDistribution.of(gapWidthsMetres),
        GapBin.count(gapWidthsMetres, parameters.gapWidthLimitsMetres()),
        crossings);
  }
}
