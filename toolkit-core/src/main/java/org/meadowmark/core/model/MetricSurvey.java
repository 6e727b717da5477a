package org.meadowmark.core.model;

import java.util.List;

/**
 * A checked survey on one metric grid: what the measuring stages take.
 *
 * <p>Every geometry is valid, non-empty, two-dimensional in use, and in metres of {@code
 * gridLabel}. Lists are in {@link Ids#ORDER}. Beds do not overlap each other in area. An empty
 * {@code surveyedArea} list means that everything was surveyed.
 *
 * @param gridLabel the analysis reference system, such as {@code EPSG:32617}
 * @param gridWkt its well-known text
 * @param scars scar lines and polygons
 * @param beds bed polygons
 * @param channels channel centrelines
 * @param managementAreas areas that totals are reported for
 * @param surveyedArea what was looked at
 * @param barriers land and structures
 * @param depth water depth
 * @param scale grid-to-ground scale
 */
public record MetricSurvey(
    String gridLabel,
    String gridWkt,
    List<Scar> scars,
    List<Bed> beds,
    List<Channel> channels,
    List<MapArea> managementAreas,
    List<MapArea> surveyedArea,
    List<MapArea> barriers,
    DepthField depth,
    GroundScale scale) {
  /**
   * Keeps copies of the lists; scars that are kept elsewhere stay there.
   *
   * @param gridLabel the analysis reference system, such as {@code EPSG:32617}
   * @param gridWkt its well-known text
   * @param scars scar lines and polygons
   * @param beds bed polygons
   * @param channels channel centrelines
   * @param managementAreas areas that totals are reported for
   * @param surveyedArea what was looked at
   * @param barriers land and structures
   * @param depth water depth
   * @param scale grid-to-ground scale
   * @throws NullPointerException if a list or a feature in it is null
   */
  public MetricSurvey {
    scars = KeptElsewhere.copyOf(scars);
    beds = List.copyOf(beds);
    channels = List.copyOf(channels);
    managementAreas = List.copyOf(managementAreas);
    surveyedArea = List.copyOf(surveyedArea);
    barriers = List.copyOf(barriers);
  }
}
