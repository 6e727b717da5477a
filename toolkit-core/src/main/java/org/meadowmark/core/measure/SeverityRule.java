package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.Parameters.SeverityDenominator;

/**
 * Severity class of a bed by the share of it that is scarred.
 *
 * <p>Source of the classes: Sargent, Leary, Crewz and Kruer (1995), <i>Scarring of Florida's
 * Seagrasses: Assessment and Management Options</i>, FMRI Technical Report TR-1. What the share is
 * taken of is a choice: the surveyed bed, or the outline drawn around groups of scars, here the
 * convex hull of scarred parts no farther apart than a stated distance, inside the bed.
 */
final class SeverityRule {
  /** Class of a bed that nobody looked at. */
  static final String UNKNOWN = "unknown";

  private final ReferenceTables tables;
  private final Parameters parameters;

  SeverityRule(ReferenceTables tables, Parameters parameters) {
    this.tables = tables;
    this.parameters = parameters;
  }

  /** Name of the denominator, printed with every class. */
  String denominator() {
    return parameters.severityDenominator().key();
  }

  /**
   * What the scarred area of a piece of grass is divided by.
   *
   * @param grass surveyed grass on the grid
   * @param scarred scarred parts of it
   * @param surveyedSquareMetres area of the surveyed grass, on the ground
   * @param areaFactor grid area divided by ground area
   */
  double denominatorSquareMetres(
      Geometry grass, List<Geometry> scarred, double surveyedSquareMetres, double areaFactor) {
    if (parameters.severityDenominator() == SeverityDenominator.BED) {
      return surveyedSquareMetres;
    }
    List<Polygon> parts =
        scarred.stream().flatMap(part -> Scarring.polygonsOf(part).stream()).toList();
    return parts.isEmpty() ? 0 : outlinedGridArea(grass, parts) / areaFactor;
  }

  /** Share that the class is read from; empty where nothing was surveyed. */
  static OptionalDouble share(
      double surveyedSquareMetres, double scarredSquareMetres, double denominatorSquareMetres) {
    if (!(surveyedSquareMetres > 0)) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        scarredSquareMetres > 0 ? Math.min(1, scarredSquareMetres / denominatorSquareMetres) : 0);
  }

  /** Key of the class of a share; {@link #UNKNOWN} where there is no share. */
  String classOf(OptionalDouble share) {
    return share.isEmpty()
        ? UNKNOWN
        : tables.severityOf(share.getAsDouble()).map(SeverityClass::key).orElse(UNKNOWN);
  }

  /** Keys of the classes, lightest first. */
  List<String> classKeys() {
    return tables.severityClasses().stream().map(SeverityClass::key).toList();
  }

  private double outlinedGridArea(Geometry grass, List<Polygon> parts) {
    double distance = parameters.scarGroupDistanceMetres();
    int[] group =
        new PieceGraph.Maker(
                GroundScale.NONE,
                distance,
                Barriers.NONE,
                parameters.connectivityExactPatches(),
                new Sample(parameters.connectivitySources(), parameters.seed()))
            .graph(parts)
            .groups(distance);
    Map<Integer, List<Geometry>> groups = new TreeMap<>();
    for (int i = 0; i < parts.size(); i++) {
      groups.computeIfAbsent(group[i], key -> new ArrayList<>()).add(parts.get(i));
    }
    List<Geometry> outlines = new ArrayList<>();
    for (List<Geometry> members : groups.values()) {
      outlines.add(grass.getFactory().buildGeometry(members).convexHull());
    }
    return OverlayNGRobust.overlay(UnaryUnionOp.union(outlines), grass, OverlayNG.INTERSECTION)
        .getArea();
  }
}
