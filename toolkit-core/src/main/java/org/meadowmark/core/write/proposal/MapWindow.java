package org.meadowmark.core.write.proposal;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * A rectangle of the grid and the rectangle of the page that shows it, grid north up.
 *
 * @param grid in metres of the grid, in the shape of the page's rectangle
 * @param left left side on the page, in units of the drawing
 * @param top upper side on the page
 * @param width width on the page
 * @param height height on the page
 */
record MapWindow(Envelope grid, double left, double top, double width, double height) {

  /**
   * The smallest window in the shape of a page rectangle around what must be seen.
   *
   * @param core what must be seen; empty for nothing
   * @param marginShare space on each side, in parts of the longer side of the core
   * @param leastMetres shortest side of the window
   */
  static MapWindow around(
      Envelope core,
      double marginShare,
      double leastMetres,
      double left,
      double top,
      double width,
      double height) {
    Coordinate middle = core.isNull() ? new Coordinate(0, 0) : core.centre();
    double margin = 2 * marginShare * Math.max(core.getWidth(), core.getHeight());
    double wide = Math.max(core.getWidth() + margin, leastMetres);
    double high = Math.max(core.getHeight() + margin, leastMetres);
    double metresPerUnit = Math.max(wide / width, high / height);
    double halfWide = metresPerUnit * width / 2;
    double halfHigh = metresPerUnit * height / 2;
    return new MapWindow(
        new Envelope(
            middle.x - halfWide, middle.x + halfWide, middle.y - halfHigh, middle.y + halfHigh),
        left,
        top,
        width,
        height);
  }

  /** Metres of the grid in a unit of the drawing. */
  double metresPerUnit() {
    return grid.getWidth() / width;
  }

  /** Place on the page of an easting. */
  double x(double easting) {
    return left + (easting - grid.getMinX()) / metresPerUnit();
  }

  /** Place on the page of a northing. */
  double y(double northing) {
    return top + (grid.getMaxY() - northing) / metresPerUnit();
  }

  double right() {
    return left + width;
  }

  double bottom() {
    return top + height;
  }
}
