package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.survey.Parameters;

/** Patches and gaps of the whole survey, touching beds joined. */
final class PatchMap {
  /** A gap with its scar and patches by position. */
  record NumberedGap(int scar, int first, int second, Gap gap) {}

  private final ScopeSummary before;
  private final ScopeSummary after;
  private final List<Patch> patches;
  private final List<NumberedGap> gaps;

  private PatchMap(
      ScopeSummary before, ScopeSummary after, List<Patch> patches, List<NumberedGap> gaps) {
    this.before = before;
    this.after = after;
    this.patches = patches;
    this.gaps = gaps;
  }

  private record ScarredGroup(GrassGroup group, Pieces after, List<GapFinder.RawGap> gaps) {}

  static PatchMap of(
      MetricSurvey survey,
      Parameters parameters,
      FootprintClusters clusters,
      List<Footprint> footprints,
      Map<String, Scarring> scarringOfBed,
      PieceGraph.Maker graphs) {
    double minimum = parameters.minimumPatchSquareMetres();
    List<GrassGroup> groups = GrassGroup.of(survey.beds(), parameters.sliverToleranceMetres());
    List<ScarredGroup> scarred =
        groups.parallelStream()
            .map(
                group -> {
                  Scarring scarring =
                      group.beds().size() == 1
                          ? scarringOfBed.get(group.beds().get(0).id())
                          : Scarring.of(group.geometry(), clusters);
                  Pieces after = Pieces.of(scarring.pieces(), minimum);
                  return new ScarredGroup(
                      group,
                      after,
                      GapFinder.find(after.patches(), scarring.cutters(), footprints));
                })
            .toList();

    List<Polygon> wholeBefore = new ArrayList<>();
    List<Placed> placed = new ArrayList<>();
    List<Polygon> crumbs = new ArrayList<>();
    for (ScarredGroup group : scarred) {
      wholeBefore.addAll(Scarring.polygonsOf(group.group.geometry()));
      List<List<String>> bedIds = bedsOfPieces(group.group, group.after.patches(), scarringOfBed);
      for (int i = 0; i < group.after.patches().size(); i++) {
        placed.add(new Placed(group.after.patches().get(i), bedIds.get(i), group, i));
      }
      crumbs.addAll(group.after.crumbs());
    }
    placed.sort(Placed.ORDER);
    Pieces piecesBefore = Pieces.of(wholeBefore, minimum);
    Pieces piecesAfter = new Pieces(placed.stream().map(Placed::polygon).toList(), crumbs);
    ScopeSummary before = ScopeSummary.of(piecesBefore, survey.scale(), graphs);
    PieceGraph graph = graphs.graph(piecesAfter.patches());
    PieceGraph.Nearest[] nearest = graph.nearest();
    ScopeSummary after =
        new ScopeSummary(piecesAfter, PatchFigures.of(piecesAfter, survey.scale(), nearest), graph);
    return new PatchMap(
        before,
        after,
        describe(placed, after, nearest, parameters),
        number(scarred, placed, footprints));
  }

  private record Placed(Polygon polygon, List<String> bedIds, ScarredGroup group, int piece) {
    static final Comparator<Placed> ORDER =
        Comparator.comparingDouble((Placed p) -> p.polygon.getEnvelopeInternal().getMinX())
            .thenComparingDouble(p -> p.polygon.getEnvelopeInternal().getMinY())
            .thenComparingDouble(p -> p.polygon.getEnvelopeInternal().getMaxX())
            .thenComparingDouble(p -> p.polygon.getEnvelopeInternal().getMaxY())
            .thenComparingDouble(p -> p.polygon.getArea());
  }

