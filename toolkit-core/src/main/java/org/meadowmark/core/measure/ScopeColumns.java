package org.meadowmark.core.measure;

import java.util.List;

/**
 * What is compared in one scope at one time, without its geometry.
 *
 * @param figures ground figures of the pieces
 * @param network ways between them
 */
record ScopeColumns(PatchFigures figures, PatchNetwork network) {
  List<Connectedness> connectivity(double totalSquareMetres, List<Double> distances) {
    return totalSquareMetres > 0 ? connectivity(totalSquareMetres).sweep(distances) : List.of();
  }

  /** Connectivity of the patches, related to a total area of grass. */
  ConnectivityMeasurer connectivity(double totalSquareMetres) {
    return new ConnectivityMeasurer(figures.squareMetres(), network, totalSquareMetres);
  }
}
