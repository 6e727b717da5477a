package org.meadowmark.core.change.bed;

import java.util.Objects;

/**
 * How the grass of a management area of the later survey changed.
 *
 * @param areaId the area
 * @param name its name, or its id where it has none
 * @param change the change inside it
 */
public record AreaChange(String areaId, String name, GrassChange change) {
  /**
   * Refuses a change of which a part is missing.
   *
   * @param areaId the area
   * @param name its name, or its id where it has none
   * @param change the change inside it
   * @throws NullPointerException if anything is null
   */
  public AreaChange {
    Objects.requireNonNull(areaId, "areaId");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(change, "change");
  }
}
