package org.meadowmark.core.project;

import java.util.Objects;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;

/**
 * A horizontal reference system that was looked up.
 *
 * @param crs the system with easting or longitude as its first axis
 * @param northFirst whether coordinates as read have northing or latitude first, so that their
 *     ordinates must change places before {@code crs} applies
 * @param label code or name, for messages
 */
public record ResolvedCrs(CoordinateReferenceSystem crs, boolean northFirst, String label) {
  public ResolvedCrs {
    Objects.requireNonNull(crs, "crs");
    Objects.requireNonNull(label, "label");
  }

  /** Whether coordinates are angles. */
  public boolean isGeographic() {
    return crs instanceof GeographicCRS;
  }
}
