package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.survey.Parameters;

/**
 * What is compared in one scope at one time.
 *
 * @param pieces pieces of grass
 * @param figures their ground figures
 * @param graph distances between them
 */
record ScopeSummary(Pieces pieces, PatchFigures figures, PieceGraph graph) {
  private static final int MANY_SCARS = 300_000;
  private static final int SHARE_FOR_MANY_SCARS = 10;

  /** Summary of whole patches with their nearest neighbours in the scope. */
  static ScopeSummary of(Pieces pieces, GroundScale areaScale, PieceGraph.Maker graphs) {
    PieceGraph graph = graphs.graph(pieces.patches());
    return new ScopeSummary(pieces, PatchFigures.of(pieces, areaScale, graph.nearest()), graph);
  }

  /**
   * Parts of the patches in an area.
   *
   * @param summary the parts; neighbours are those of the whole patches
   * @param origins where they come from
   */
  record Clipped(ScopeSummary summary, ClippedPieces.Origins origins) {}

  /** Parts of the patches in an area. */
  Clipped clipped(
      Geometry shape, int operation, double minimumSquareMetres, PieceGraph.Maker graphs) {
    ClippedPieces clipped =
        ClippedPieces.of(pieces, figures, shape, operation, minimumSquareMetres);
    return new Clipped(
        new ScopeSummary(
            clipped.pieces(), clipped.figures(), graphs.graph(clipped.pieces().patches(), graph)),
        clipped.origins());
  }

  /** Makes graphs that reach as far as the largest crossing distance. */
  static PieceGraph.Maker graphs(MetricSurvey survey, Parameters parameters, int scarCount) {
    return new PieceGraph.Maker(
        survey.scale(),
        reachMetres(parameters),
        new Barriers(survey.barriers(), new GeometryFactory()),
        mostPatches(scarCount, parameters),
        new Sample(parameters.connectivitySources(), parameters.seed()));
  }

  /** Beds of a vast survey are so many that even those of middling size add up to hours. */
  static int mostPatches(int scarCount, Parameters parameters) {
    int most = parameters.connectivityExactPatches();
    return scarCount > MANY_SCARS ? most / SHARE_FOR_MANY_SCARS : most;
  }

  /** Largest distance that a graph must keep links for. */
  static double reachMetres(Parameters parameters) {
    List<Double> distances = parameters.allCrossingDistancesMetres();
    return distances.get(distances.size() - 1);
  }

  /** Compares a scope before and after scarring. */
  static Fragmentation compare(
      ScopeSummary before, ScopeSummary after, double[] gapWidthsMetres, Parameters parameters) {
    return compare(
        new ScopeColumns(before.figures, before.graph.network()),
        new ScopeColumns(after.figures, after.graph.network()),
        gapWidthsMetres,
        parameters);
  }

  /** Compares a scope before and after scarring, without its geometry. */
  static Fragmentation compare(
      ScopeColumns before, ScopeColumns after, double[] gapWidthsMetres, Parameters parameters) {
    double total = before.figures().totalSquareMetres();
    List<Double> distances = parameters.allCrossingDistancesMetres();
    List<Connectedness> connectedBefore = before.connectivity(total, distances);
    List<Connectedness> connectedAfter = after.connectivity(total, distances);
    List<Fragmentation.Crossing> crossings = new ArrayList<>();
    for (int i = 0; i < distances.size(); i++) {
      double distance = distances.get(i);
      PatchNetwork.GroupSummary groupsBefore = before.network().summary(distance);
      PatchNetwork.GroupSummary groupsAfter = after.network().summary(distance);
      crossings.add(
          new Fragmentation.Crossing(
              distance,
              groupsBefore.count(),
              groupsAfter.count(),
              groupsBefore.largestShare(),
              groupsAfter.largestShare(),
              total > 0 ? Optional.of(connectedBefore.get(i)) : Optional.empty(),
              total > 0 ? Optional.of(connectedAfter.get(i)) : Optional.empty()));
    }
    return new Fragmentation(
        total,
        PatchStatistics.of(before.figures(), total),
        PatchStatistics.of(after.figures(), total),
        after.figures().crumbSquareMetres().length,
        LengthDistribution.of(gapWidthsMetres),
        GapBin.count(gapWidthsMetres, parameters.gapWidthLimitsMetres()),
        crossings);
  }

  /** Connectivity of the patches, related to a total area of grass. */
  ConnectivityMeasurer connectivity(double totalSquareMetres) {
    return new ScopeColumns(figures, graph.network()).connectivity(totalSquareMetres);
  }
}
