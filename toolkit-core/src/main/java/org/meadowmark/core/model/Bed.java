package org.meadowmark.core.model;

import java.util.Objects;
import org.locationtech.jts.geom.Geometry;

/**
 * A mapped bed of seagrass or eelgrass.
 *
 * @param id unique in the layer
 * @param ref where it was read
 * @param geometry Polygon or MultiPolygon
 * @param species key of a row of {@code species.csv}, {@code unknown} where the layer's word is not
 *     in the table, or empty where the layer has none
 * @param texture the mapper's word for its texture (patchy, continuous), or empty
 * @param notes what was noted on the ground and the grass of all of it
 */
public record Bed(
    String id, FeatureRef ref, Geometry geometry, String species, String texture, SiteNotes notes)
    implements Located {
  /**
   * Refuses a bed of which a part is missing; texts may be empty.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry Polygon or MultiPolygon
   * @param species key of a row of {@code species.csv}, {@code unknown} where the layer's word is
   *     not in the table, or empty where the layer has none
   * @param texture the mapper's word for its texture (patchy, continuous), or empty
   * @param notes what was noted on the ground and the grass of all of it
   * @throws NullPointerException if anything is null
   */
  public Bed {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(ref, "ref");
    Objects.requireNonNull(geometry, "geometry");
    Objects.requireNonNull(species, "species");
    Objects.requireNonNull(texture, "texture");
    Objects.requireNonNull(notes, "notes");
  }

  /**
   * A bed with nothing noted on its ground.
   *
   * @param id unique in the layer
   * @param ref where it was read
   * @param geometry Polygon or MultiPolygon
   * @param species key of a row of {@code species.csv}, {@code unknown} where the layer's word is
   *     not in the table, or empty where the layer has none
   * @param texture the mapper's word for its texture (patchy, continuous), or empty
   * @throws NullPointerException if anything is null
   */
  public Bed(String id, FeatureRef ref, Geometry geometry, String species, String texture) {
    this(id, ref, geometry, species, texture, SiteNotes.NONE);
  }

  @Override
  public Bed withGeometry(Geometry other) {
    return new Bed(id, ref, other, species, texture, notes);
  }
}
