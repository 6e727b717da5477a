package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.measure.uncertainty.DrawnArea;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.GroundScale;

/**
 * A bed, or the part of a bed in a management area, with its damage in ground units.
 *
 * <p>One area factor, that at the bed's centre, applies to everything in a bed, so that shares do
 * not depend on the grid and parts add up.
 *
 * @param bed the bed
 * @param geometry the part, on the grid
 * @param surveyed what was looked at of it, on the grid
 * @param scarred its scarred part, on the grid
 * @param grassSquareMetres mapped area
 * @param surveyedSquareMetres mapped area inside the surveyed area
 * @param scarredSquareMetres area of the scarred part
 * @param denominatorSquareMetres what the severity share is taken of
 * @param scars scars in it, by position in the survey
 * @param drawn its scarred area in every draw, where draws are made
 */
record GrassPart(
    Bed bed,
    Geometry geometry,
    Geometry surveyed,
    Geometry scarred,
    double grassSquareMetres,
    double surveyedSquareMetres,
    double scarredSquareMetres,
    double denominatorSquareMetres,
    List<ScarPart> scars,
    Optional<DrawnArea> drawn) {

  /**
   * The part of a scar in it.
   *
   * @param scar position in the survey
   * @param lengthMetres line inside
   * @param footprintSquareMetres footprint inside
   */
  record ScarPart(int scar, double lengthMetres, double footprintSquareMetres) {}

  /** Makes parts; holds what is common to a survey. */
  static final class Maker {
    private static final int TILE_FROM_VERTICES = 600;

    private final List<Footprint> footprints;
    private final FootprintClusters clusters;
    private final SurveyedArea surveyed;
    private final SeverityRule severity;
    private final GroundScale scale;
    private final DamageErrors errors;

    Maker(
        List<Footprint> footprints,
        FootprintClusters clusters,
        SurveyedArea surveyed,
        SeverityRule severity,
        GroundScale scale,
        DamageErrors errors) {
      this.footprints = footprints;
      this.clusters = clusters;
      this.surveyed = surveyed;
      this.severity = severity;
      this.scale = scale;
      this.errors = errors;
    }

    /** The whole of a bed. */
    GrassPart whole(Bed bed, Geometry scarred) {
      List<Integer> candidates = clusters.footprintsNear(bed.geometry().getEnvelopeInternal());
      return make(bed, bed.geometry(), scarred, candidates);
    }

    /** The part of a bed that an overlay with another shape leaves. */
    GrassPart clipped(GrassPart bedPart, Geometry shape, int operation) {
      Geometry part = OverlayNGRobust.overlay(bedPart.geometry, shape, operation);
      Geometry scarred =
          bedPart.scarred.isEmpty()
              ? bedPart.scarred
              : OverlayNGRobust.overlay(bedPart.scarred, shape, operation);
      return drawn(
          make(bedPart.bed, part, scarred, bedPart.scars.stream().map(ScarPart::scar).toList()));
    }

    /** The same part with its draws, where draws are made. */
    GrassPart drawn(GrassPart part) {
      return new GrassPart(
          part.bed,
          part.geometry,
          part.surveyed,
          part.scarred,
          part.grassSquareMetres,
          part.surveyedSquareMetres,
          part.scarredSquareMetres,
          part.denominatorSquareMetres,
          part.scars,
          errors.draw(part.surveyed, areaFactor(part.bed), part.scarredSquareMetres));
    }

    private double areaFactor(Bed bed) {
      Coordinate centre = bed.geometry().getEnvelopeInternal().centre();
      return scale.areaFactor(centre.x, centre.y);
    }

    private GrassPart make(Bed bed, Geometry geometry, Geometry scarred, List<Integer> candidates) {
      double factor = areaFactor(bed);
      Geometry looked = surveyed.part(geometry);
      double surveyedSquareMetres = looked.getArea() / factor;
      return new GrassPart(
          bed,
          geometry,
          looked,
          scarred,
          geometry.getArea() / factor,
          surveyedSquareMetres,
          // Where an overlay had to snap, the part can be a rounding error larger than the whole.
          Math.min(scarred.getArea() / factor, surveyedSquareMetres),
          severity.denominatorSquareMetres(looked, scarred, surveyedSquareMetres, factor),
          scarParts(geometry, factor, candidates),
          Optional.empty());
    }

    private List<ScarPart> scarParts(
        Geometry geometry, double areaFactor, List<Integer> candidates) {
      if (candidates.isEmpty() || geometry.isEmpty()) {
        return List.of();
      }
      PreparedGeometry prepared = PreparedGeometryFactory.prepare(geometry);
      PolygonTiles tiles = null;
      List<ScarPart> parts = new ArrayList<>();
      for (int i : new TreeSet<>(candidates)) {
        Footprint footprint = footprints.get(i);
        if (prepared.contains(footprint.area())) {
          parts.add(
              new ScarPart(
                  i,
                  footprint.line().getLength() / footprint.lengthFactor(),
                  footprint.area().getArea() / areaFactor));
        } else if (prepared.intersects(footprint.area())) {
          if (tiles == null && geometry.getNumPoints() > TILE_FROM_VERTICES) {
            tiles = new PolygonTiles(geometry);
          }
          double length =
              tiles == null
                  ? inside(footprint.line(), geometry).getLength()
                  : tiles.lengthInside(footprint.line());
          double area =
              tiles == null
                  ? inside(footprint.area(), geometry).getArea()
                  : tiles.areaInside(footprint.area());
          if (area > 0 || length > 0) {
            parts.add(new ScarPart(i, length / footprint.lengthFactor(), area / areaFactor));
          }
        }
      }
      return List.copyOf(parts);
    }

    private static Geometry inside(Geometry shape, Geometry geometry) {
      return shape.isEmpty()
          ? shape
          : OverlayNGRobust.overlay(shape, geometry, OverlayNG.INTERSECTION);
    }
  }
}
