package org.meadowmark.core.change.bed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.change.CombinedAccuracy;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.measure.PolygonTiles;
import org.meadowmark.core.measure.ScarOutline;
import org.meadowmark.core.measure.StrTreeQuery;
import org.meadowmark.core.measure.SurveyedArea;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;

/**
 * Lays the bed layers of two surveys over each other.
 *
 * <p>What an earlier bed has and no later bed covers is lost; what a later bed has and no earlier
 * one covers is gained; only inside both surveyed areas. A piece is <i>within positional
 * accuracy</i> where it is narrower than the combined accuracy T of the two surveys: it vanishes
 * when the piece is shrunk by T/2 and grown again (an opening, as in Serra 1982, <i>Image Analysis
 * and Mathematical Morphology</i>, from memory; grown by ¾T, so that right corners are not cut
 * off). Loss is <i>explained by scars</i> where it lies on footprints of scars of the later survey,
 * widened by T. A bed layer that is drawn around its scars as if they were grass shows no such
 * loss.
 *
 * <p>Neighbours are found with an index of boxes; time grows with the vertices of beds that lie
 * over each other.
 */
public final class BedComparer {
  /** More than √2, by which the corner of a square is farther from its middle than a side. */
  private static final double GROWN = 1.5;

  private final MetricSurvey before;
  private final MetricSurvey after;
  private final SurveyedArea beforeArea;
  private final SurveyedArea afterArea;
  private final GroundScale scale;
  private final double tolerance;
  private final List<Scar> scars;
  private final STRtree scarTree;
  private final List<MapArea> areas;
  private final List<PolygonTiles> areaTiles;

  /** Part of a bed's change with its place, in grid metres. */
  private record Piece(Kind kind, Geometry shape) {}

  private enum Kind {
    EARLIER,
    LATER,
    LOST_TO_SCARS,
    LOST_OTHERWISE,
    LOST_WITHIN_ACCURACY,
    GAINED_CLEARLY,
    GAINED_WITHIN_ACCURACY
  }

  /** A bed with its change, and the same by management area. */
  private record Compared(BedChange bed, List<GrassChange> areas) {}

  private BedComparer(MetricSurvey before, MetricSurvey after, double toleranceMetres) {
    this.before = before;
    this.after = after;
    this.tolerance = toleranceMetres;
    this.scale = after.scale();
    this.beforeArea = new SurveyedArea(before.surveyedArea());
    this.afterArea = new SurveyedArea(after.surveyedArea());
    this.scars = ordered(after.scars());
    this.scarTree = reaches(scars);
    this.areas = ordered(after.managementAreas());
    this.areaTiles = areas.stream().map(area -> new PolygonTiles(area.geometry())).toList();
  }

  /**
   * Compares the beds of two surveys on one grid.
   *
   * @param earlier the earlier survey
   * @param later the later survey, whose management areas count
   * @param leastToleranceMetres what the combined positional accuracy is taken as at least
   * @param progress hears one step for each bed
   * @return the grass lost and gained, by bed, by area and as a whole
   * @throws IllegalArgumentException if the surveys lie on different grids, or the first is not the
   *     earlier one
   */
  public static SeasonBedChange compare(
      SeasonSurvey earlier, SeasonSurvey later, double leastToleranceMetres, Progress progress) {
    if (!earlier.survey().gridLabel().equals(later.survey().gridLabel())) {
      throw new IllegalArgumentException("surveys on different grids");
    }
    if (!earlier.date().isBefore(later.date())) {
      throw new IllegalArgumentException(
          "not the earlier survey: " + earlier.date() + ", " + later.date());
    }
    double tolerance =
        CombinedAccuracy.toleranceMetres(
            earlier.accuracy(), later.accuracy(), leastToleranceMetres);
    List<Compared> compared =
        new BedComparer(earlier.survey(), later.survey(), tolerance).run(progress);
    List<MapArea> areas = ordered(later.survey().managementAreas());
    return new SeasonBedChange(
        earlier.date(),
        later.date(),
        tolerance,
        compared.stream().map(Compared::bed).toList(),
        IntStream.range(0, areas.size())
            .mapToObj(
                i ->
                    new AreaChange(
                        areas.get(i).id(),
                        areas.get(i).label(),
                        sum(compared.stream().map(bed -> bed.areas.get(i)).toList())))
            .toList(),
        sum(compared.stream().map(bed -> bed.bed.change()).toList()));
  }

