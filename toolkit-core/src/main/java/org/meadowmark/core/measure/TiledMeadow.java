package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.measure.TileCut.FragmentStretch;
import org.meadowmark.core.measure.TileCut.OpenStep;
import org.meadowmark.core.model.Ids;

/**
 * A meadow with very many scars, cut tile by tile: no geometry ever holds all scars at once, and
 * the work runs in parallel inside one meadow. The pieces and gaps are those that a cut in one go
 * gives, but for corners in outlines where tiles meet.
 *
 * <p>Time n log n in vertices and scars; memory for the pieces and gaps of the meadow.
 */
final class TiledMeadow {
  /** What is left of one shape: the joined meadow, or one of its beds. */
  record Shape(List<Geometry> scarred, Pieces pieces, GapColumns gaps) {}

  /** What is left of the joined meadow; a meadow of one bed is that bed. */
  record Joined(MeasuredGrass grass, Shape shape) {}

  private final GrassGroup group;
  private final List<Footprint> all;
  private final STRtree footprintIndex;
  private final double minimumSquareMetres;
  private final List<Tile> tiles;
  private final List<TileCut.Cuts> cuts;
  private final List<Footprint> polygonScars;
  private final STRtree tileIndex = new STRtree();

  private TiledMeadow(
      GrassGroup group,
      List<Footprint> all,
      STRtree footprintIndex,
      double minimumSquareMetres,
      List<Tile> tiles,
      List<TileCut.Cuts> cuts,
      List<Footprint> polygonScars) {
    this.group = group;
    this.all = all;
    this.footprintIndex = footprintIndex;
    this.minimumSquareMetres = minimumSquareMetres;
    this.tiles = tiles;
    this.cuts = cuts;
    this.polygonScars = polygonScars;
    IntStream.range(0, tiles.size()).forEach(t -> tileIndex.insert(tiles.get(t).box(), t));
    tileIndex.build();
  }

  /**
   * Cuts a meadow.
   *
   * @param group the meadow
   * @param all footprints of the survey
   * @param footprintIndex their positions
   * @param minimumSquareMetres smallest piece that counts
   */
  static TiledMeadow of(
      GrassGroup group, List<Footprint> all, STRtree footprintIndex, double minimumSquareMetres) {
    List<Geometry> shapes = new ArrayList<>();
    shapes.add(group.geometry());
    group.beds().forEach(bed -> shapes.add(bed.geometry()));
    int[] near =
        StrTreeQuery.<Integer>items(footprintIndex, group.geometry().getEnvelopeInternal()).stream()
            .mapToInt(Integer::intValue)
            .sorted()
            .toArray();
    List<Tile> tiles = Tile.of(shapes, near, all);
    List<TileCut.Cuts> cuts = tiles.parallelStream().map(tile -> TileCut.of(tile, all)).toList();
    List<Footprint> polygonScars =
        Arrays.stream(near)
            .mapToObj(all::get)
            .filter(footprint -> !footprint.scar().isLine())
            .toList();
    return new TiledMeadow(
        group, all, footprintIndex, minimumSquareMetres, tiles, cuts, polygonScars);
  }

  /** The bed at a position in the group. */
  Shape bed(int position) {
    return new Assembly(position + 1).shape();
  }

  /** The joined meadow. */
  Joined joined() {
    Assembly assembly = new Assembly(0);
    Shape shape = assembly.shape();
    return new Joined(new MeasuredGrass(group, shape.pieces, assembly.bedIds(), shape.gaps), shape);
  }

  /** Puts one shape together from its tiles. */
  private final class Assembly {
    private static final int NOT_A_PATCH = -1;

    private final int shape;
    private final int[] firstFragments = new int[tiles.size()];
    private final List<Geometry> scarred = new ArrayList<>();
    private final Pieces pieces;

    /** Patch of each fragment; {@link #NOT_A_PATCH} for crumbs. */
    private final int[] patchOfFragment;

    private final Map<Integer, PieceLocator> locators = new ConcurrentHashMap<>();

    Assembly(int shape) {
      this.shape = shape;
      TileSeams seams = new TileSeams();
      for (int t = 0; t < tiles.size(); t++) {
        firstFragments[t] = seams.fragmentCount();
        TileCut cut = cuts.get(t).byShape().get(shape);
        if (cut == null) {
          continue;
        }
        seams.add(tiles.get(t).box(), cut.fragments());
        if (!cut.scarred().isEmpty()) {
          scarred.add(
              group
                  .geometry()
                  .getFactory()
                  .createMultiPolygon(cut.scarred().toArray(Polygon[]::new)));
        }
      }
      TileSeams.Joined joined = seams.join();
      int[] patchOfPiece = new int[joined.polygons().size()];
      int patches = 0;
      for (int i = 0; i < patchOfPiece.length; i++) {
        boolean counts = Pieces.counts(joined.polygons().get(i), minimumSquareMetres);
        patchOfPiece[i] = counts ? patches++ : NOT_A_PATCH;
      }
      pieces = Pieces.of(joined.polygons(), minimumSquareMetres);
      patchOfFragment =
          Arrays.stream(joined.pieceOfFragment()).map(piece -> patchOfPiece[piece]).toArray();
    }

