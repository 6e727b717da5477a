package org.meadowmark.core.change.match;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Metres of an earlier scar that are metres of a later one.
 *
 * <p>The two lengths differ where one survey drew the same course with more or fewer bends.
 *
 * @param earlierId scar of the earlier survey
 * @param laterId scar of the later survey
 * @param earlierMetres ground length assigned on the earlier scar
 * @param laterMetres ground length assigned on the later scar
 * @param distanceMetres root mean square distance between the two along the overlap; empty where
 *     one of them is a polygon
 * @param telling whether the link is large enough to class the scars by; the others join scars that
 *     are classed by a larger link each
 */
public record ScarLink(
    String earlierId,
    String laterId,
    double earlierMetres,
    double laterMetres,
    OptionalDouble distanceMetres,
    boolean telling) {
  /**
   * Refuses a link of which a part is missing.
   *
   * @param earlierId scar of the earlier survey
   * @param laterId scar of the later survey
   * @param earlierMetres ground length assigned on the earlier scar
   * @param laterMetres ground length assigned on the later scar
   * @param distanceMetres root mean square distance between the two along the overlap; empty where
   *     one of them is a polygon
   * @param telling whether the link is large enough to class the scars by; the others join scars
   *     that are classed by a larger link each
   * @throws NullPointerException if anything is null
   */
  public ScarLink {
    Objects.requireNonNull(earlierId, "earlierId");
    Objects.requireNonNull(laterId, "laterId");
    Objects.requireNonNull(distanceMetres, "distanceMetres");
  }
}