  private static GrassChange sum(List<GrassChange> changes) {
    GrassChange sum = GrassChange.NONE;
    for (GrassChange change : changes) {
      sum = sum.plus(change);
    }
    return sum;
  }

  private List<Compared> run(Progress progress) {
    List<Bed> old = ordered(before.beds());
    List<Bed> young = ordered(after.beds());
    List<Geometry> oldShapes = compared(old);
    List<Geometry> youngShapes = compared(young);
    STRtree oldTree = boxes(oldShapes);
    STRtree youngTree = boxes(youngShapes);
    progress.begin("comparing beds", old.size() + (long) young.size());
    List<Compared> all = new ArrayList<>();
    all.addAll(
        IntStream.range(0, old.size())
            .parallel()
            .mapToObj(
                i -> {
                  Compared bed =
                      bed(
                          old.get(i),
                          true,
                          oldShapes.get(i),
                          lost(oldShapes.get(i), youngShapes, youngTree));
                  progress.advance(1);
                  return bed;
                })
            .toList());
    all.addAll(
        IntStream.range(0, young.size())
            .parallel()
            .mapToObj(
                i -> {
                  Compared bed =
                      bed(
                          young.get(i),
                          false,
                          youngShapes.get(i),
                          gained(youngShapes.get(i), oldShapes, oldTree));
                  progress.advance(1);
                  return bed;
                })
            .toList());
    progress.end();
    return all;
  }

  private List<Geometry> compared(List<Bed> beds) {
    return beds.parallelStream()
        .map(bed -> afterArea.part(beforeArea.part(bed.geometry())))
        .toList();
  }

  private List<Piece> lost(Geometry bed, List<Geometry> others, STRtree tree) {
    List<Piece> pieces = new ArrayList<>();
    for (Geometry piece : polygons(uncovered(bed, others, tree))) {
      Geometry wide = wide(piece);
      Geometry footprints = footprints(piece);
      pieces.add(new Piece(Kind.LOST_TO_SCARS, common(piece, footprints)));
      pieces.add(new Piece(Kind.LOST_OTHERWISE, without(wide, footprints)));
      pieces.add(new Piece(Kind.LOST_WITHIN_ACCURACY, without(without(piece, wide), footprints)));
    }
    return pieces;
  }

  private List<Piece> gained(Geometry bed, List<Geometry> others, STRtree tree) {
    List<Piece> pieces = new ArrayList<>();
    for (Geometry piece : polygons(uncovered(bed, others, tree))) {
      Geometry wide = wide(piece);
      pieces.add(new Piece(Kind.GAINED_CLEARLY, wide));
      pieces.add(new Piece(Kind.GAINED_WITHIN_ACCURACY, without(piece, wide)));
    }
    return pieces;
  }

  private static Geometry uncovered(Geometry bed, List<Geometry> others, STRtree tree) {
    if (bed.isEmpty()) {
      return bed;
    }
    List<Integer> near = StrTreeQuery.items(tree, bed.getEnvelopeInternal());
    if (near.isEmpty()) {
      return bed;
    }
    PreparedGeometry prepared = PreparedGeometryFactory.prepare(bed);
    List<Geometry> covers =
        near.stream().sorted().map(others::get).filter(prepared::intersects).toList();
    return covers.isEmpty() ? bed : without(bed, UnaryUnionOp.union(covers));
  }

  /** The part of a piece that is as wide as the tolerance. */
  private Geometry wide(Geometry piece) {
    double half = tolerance * lengthFactor(piece) / 2;
    Geometry core = piece.buffer(-half);
    return core.isEmpty() ? core : common(piece, core.buffer(GROWN * half));
  }