  /** A piece of a bed taken alone lies in one patch: a point inside the one finds the other. */
  private static List<List<String>> bedsOfPieces(
      GrassGroup group, List<Polygon> pieces, Map<String, Scarring> scarringOfBed) {
    if (group.beds().size() == 1) {
      List<String> only = List.of(group.beds().get(0).id());
      return pieces.stream().map(piece -> only).toList();
    }
    PieceLocator locator = new PieceLocator(pieces);
    List<TreeSet<String>> ids = new ArrayList<>();
    pieces.forEach(piece -> ids.add(new TreeSet<>(Ids.ORDER)));
    for (Bed bed : group.beds()) {
      for (Polygon part : scarringOfBed.get(bed.id()).pieces()) {
        locator
            .around(part.getInteriorPoint().getCoordinate())
            .ifPresent(piece -> ids.get(piece).add(bed.id()));
      }
    }
    return ids.stream().map(List::<String>copyOf).toList();
  }

  private static List<Patch> describe(
      List<Placed> placed,
      ScopeSummary after,
      PieceGraph.Nearest[] nearest,
      Parameters parameters) {
    int[] groups = after.graph().groups(parameters.crossingDistanceMetres());
    return IntStream.range(0, placed.size())
        .mapToObj(
            i -> {
              Polygon polygon = placed.get(i).polygon;
              double area = after.figures().squareMetres()[i];
              double perimeter = after.figures().perimeterMetres()[i];
              return new Patch(
                  patchId(i),
                  polygon,
                  placed.get(i).bedIds,
                  area,
                  perimeter,
                  PatchStatistics.shapeIndex(perimeter, area),
                  nearest[i] == null ? Optional.empty() : Optional.of(patchId(nearest[i].piece())),
                  nearest[i] == null
                      ? OptionalDouble.empty()
                      : OptionalDouble.of(nearest[i].metres()),
                  "R" + (groups[i] + 1));
            })
        .toList();
  }

  private static String patchId(int position) {
    return "P" + (position + 1);
  }

  private static List<NumberedGap> number(
      List<ScarredGroup> scarred, List<Placed> placed, List<Footprint> footprints) {
    Map<ScarredGroup, int[]> numbers = new IdentityHashMap<>();
    scarred.forEach(group -> numbers.put(group, new int[group.after.patches().size()]));
    for (int i = 0; i < placed.size(); i++) {
      numbers.get(placed.get(i).group)[placed.get(i).piece] = i;
    }
    List<GapFinder.RawGap> raw = new ArrayList<>();
    for (ScarredGroup group : scarred) {
      int[] number = numbers.get(group);
      for (GapFinder.RawGap gap : group.gaps) {
        int a = number[gap.first()];
        int b = number[gap.second()];
        raw.add(
            new GapFinder.RawGap(
                gap.scar(),
                Math.min(a, b),
                Math.max(a, b),
                gap.minimumWidthMetres(),
                gap.meanWidthMetres(),
                gap.lengthMetres(),
                gap.geometry()));
      }
    }
    raw.sort(GapFinder.RawGap.ORDER);
    List<NumberedGap> gaps = new ArrayList<>();
    for (GapFinder.RawGap gap : raw) {
      gaps.add(
          new NumberedGap(
              gap.scar(),
              gap.first(),
              gap.second(),
              new Gap(
                  "G" + (gaps.size() + 1),
                  footprints.get(gap.scar()).scar().id(),
                  patchId(gap.first()),
                  patchId(gap.second()),
                  gap.minimumWidthMetres(),
                  gap.meanWidthMetres(),
                  gap.lengthMetres(),
                  gap.geometry())));
    }
    return List.copyOf(gaps);
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

  List<Gap> gaps() {
    return gaps.stream().map(NumberedGap::gap).toList();
  }

  /** Patch by patch and scar by scar; empty where there are more patches than the limit. */
  Optional<ConnectivityDetail> connectivityDetail(Parameters parameters) {
    double total = before.figures().totalSquareMetres();
    if (patches.isEmpty() || patches.size() > parameters.connectivityDetailPatches()) {
      return Optional.empty();
    }
    return Optional.of(after.connectivity(total).detail(patches, gaps, parameters));
  }

  /** Number of gaps of each scar, by position. */
  int[] gapCounts(int scarCount) {
    int[] counts = new int[scarCount];
    gaps.forEach(gap -> counts[gap.scar]++);
    return counts;
  }

  double[] gapWidthsMetres() {
    return gaps.stream().mapToDouble(gap -> gap.gap.minimumWidthMetres()).toArray();
  }
}
