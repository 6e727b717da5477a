package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.measure.uncertainty.DamageInterval;
import org.meadowmark.core.measure.uncertainty.DamageSimulator;
import org.meadowmark.core.measure.uncertainty.DrawnArea;
import org.meadowmark.core.measure.uncertainty.ErrorModel;
import org.meadowmark.core.measure.uncertainty.IntervalMaker;
import org.meadowmark.core.measure.uncertainty.UncertainScar;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.survey.Parameters;

/**
 * Intervals of the damage of a survey, where draws are asked for.
 *
 * <p>A measured width errs by itself. A width taken from the default of its cause errs together
 * with all others of that cause: what is wrong with a default is wrong for every scar that it
 * stands for. The spread of both is the cause's coefficient of variation.
 */
final class DamageErrors {
  private final Optional<DamageSimulator> simulator;
  private final SeverityRule severity;

  private DamageErrors(Optional<DamageSimulator> simulator, SeverityRule severity) {
    this.simulator = simulator;
    this.severity = severity;
  }

  static DamageErrors of(
      List<Footprint> footprints,
      Parameters parameters,
      ReferenceTables tables,
      SeverityRule severity) {
    Optional<ErrorModel> model = model(parameters);
    if (model.isEmpty()) {
      return new DamageErrors(Optional.empty(), severity);
    }
    List<UncertainScar> scars =
        footprints.stream().map(footprint -> uncertain(footprint, tables)).toList();
    return new DamageErrors(Optional.of(new DamageSimulator(scars, model.get())), severity);
  }

  private static UncertainScar uncertain(Footprint footprint, ReferenceTables tables) {
    return uncertain(footprint.scar(), footprint.lengthFactor(), tables);
  }

  /** A scar with its errors. */
  static UncertainScar uncertain(Scar scar, double lengthFactor, ReferenceTables tables) {
    ScarCause cause = tables.causes().get(scar.cause());
    if (scar.isLine() && cause == null) {
      throw new IllegalArgumentException("no scar cause '" + scar.cause() + "'");
    }
    return new UncertainScar(
        scar.id(),
        scar.geometry(),
        scar.isLine() ? scar.widthMetres() * lengthFactor : 0,
        lengthFactor,
        scar.isLine() ? cause.widthVariation() : 0,
        scar.widthSource() == WidthSource.CAUSE_DEFAULT
            ? Optional.of(scar.cause())
            : Optional.empty());
  }

  boolean drawn() {
    return simulator.isPresent();
  }

  /** Draws of the scarred area of a piece of grass. */
  Optional<DrawnArea> draw(Geometry surveyedGrass, double areaFactor, double scarredSquareMetres) {
    return simulator.map(s -> s.draw(surveyedGrass, areaFactor, scarredSquareMetres));
  }

  /** The interval of pieces together; empty where nothing was drawn or surveyed. */
  Optional<DamageInterval> interval(
      List<GrassPart> parts, double surveyedSquareMetres, double denominatorSquareMetres) {
    return simulator.flatMap(
        s ->
            interval(
                s.model(),
                severity,
                parts.stream().map(part -> part.drawn().orElseThrow()).toList(),
                surveyedSquareMetres,
                denominatorSquareMetres));
  }

  /**
   * The interval of drawn areas together; empty where nothing was surveyed.
   *
   * <p>A severity class that is taken of outlines around scar groups keeps the measured outlines;
   * where none was measured it is taken of the surveyed area.
   */
  static Optional<DamageInterval> interval(
      ErrorModel model,
      SeverityRule severity,
      List<DrawnArea> drawn,
      double surveyedSquareMetres,
      double denominatorSquareMetres) {
    double denominator =
        denominatorSquareMetres > 0 ? denominatorSquareMetres : surveyedSquareMetres;
    return new IntervalMaker(model, severity.classKeys())
        .of(
            drawn,
            surveyedSquareMetres,
            area ->
                severity.classOf(SeverityRule.share(surveyedSquareMetres, area, denominator)));
  }

  /** What is drawn; empty where no draw is asked for. */
  static Optional<ErrorModel> model(Parameters parameters) {
    return parameters.uncertaintyDraws() == 0
        ? Optional.empty()
        : Optional.of(
            new ErrorModel(
                parameters.uncertaintyDraws(), parameters.seed(), parameters.position()));
  }
}
