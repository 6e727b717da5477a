package org.meadowmark.core.measure;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.measure.uncertainty.ErrorModel;
import org.meadowmark.core.measure.uncertainty.ScarReach;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.Parameters;

/**
 * How far apart two features may be and still change each other's figures. All distances are on the
 * grid.
 *
 * <ul>
 *   <li>Beds: the largest crossing distance, over which patches are linked, and the tolerance for
 *       slivers, within which beds are one meadow.
 *   <li>Scars: overlapping footprints are united and drawn together, as far as their widths and
 *       positions may err.
 *   <li>A scar and a bed: that, and how far beside a scar grass is looked for.
 * </ul>
 *
 * The nearest other patch has no limit: it is looked for when parts are put together.
 */
public final class InteractionReach {
  /** Grid lengths are at most so many times ground lengths. */
  private static final double LARGEST_FACTOR = 1.1;

  private final Parameters parameters;
  private final ReferenceTables tables;
  private final GroundScale scale;
  private final Optional<ErrorModel> errors;

  /**
   * Creates the reach of a survey.
   *
   * @param parameters crossing distances, tolerance, accuracy of positions
   * @param tables causes of scars
   * @param scale grid-to-ground scale
   */
  public InteractionReach(Parameters parameters, ReferenceTables tables, GroundScale scale) {
    this.parameters = parameters;
    this.tables = tables;
    this.scale = scale;
    this.errors = DamageErrors.model(parameters);
  }

  /** {@return distance within which beds touch, in metres: the tolerance for slivers} */
  public double touchingBeds() {
    return parameters.sliverToleranceMetres();
  }

  /** {@return distance in metres beyond which beds do not change each other's figures} */
  public double betweenBeds() {
    // Joining a meadow may move an outline by the tolerance, on both sides.
    return 2 * parameters.sliverToleranceMetres()
        + LARGEST_FACTOR * (ScopeSummary.reachMetres(parameters) + PieceGraph.EQUAL_METRES);
  }

  /**
   * {@return reach of a scar from its line or outline, in metres; two scars farther apart than
   * theirs together do not change each other's figures}
   *
   * @param scar scar on the grid
   */
  public double ofScar(Scar scar) {
    double factor = factor(scar);
    double half = scar.isLine() ? scar.widthMetres() * factor / 2 : 0;
    double drawn =
        errors
            .map(model -> ScarReach.of(DamageErrors.uncertain(scar, factor, tables), model))
            .orElse(0.0);
    return GapFinder.EDGE_METRES + Math.max(half, drawn);
  }

  /**
   * {@return reach of a scar to beds from its line or outline, in metres; a bed farther away does
   * not change its figures, nor it the bed's}
   *
   * @param scar scar on the grid
   */
  public double toBeds(Scar scar) {
    double half = scar.isLine() ? scar.widthMetres() * factor(scar) / 2 : 0;
    return ofScar(scar) + GapFinder.reach(half);
  }

  /**
   * {@return a box around the footprint of a scar, as it was mapped: without errors of width and
   * position}
   *
   * @param scar scar on the grid
   */
  public Envelope extent(Scar scar) {
    Envelope extent = new Envelope(scar.geometry().getEnvelopeInternal());
    if (scar.isLine()) {
      extent.expandBy(scar.widthMetres() * factor(scar) / 2);
    }
    return extent;
  }

  private double factor(Scar scar) {
    Coordinate middle = scar.geometry().getEnvelopeInternal().centre();
    return scale.lengthFactor(middle.x, middle.y);
  }

  /**
   * {@return most scars near any one meadow with which no meadow of a survey is cut in tiles; with
   * more near one, all are}
   */
  public static int mostScarsOfUntiledMeadow() {
    return Meadows.MOST_SCARS_OF_SMALL;
  }
}
