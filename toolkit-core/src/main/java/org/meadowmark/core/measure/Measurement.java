package org.meadowmark.core.measure;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.KeptElsewhere;

/**
 * Everything measured in a survey.
 *
 * @param scars by scar id
 * @param scarsInBeds by scar id, then bed id
 * @param beds by bed id
 * @param areas management areas by id, then the beds outside them, then the whole survey
 * @param patches after scarring, by number; each is made when it is asked for
 * @param gaps by number; each is made when it is asked for
 * @param scarredGrass scarred parts of beds, one geometry a bed that has any, on the analysis grid;
 *     several where a bed with very many scars was cut in tiles
 * @param connectivity patch by patch and scar by scar; empty where there are more patches than the
 *     limit for it
 */
public record Measurement(
    List<ScarMeasure> scars,
    List<ScarInBed> scarsInBeds,
    List<BedMeasure> beds,
    List<AreaMeasure> areas,
    List<Patch> patches,
    List<Gap> gaps,
    List<ScarredGrass> scarredGrass,
    Optional<ConnectivityDetail> connectivity) {

  /**
   * The scarred part of a bed, or of a tile of it.
   *
   * @param bedId bed
   * @param geometry union of footprints ∩ surveyed bed
   * @param areaSquareMetres ground area
   */
  public record ScarredGrass(String bedId, Geometry geometry, double areaSquareMetres) {}

  /**
   * Keeps copies of the lists that cannot be changed; of lists whose rows are kept elsewhere, and
   * of patches and gaps, which are made when they are asked for, a view that cannot be changed.
   *
   * @param scars by scar id
   * @param scarsInBeds by scar id, then bed id
   * @param beds by bed id
   * @param areas management areas by id, then the beds outside them, then the whole survey
   * @param patches after scarring, by number; each is made when it is asked for
   * @param gaps by number; each is made when it is asked for
   * @param scarredGrass scarred parts of beds, one geometry a bed that has any, on the analysis
   *     grid; several where a bed with very many scars was cut in tiles
   * @param connectivity patch by patch and scar by scar; empty where there are more patches than
   *     the limit for it
   * @throws NullPointerException if a list is null, or an entry of one that is copied
   */
  public Measurement {
    scars = KeptElsewhere.copyOf(scars);
    scarsInBeds = KeptElsewhere.copyOf(scarsInBeds);
    beds = KeptElsewhere.copyOf(beds);
    areas = List.copyOf(areas);
    patches = patches instanceof KeptElsewhere ? patches : Collections.unmodifiableList(patches);
    gaps = gaps instanceof KeptElsewhere ? gaps : Collections.unmodifiableList(gaps);
    scarredGrass = KeptElsewhere.copyOf(scarredGrass);
  }

  /** {@return the line for the whole survey} */
  public AreaMeasure whole() {
    return areas.get(areas.size() - 1);
  }
}
