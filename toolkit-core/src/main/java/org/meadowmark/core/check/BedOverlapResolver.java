package org.meadowmark.core.check;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;

/**
 * Gives ground that two beds claim to the bed that comes first in {@link
 * org.meadowmark.core.model.Ids#ORDER}, and lists gaps and overlaps that are digitising slivers.
 *
 * <p>An overlap is a sliver where its mean width, twice its area over its outline, is less than the
 * sliver tolerance; it is resolved all the same. A gap is listed where two beds do not touch and
 * are closer than the tolerance. Gaps between beds that touch elsewhere are not looked for: the
 * measuring stage closes them with the same tolerance.
 *
 * <p>Each bed is cut against the beds before it as they were read, which gives the same result as
 * cutting in turn and lets beds be cut in parallel. Time O(n log n) in beds for a bounded number of
 * neighbours.
 */
final class BedOverlapResolver {
  private record Outcome(List<Bed> kept, List<Finding> findings) {}

  private final List<Bed> beds;
  private final GeometryIndex index;
  private final double toleranceMetres;

  /**
   * Takes the beds.
   *
   * @param beds in id order
   * @param index their geometries
   * @param toleranceMetres width of a sliver
   */
  BedOverlapResolver(List<Bed> beds, GeometryIndex index, double toleranceMetres) {
    this.beds = beds;
    this.index = index;
    this.toleranceMetres = toleranceMetres;
  }

  /** Beds that do not overlap, in id order; those with nothing left are gone. */
  List<Bed> resolve(FindingLog log) {
    List<Outcome> outcomes =
        IntStream.range(0, beds.size()).parallel().mapToObj(this::cut).toList();
    List<Bed> kept = new ArrayList<>(beds.size());
    for (Outcome outcome : outcomes) {
      kept.addAll(outcome.kept());
      log.addAll(outcome.findings());
    }
    return kept;
  }

  private Outcome cut(int place) {
    Bed bed = beds.get(place);
    Geometry whole = bed.geometry();
    Geometry rest = whole;
    List<Finding> findings = new ArrayList<>();
    int[] earlier = index.near(whole, toleranceMetres).filter(i -> i < place).toArray();
    for (int i : earlier) {
      Bed other = beds.get(i);
      if (!index.get(place).intersects(other.geometry())) {
        index
            .distanceWithin(place, i, toleranceMetres)
            .ifPresent(gap -> findings.add(gapFinding(bed, other, gap)));
        continue;
      }
      Geometry overlap = overlay(whole, other.geometry(), OverlayNG.INTERSECTION);
      if (overlap.getArea() > 0) {
        Geometry left = overlay(rest, other.geometry(), OverlayNG.DIFFERENCE);
        findings.add(overlapFinding(bed, other, overlap, left.getArea() > 0));
        rest = left;
        if (rest.isEmpty()) {
          return new Outcome(List.of(), findings);
        }
      }
    }
    return new Outcome(List.of(rest == whole ? bed : bed.withGeometry(rest)), findings);
  }

  /** Overlays and keeps what has area: beds that share an edge meet in lines and points. */
  private static Geometry overlay(Geometry one, Geometry other, int operation) {
    Geometry result = OverlayNGRobust.overlay(one, other, operation);
    if (result.getDimension() == 2 && !result.getGeometryType().equals("GeometryCollection")) {
      return result;
    }
    List<Polygon> polygons = new ArrayList<>();
    for (int i = 0; i < result.getNumGeometries(); i++) {
      if (result.getGeometryN(i) instanceof Polygon polygon) {
        polygons.add(polygon);
      }
    }
    return polygons.isEmpty()
        ? one.getFactory().createPolygon()
        : one.getFactory().buildGeometry(polygons);
  }

  private Finding overlapFinding(Bed bed, Bed other, Geometry overlap, boolean somethingLeft) {
    double area = overlap.getArea();
    boolean sliver = 2 * area / overlap.getLength() < toleranceMetres;
    String problem =
        (sliver ? "overlaps, as a sliver, bed " : "overlaps bed ")
            + other.id()
            + " by "
            + Figures.squareMetres(area);
    return new Finding(
        sliver ? FindingCode.BED_SLIVER : FindingCode.BED_OVERLAP,
        sliver ? Level.NOTE : Level.WARNING,
        somethingLeft ? Treatment.REPAIRED : Treatment.SKIPPED,
        LayerRole.BEDS,
        bed.ref(),
        problem,
        somethingLeft
            ? "the overlap goes to bed " + other.id() + ", whose id comes first"
            : "nothing is left of the bed; it is left out");
  }

  private static Finding gapFinding(Bed bed, Bed other, double gap) {
    return new Finding(
        FindingCode.BED_SLIVER,
        Level.NOTE,
        Treatment.KEPT,
        LayerRole.BEDS,
        bed.ref(),
        "a gap of " + Figures.metres(gap) + " to bed " + other.id(),
        "used as it is; the two count as touching");
  }
}
