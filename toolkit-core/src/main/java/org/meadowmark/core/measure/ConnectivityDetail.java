package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;
import org.meadowmark.core.measure.connectivity.JointFillings;

/**
 * Connectivity patch by patch and scar by scar, over the whole survey after scarring.
 *
 * @param crossingMetres distance at which a gap is crossed half the time
 * @param patches what each patch is worth, by number
 * @param scars what filling each scar that makes a gap would restore, by scar
 * @param together what filling several of these scars would restore, by their place in the list;
 *     empty where only the figures are at hand
 */
public record ConnectivityDetail(
    double crossingMetres,
    List<PatchWorth> patches,
    List<ScarFilling> scars,
    Optional<JointFillings> together) {
  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param crossingMetres distance at which a gap is crossed half the time
   * @param patches what each patch is worth, by number
   * @param scars what filling each scar that makes a gap would restore, by scar
   * @param together what filling several of these scars would restore, by their place in the list;
   *     empty where only the figures are at hand
   * @throws NullPointerException if a list or an entry of one is null
   */
  public ConnectivityDetail {
    patches = List.copyOf(patches);
    scars = List.copyOf(scars);
  }

  /**
   * Keeps the figures alone: what several fillings restore together can then not be asked.
   *
   * @param crossingMetres distance at which a gap is crossed half the time
   * @param patches what each patch is worth, by number
   * @param scars what filling each scar that makes a gap would restore, by scar
   * @throws NullPointerException if a list or an entry of one is null
   */
  public ConnectivityDetail(
      double crossingMetres, List<PatchWorth> patches, List<ScarFilling> scars) {
    this(crossingMetres, patches, scars, Optional.empty());
  }
}