  /** Footprints of scars near a piece, widened by the tolerance, as one shape. */
  private Geometry footprints(Geometry piece) {
    double factor = lengthFactor(piece);
    List<Integer> near = StrTreeQuery.items(scarTree, piece.getEnvelopeInternal());
    List<Geometry> shapes =
        near.stream()
            .sorted()
            .map(i -> ScarOutline.of(scars.get(i), factor).buffer(tolerance * factor))
            .toList();
    return shapes.isEmpty() ? piece.getFactory().createPolygon() : UnaryUnionOp.union(shapes);
  }

  private Compared bed(Bed bed, boolean isEarlier, Geometry inside, List<Piece> pieces) {
    List<Piece> all = new ArrayList<>(pieces);
    all.add(new Piece(isEarlier ? Kind.EARLIER : Kind.LATER, inside));
    double[] whole = new double[Kind.values().length];
    double[][] byArea = new double[areas.size()][whole.length];
    for (Piece piece : all) {
      if (piece.shape.isEmpty()) {
        continue;
      }
      double factor = areaFactor(piece.shape);
      whole[piece.kind.ordinal()] += piece.shape.getArea() / factor;
      for (int i = 0; i < byArea.length; i++) {
        byArea[i][piece.kind.ordinal()] += areaTiles.get(i).areaInside(piece.shape) / factor;
      }
    }
    double area = bed.geometry().getArea() / areaFactor(bed.geometry());
    double outside =
        inside == bed.geometry()
            ? 0
            : Math.max(0, bed.geometry().getArea() - inside.getArea()) / areaFactor(bed.geometry());
    return new Compared(
        new BedChange(bed.id(), isEarlier, area, outside, change(whole)),
        IntStream.range(0, byArea.length).mapToObj(i -> change(byArea[i])).toList());
  }

  private static GrassChange change(double[] byKind) {
    return new GrassChange(
        byKind[Kind.EARLIER.ordinal()],
        byKind[Kind.LATER.ordinal()],
        byKind[Kind.LOST_TO_SCARS.ordinal()],
        byKind[Kind.LOST_OTHERWISE.ordinal()],
        byKind[Kind.LOST_WITHIN_ACCURACY.ordinal()],
        byKind[Kind.GAINED_CLEARLY.ordinal()],
        byKind[Kind.GAINED_WITHIN_ACCURACY.ordinal()]);
  }

  private double lengthFactor(Geometry shape) {
    var middle = shape.getEnvelopeInternal().centre();
    return scale.lengthFactor(middle.x, middle.y);
  }

  private double areaFactor(Geometry shape) {
    var middle = shape.getEnvelopeInternal().centre();
    return scale.areaFactor(middle.x, middle.y);
  }

  private static Geometry common(Geometry one, Geometry other) {
    return OverlayNGRobust.overlay(one, other, OverlayNG.INTERSECTION);
  }

  private static Geometry without(Geometry one, Geometry other) {
    return other.isEmpty() ? one : OverlayNGRobust.overlay(one, other, OverlayNG.DIFFERENCE);
  }

  private static List<Geometry> polygons(Geometry shape) {
    List<Geometry> polygons = new ArrayList<>();
    for (int i = 0; i < shape.getNumGeometries(); i++) {
      if (shape.getGeometryN(i).getDimension() == 2 && !shape.getGeometryN(i).isEmpty()) {
        polygons.add(shape.getGeometryN(i));
      }
    }
    return polygons;
  }

  private static <T extends Located> List<T> ordered(List<T> features) {
    return features.stream().sorted(Comparator.comparing(Located::id, Ids.ORDER)).toList();
  }

  private STRtree reaches(List<Scar> lines) {
    STRtree tree = new STRtree();
    for (int i = 0; i < lines.size(); i++) {
      var box = lines.get(i).geometry().getEnvelopeInternal().copy();
      // Wide enough on any grid whose scale is within a factor of two.
      box.expandBy(2 * (lines.get(i).widthMetres() / 2 + tolerance));
      tree.insert(box, i);
    }
    tree.build();
    return tree;
  }

  private static STRtree boxes(List<Geometry> shapes) {
    STRtree tree = new STRtree();
    for (int i = 0; i < shapes.size(); i++) {
      if (!shapes.get(i).isEmpty()) {
        tree.insert(shapes.get(i).getEnvelopeInternal(), i);
      }
    }
    tree.build();
    return tree;
  }
}