    Shape shape() {
      return new Shape(scarred, pieces, gaps());
    }

    List<List<String>> bedIds() {
      List<TreeSet<String>> ids = new ArrayList<>();
      pieces.patches().forEach(patch -> ids.add(new TreeSet<>(Ids.ORDER)));
      for (int t = 0; t < tiles.size(); t++) {
        List<List<Integer>> beds = cuts.get(t).bedsOfFragments();
        for (int f = 0; f < beds.size(); f++) {
          int patch = patchOfFragment[firstFragments[t] + f];
          if (patch != NOT_A_PATCH) {
            beds.get(f).forEach(bed -> ids.get(patch).add(group.beds().get(bed - 1).id()));
          }
        }
      }
      Map<TreeSet<String>, List<String>> shared = new HashMap<>();
      return ids.stream().map(set -> shared.computeIfAbsent(set, List::copyOf)).toList();
    }

    private GapColumns gaps() {
      List<FragmentStretch> stretches =
          new ArrayList<>(
              IntStream.range(0, tiles.size())
                  .parallel()
                  .boxed()
                  .flatMap(tile -> stretches(tile).stream())
                  .toList());
      stretches.sort(FragmentStretch.ORDER);
      List<RawGap> gaps = new ArrayList<>();
      for (int from = 0; from < stretches.size(); ) {
        FragmentStretch start = stretches.get(from);
        GapStretch whole = new GapStretch();
        int to = from;
        while (to < stretches.size() && isSameGap(start, stretches.get(to))) {
          whole.add(stretches.get(to++).stretch());
        }
        gaps.add(whole.gap(all.get(start.scar()), start.first(), start.second()));
        from = to;
      }
      gaps.addAll(GapFinder.acrossPolygons(pieces.patches(), polygonScars));
      gaps.sort(RawGap.ORDER);
      GapColumns columns = new GapColumns();
      gaps.forEach(columns::add);
      return columns;
    }

    private List<FragmentStretch> stretches(int tile) {
      List<FragmentStretch> stretches = new ArrayList<>();
      TileCut cut = cuts.get(tile).byShape().get(shape);
      if (cut == null) {
        return stretches;
      }
      int first = firstFragments[tile];
      for (FragmentStretch part : cut.stretches()) {
        add(
            stretches,
            part.scar(),
            patchOfFragment[first + part.first()],
            patchOfFragment[first + part.second()],
            part.stretch());
      }
      cut.open().forEach(step -> add(stretches, step));
      return stretches;
    }

    private boolean isSameGap(FragmentStretch a, FragmentStretch b) {
      return a.scar() == b.scar() && a.first() == b.first() && a.second() == b.second();
    }

    private void add(
        List<FragmentStretch> stretches, int scar, int one, int other, GapStretch stretch) {
      if (one != other && one != NOT_A_PATCH && other != NOT_A_PATCH) {
        stretches.add(
            new FragmentStretch(scar, Math.min(one, other), Math.max(one, other), stretch));
      }
    }

    private void add(List<FragmentStretch> stretches, OpenStep step) {
      Footprint footprint = all.get(step.scar());
      double halfWidth = GapFinder.halfWidth(footprint);
      Optional<Across> left = across(step.middle(), -step.alongY(), step.alongX(), halfWidth);
      if (left.isEmpty()) {
        return;
      }
      Optional<Across> right = across(step.middle(), step.alongY(), -step.alongX(), halfWidth);
      if (right.isEmpty()) {
        return;
      }
      double width = left.get().distance() + right.get().distance();
      if (GapFinder.takesUp(halfWidth, width)) {
        GapStretch stretch = new GapStretch();
        stretch.add(step.number(), width, step.length());
        add(stretches, step.scar(), left.get().piece(), right.get().piece(), stretch);
      }
    }

    private Optional<Across> across(Coordinate from, double x, double y, double halfWidth) {
      return Across.find(from, x, y, halfWidth, this::patchAt, this::firstEdge);
    }

    private double firstEdge(Coordinate from, Coordinate to) {
      List<Geometry> scars =
          StrTreeQuery.<Integer>items(footprintIndex, new Envelope(from, to)).stream()
              .sorted()
              .map(all::get)
              .filter(footprint -> footprint.mayMeet(from, to))
              .map(Footprint::area)
              .toList();
      return BareStretch.firstEdge(from, to, scars);
    }

    private OptionalInt patchAt(Coordinate point) {
      for (int t : StrTreeQuery.<Integer>items(tileIndex, new Envelope(point))) {
        TileCut cut = cuts.get(t).byShape().get(shape);
        if (cut != null && tiles.get(t).holds(point)) {
          OptionalInt fragment =
              locators.computeIfAbsent(t, tile -> new PieceLocator(cut.fragments())).at(point);
          if (fragment.isPresent()) {
            int patch = patchOfFragment[firstFragments[t] + fragment.getAsInt()];
            return patch == NOT_A_PATCH ? OptionalInt.empty() : OptionalInt.of(patch);
          }
        }
      }
      return OptionalInt.empty();
    }
  }
}
