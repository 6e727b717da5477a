package org.meadowmark.core.measure;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.RandomAccess;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.survey.Parameters;

/** Patches and gaps of the whole survey, touching beds joined. */
final class PatchMap {
  private final ScopeSummary before;
  private final ScopeSummary after;
  private final List<Patch> patches;
  private final GapColumns gaps;
  private final Origins origins;

  private PatchMap(
      ScopeSummary before,
      ScopeSummary after,
      List<Patch> patches,
      GapColumns gaps,
      Origins origins) {
    this.before = before;
    this.after = after;
    this.patches = patches;
    this.gaps = gaps;
    this.origins = origins;
  }

  /**
   * Meadow of each piece, by its position.
   *
   * @param patchesBefore of each patch before scarring
   * @param crumbsBefore of each crumb before scarring
   * @param patchesAfter of each patch after it
   * @param crumbsAfter of each crumb after it
   * @param nearestBefore nearest other of each patch before scarring, null for the only one
   * @param nearestAfter the same after it
   */
  record Origins(
      int[] patchesBefore,
      int[] crumbsBefore,
      int[] patchesAfter,
      int[] crumbsAfter,
      PieceGraph.Nearest[] nearestBefore,
      PieceGraph.Nearest[] nearestAfter) {}

  static PatchMap of(
      MetricSurvey survey,
      Parameters parameters,
      List<MeasuredGrass> meadows,
      PieceGraph.Maker graphsBefore,
      PieceGraph.Maker graphsAfter) {
    double minimum = parameters.minimumPatchSquareMetres();
    List<Polygon> wholeBefore = new ArrayList<>();
    List<Placed> placed = new ArrayList<>();
    List<Polygon> crumbs = new ArrayList<>();
    List<GapColumns.Part> gaps = new ArrayList<>();
    List<Integer> patchesBefore = new ArrayList<>();
    List<Integer> crumbsBefore = new ArrayList<>();
    List<Integer> crumbsAfter = new ArrayList<>();
    for (int m = 0; m < meadows.size(); m++) {
      MeasuredGrass meadow = meadows.get(m);
      List<Polygon> polygons = Scarring.polygonsOf(meadow.group().geometry());
      for (Polygon polygon : polygons) {
        (Pieces.counts(polygon, minimum) ? patchesBefore : crumbsBefore).add(m);
      }
      wholeBefore.addAll(polygons);
      crumbsAfter.addAll(Collections.nCopies(meadow.after().crumbs().size(), m));
      for (int i = 0; i < meadow.after().patches().size(); i++) {
        placed.add(new Placed(meadow.after().patches().get(i), meadow.bedIds().get(i), m, i));
      }
      crumbs.addAll(meadow.after().crumbs());
      gaps.add(new GapColumns.Part(meadow.gaps(), new int[meadow.after().patches().size()]));
    }
    placed.sort(Placed.ORDER);
    for (int i = 0; i < placed.size(); i++) {
      gaps.get(placed.get(i).meadow).numbers()[placed.get(i).piece] = i;
    }
    Pieces piecesBefore = Pieces.of(wholeBefore, minimum);
    Pieces piecesAfter = new Pieces(placed.stream().map(Placed::polygon).toList(), crumbs);
    PieceGraph graphBefore = graphsBefore.graph(piecesBefore.patches());
    PieceGraph.Nearest[] nearestBefore = graphBefore.nearest();
    ScopeSummary before =
        new ScopeSummary(
            piecesBefore,
            PatchFigures.of(piecesBefore, survey.scale(), nearestBefore),
            graphBefore);
    PieceGraph graph = graphsAfter.graph(piecesAfter.patches());
    PieceGraph.Nearest[] nearest = graph.nearest();
    ScopeSummary after =
        new ScopeSummary(piecesAfter, PatchFigures.of(piecesAfter, survey.scale(), nearest), graph);
    return new PatchMap(
        before,
        after,
        new Described(
            after,
            placed.stream().map(Placed::bedIds).toList(),
            nearest,
            graph.groups(parameters.crossingDistanceMetres())),
        GapColumns.of(gaps, survey.scars().size()),
        new Origins(
            positions(patchesBefore),
            positions(crumbsBefore),
            placed.stream().mapToInt(Placed::meadow).toArray(),
            positions(crumbsAfter),
            nearestBefore,
            nearest));
  }

