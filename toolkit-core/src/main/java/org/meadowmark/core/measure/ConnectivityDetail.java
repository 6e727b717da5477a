package org.meadowmark.core.measure;

import java.util.List;

/**
 * Connectivity patch by patch and scar by scar, over the whole survey after scarring.
 *
 * @param crossingMetres distance at which a gap is crossed half the time
 * @param patches what each patch is worth, by number
 * @param scars what filling each scar that makes a gap would restore, by scar
 */
public record ConnectivityDetail(
    double crossingMetres, List<PatchWorth> patches, List<ScarFilling> scars) {
  public ConnectivityDetail {
    patches = List.copyOf(patches);
    scars = List.copyOf(scars);
  }
}
