package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Polygon;

/**
 * A maximal connected piece of grass over the whole survey, after scarring; touching beds are
 * joined.
 *
 * @param id stable for the same input: {@code P} and a number in order of position
 * @param geometry outline on the analysis grid
 * @param bedIds beds it is part of
 * @param areaSquareMetres ground area
 * @param perimeterMetres ground length of its outline, holes included
 * @param shapeIndex perimeter / (2·√(π·area)), 1 for a circle
 * @param nearestPatchId the patch that is nearest edge to edge; empty where there is no other
 * @param nearestDistanceMetres how far that is
 * @param groupId group it belongs to at the headline crossing distance
 */
public record Patch(
    String id,
    Polygon geometry,
    List<String> bedIds,
    double areaSquareMetres,
    double perimeterMetres,
    double shapeIndex,
    Optional<String> nearestPatchId,
    OptionalDouble nearestDistanceMetres,
    String groupId) {
  /**
   * Keeps a copy of the list that cannot be changed.
   *
   * @param id stable for the same input: {@code P} and a number in order of position
   * @param geometry outline on the analysis grid
   * @param bedIds beds it is part of
   * @param areaSquareMetres ground area
   * @param perimeterMetres ground length of its outline, holes included
   * @param shapeIndex perimeter / (2·√(π·area)), 1 for a circle
   * @param nearestPatchId the patch that is nearest edge to edge; empty where there is no other
   * @param nearestDistanceMetres how far that is
   * @param groupId group it belongs to at the headline crossing distance
   * @throws NullPointerException if the list or an entry of it is null
   */
  public Patch {
    bedIds = List.copyOf(bedIds);
  }
}
