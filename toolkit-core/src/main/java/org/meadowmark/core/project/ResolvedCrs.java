package org.meadowmark.core.project;

import java.util.Objects;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.Datum;
import org.geotools.referencing.CRS;

/**
 * A horizontal reference system that was looked up.
 *
 * @param crs the system with easting or longitude as its first axis
 * @param northFirst whether coordinates as read have northing or latitude first, so that their
 *     ordinates must change places before {@code crs} applies
 * @param label code or name, for messages
 */
public record ResolvedCrs(CoordinateReferenceSystem crs, boolean northFirst, String label) {
  /**
   * Refuses a system of which a part is missing.
   *
   * @param crs the system with easting or longitude as its first axis
   * @param northFirst whether coordinates as read have northing or latitude first, so that their
   *     ordinates must change places before {@code crs} applies
   * @param label code or name, for messages
   * @throws NullPointerException if anything is null
   */
  public ResolvedCrs {
    Objects.requireNonNull(crs, "crs");
    Objects.requireNonNull(label, "label");
  }

  /** {@return whether coordinates are angles} */
  public boolean isGeographic() {
    return crs instanceof GeographicCRS;
  }

  /** Whether two systems are on the same datum, so that no shift lies between them. */
  boolean hasDatumOf(ResolvedCrs other) {
    return CRS.equalsIgnoreMetadata(datum(), other.datum());
  }

  private Datum datum() {
    return ((SingleCRS) crs).getDatum();
  }
}