  private static int[] positions(List<Integer> values) {
    return values.stream().mapToInt(Integer::intValue).toArray();
  }

  private record Placed(Polygon polygon, List<String> bedIds, int meadow, int piece) {
    static final Comparator<Placed> ORDER =
        Comparator.comparingDouble((Placed p) -> p.polygon.getEnvelopeInternal().getMinX())
            .thenComparingDouble(p -> p.polygon.getEnvelopeInternal().getMinY())
            .thenComparingDouble(p -> p.polygon.getEnvelopeInternal().getMaxX())
            .thenComparingDouble(p -> p.polygon.getEnvelopeInternal().getMaxY())
            .thenComparingDouble(p -> p.polygon.getArea());
  }

  /** Patches as records, each made when it is asked for: a survey can have millions. */
  private static final class Described extends AbstractList<Patch> implements RandomAccess {
    private final ScopeSummary after;
    private final List<List<String>> bedIds;
    private final PieceGraph.Nearest[] nearest;
    private final int[] groups;

    Described(
        ScopeSummary after, List<List<String>> bedIds, PieceGraph.Nearest[] nearest, int[] groups) {
      this.after = after;
      this.bedIds = bedIds;
      this.nearest = nearest;
      this.groups = groups;
    }

    @Override
    public int size() {
      return groups.length;
    }

    @Override
    public Patch get(int i) {
      return patch(
          i,
          after.pieces().patches().get(i),
          bedIds.get(i),
          after.figures(),
          Optional.ofNullable(nearest[i]),
          groups[i]);
    }
  }

  /**
   * A patch as a record.
   *
   * @param position its position among the patches
   * @param geometry its outline
   * @param bedIds beds that it is part of
   * @param figures those of all patches
   * @param nearest the nearest other one
   * @param group number of its group
   */
  static Patch patch(
      int position,
      Polygon geometry,
      List<String> bedIds,
      PatchFigures figures,
      Optional<PieceGraph.Nearest> nearest,
      int group) {
    double area = figures.squareMetres()[position];
    double perimeter = figures.perimeterMetres()[position];
    return new Patch(
        patchId(position),
        geometry,
        bedIds,
        area,
        perimeter,
        PatchStatistics.shapeIndex(perimeter, area),
        nearest.map(patch -> patchId(patch.piece())),
        nearest.isPresent() ? OptionalDouble.of(nearest.get().metres()) : OptionalDouble.empty(),
        groupId(group));
  }

  static String groupId(int number) {
    return "R" + (number + 1);
  }

  static String patchId(int position) {
    return "P" + (position + 1);
  }

  ScopeSummary before() {
    return before;
  }

  ScopeSummary after() {
    return after;
  }

  List<Patch> patches() {
    return patches;
  }

  GapColumns gaps() {
    return gaps;
  }

  Origins origins() {
    return origins;
  }

  /** Patch by patch and scar by scar; empty where there are more patches than the limit. */
  Optional<ConnectivityDetail> connectivityDetail(
      Parameters parameters, List<Footprint> footprints) {
    double total = before.figures().totalSquareMetres();
    if (patches.isEmpty() || patches.size() > parameters.connectivityDetailPatches()) {
      return Optional.empty();
    }
    return Optional.of(
        after
            .connectivity(total)
            .detail(patches, gaps, i -> footprints.get(i).scar().id(), parameters));
  }

  /** Number of gaps of each scar, by position. */
  int[] gapCounts(int scarCount) {
    int[] counts = new int[scarCount];
    for (int i = 0; i < gaps.count(); i++) {
      counts[gaps.scar(i)]++;
    }
    return counts;
  }
}
