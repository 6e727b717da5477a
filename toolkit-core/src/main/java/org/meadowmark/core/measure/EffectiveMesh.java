package org.meadowmark.core.measure;

import java.util.OptionalDouble;

/**
 * Landscape division, splitting index and effective mesh size of patches in a stated total area.
 *
 * <p>With patch areas Aᵢ and the total area A: division D = 1 − Σ(Aᵢ/A)², the probability that two
 * points dropped at random into the total do not lie in the same patch; splitting index S =
 * A²/ΣAᵢ², the number of equal patches of the total that would be as divided; effective mesh size m
 * = ΣAᵢ²/A. Always m = A·(1 − D) = A/S. Source: Jaeger, J. A. G. (2000), <i>Landscape division,
 * splitting index, and effective mesh size: new measures of landscape fragmentation</i>, Landscape
 * Ecology 15:115–130.
 *
 * <p>The boundary-corrected mesh size is Σ Aᵢ·Aᵢ,complete/A, where Aᵢ,complete is the area of the
 * whole patch that part i belongs to, so that a boundary drawn across a patch does not count as
 * fragmentation. Source: Moser, B., Jaeger, J. A. G., Tappeiner, U., Tasser, E. and Eiselt, B.
 * (2007), <i>Modification of the effective mesh size for measuring landscape fragmentation to solve
 * the boundary problem</i>, Landscape Ecology 22:447–459.
 *
 * @param division D; empty where the total is 0
 * @param splittingIndex S; empty where the total is 0 or no patch is left
 * @param squareMetres m; empty where the total is 0
 * @param boundaryCorrectedSquareMetres m without the effect of the boundary; empty where the total
 *     is 0
 */
public record EffectiveMesh(
    OptionalDouble division,
    OptionalDouble splittingIndex,
    OptionalDouble squareMetres,
    OptionalDouble boundaryCorrectedSquareMetres) {

  /**
   * Computes the figures of patches that no boundary cuts. Time linear in the patches.
   *
   * @param patchSquareMetres areas of the patches
   * @param totalSquareMetres area that the patches are taken to be a division of
   * @return the figures; the mesh size and its boundary-corrected form are the same
   */
  public static EffectiveMesh of(double[] patchSquareMetres, double totalSquareMetres) {
    return of(patchSquareMetres, patchSquareMetres, totalSquareMetres);
  }

  /**
   * Computes the figures of parts of patches. Time linear in the parts.
   *
   * @param partSquareMetres areas of the parts inside the boundary
   * @param completeSquareMetres for each part the area of the whole patch that it belongs to
   * @param totalSquareMetres area that the parts are taken to be a division of
   * @return the figures; all empty where the total is not above 0
   * @throws IllegalArgumentException if the two arrays differ in length
   */
  public static EffectiveMesh of(
      double[] partSquareMetres, double[] completeSquareMetres, double totalSquareMetres) {
    if (partSquareMetres.length != completeSquareMetres.length) {
      throw new IllegalArgumentException("every part belongs to one patch");
    }
    if (!(totalSquareMetres > 0)) {
      OptionalDouble none = OptionalDouble.empty();
      return new EffectiveMesh(none, none, none, none);
    }
    double squares = 0;
    double products = 0;
    for (int i = 0; i < partSquareMetres.length; i++) {
      squares += partSquareMetres[i] * partSquareMetres[i];
      products += partSquareMetres[i] * completeSquareMetres[i];
    }
    return new EffectiveMesh(
        OptionalDouble.of(1 - squares / totalSquareMetres / totalSquareMetres),
        squares > 0
            ? OptionalDouble.of(totalSquareMetres / (squares / totalSquareMetres))
            : OptionalDouble.empty(),
        OptionalDouble.of(squares / totalSquareMetres),
        OptionalDouble.of(products / totalSquareMetres));
  }
}
