package org.meadowmark.core.measure;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
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
 * @param scarred its scarred parts, on the grid; more than one where the bed was cut in tiles
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
    List<Geometry> scarred,
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

  /** Length of scars in it, each by itself. */
  double scarLengthMetres() {
    return scars.stream().mapToDouble(ScarPart::lengthMetres).reduce(0, Double::sum);
  }

  /** Makes parts; holds what is common to a survey. */
  static final class Maker {
    private static final int TILE_FROM_VERTICES = 600;

    private final List<Footprint> footprints;
    private final STRtree footprintIndex;
    private final SurveyedArea surveyed;
    private final SeverityRule severity;
    private final GroundScale scale;
    private final DamageErrors errors;

    Maker(
        List<Footprint> footprints,
        STRtree footprintIndex,
        SurveyedArea surveyed,
        SeverityRule severity,
        GroundScale scale,
        DamageErrors errors) {
      this.footprints = footprints;
      this.footprintIndex = footprintIndex;
      this.surveyed = surveyed;
      this.severity = severity;
      this.scale = scale;
      this.errors = errors;
    }

    /** The whole of a bed. */
    GrassPart whole(Bed bed, List<Geometry> scarred) {
      List<Integer> candidates =
          StrTreeQuery.items(footprintIndex, bed.geometry().getEnvelopeInternal());
      return make(bed, bed.geometry(), scarred, candidates);
    }

    /** The part of a bed that an overlay with another shape leaves. */
    GrassPart clipped(GrassPart bedPart, PreparedGeometry shape, int operation) {
      Geometry part = OverlayNGRobust.overlay(bedPart.geometry, shape.getGeometry(), operation);
      List<Geometry> scarred =
          bedPart.scarred.size() == 1
              ? List.of(clip(bedPart.scarred.get(0), shape.getGeometry(), operation))
              : clipped(bedPart.scarred, shape, operation);
      return drawn(
          make(bedPart.bed, part, scarred, bedPart.scars.stream().map(ScarPart::scar).toList()));
    }

    private static List<Geometry> clipped(
        List<Geometry> tiles, PreparedGeometry shape, int operation) {
      boolean inside = operation == OverlayNG.INTERSECTION;
      return tiles.parallelStream()
          .flatMap(
              tile -> {
                if (!shape.intersects(tile)) {
                  return inside ? Stream.empty() : Stream.of(tile);
                }
                if (shape.contains(tile)) {
                  return inside ? Stream.of(tile) : Stream.empty();
                }
                return Stream.of(clip(tile, shape.getGeometry(), operation));
              })
          .toList();
    }

    private static Geometry clip(Geometry piece, Geometry shape, int operation) {
      return piece.isEmpty() ? piece : OverlayNGRobust.overlay(piece, shape, operation);
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

    private GrassPart make(
        Bed bed, Geometry geometry, List<Geometry> scarred, List<Integer> candidates) {
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
          Math.min(scarredGridArea(scarred) / factor, surveyedSquareMetres),
          severity.denominatorSquareMetres(looked, scarred, surveyedSquareMetres, factor),
          scarParts(geometry, factor, candidates),
          Optional.empty());
    }

    private static double scarredGridArea(List<Geometry> scarred) {
      return scarred.stream().mapToDouble(Geometry::getArea).sum();
    }

    private List<ScarPart> scarParts(
        Geometry geometry, double areaFactor, List<Integer> candidates) {
      if (candidates.isEmpty() || geometry.isEmpty()) {
        return List.of();
      }
      PreparedGeometry prepared = PreparedGeometryFactory.prepare(geometry);
      Optional<PolygonTiles> tiles =
          geometry.getNumPoints() > TILE_FROM_VERTICES
                  && candidates.parallelStream()
                      .map(i -> footprints.get(i).area())
                      .anyMatch(area -> prepared.intersects(area) && !prepared.contains(area))
              ? Optional.of(new PolygonTiles(geometry))
              : Optional.empty();
      return candidates.stream().sorted().toList().parallelStream()
          .map(i -> scarPart(footprints.get(i), geometry, prepared, tiles, areaFactor))
          .filter(Objects::nonNull)
          .toList();
    }

    private static ScarPart scarPart(
        Footprint footprint,
        Geometry geometry,
        PreparedGeometry prepared,
        Optional<PolygonTiles> tiles,
        double areaFactor) {
      Geometry area = footprint.area();
      if (prepared.contains(area)) {
        return new ScarPart(
            footprint.index(),
            footprint.line().getLength() / footprint.lengthFactor(),
            area.getArea() / areaFactor);
      }
      if (!prepared.intersects(area)) {
        return null;
      }
      double length =
          tiles.isEmpty()
              ? clip(footprint.line(), geometry, OverlayNG.INTERSECTION).getLength()
              : tiles.get().lengthInside(footprint.line());
      double covered =
          tiles.isEmpty()
              ? clip(area, geometry, OverlayNG.INTERSECTION).getArea()
              : tiles.get().areaInside(area);
      return covered > 0 || length > 0
          ? new ScarPart(footprint.index(), length / footprint.lengthFactor(), covered / areaFactor)
          : null;
    }
  }
}
