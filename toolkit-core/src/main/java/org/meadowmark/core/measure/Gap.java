package org.meadowmark.core.measure;

import java.util.Comparator;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.Ids;

/**
 * A place where a scar separates two patches.
 *
 * @param id {@code G} and a number, in order of scar and patches
 * @param scarId the scar
 * @param firstPatchId the patch with the lower number
 * @param secondPatchId the other
 * @param minimumWidthMetres smallest bare width along it; for a polygon scar the shortest way
 *     across
 * @param meanWidthMetres mean of the bare width along it, weighted by length; empty for a polygon
 *     scar, which has no line to go along
 * @param lengthMetres length of the scar's line that separates the two
 * @param geometry the part of the scar's line that separates them, on the analysis grid
 */
public record Gap(
    String id,
    String scarId,
    String firstPatchId,
    String secondPatchId,
    double minimumWidthMetres,
    OptionalDouble meanWidthMetres,
    double lengthMetres,
    Geometry geometry) {
  /** Longest first; gaps of one length by scar and id. */
  public static final Comparator<Gap> LONGEST_FIRST =
      Comparator.comparingDouble((Gap gap) -> -gap.lengthMetres)
          .thenComparing(Gap::scarId, Ids.ORDER)
          .thenComparing(Gap::id, Ids.ORDER);
}
