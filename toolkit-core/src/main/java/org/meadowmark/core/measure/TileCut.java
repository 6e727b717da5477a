package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * What the scars of a tile do to one shape in it.
 *
 * @param fragments pieces of grass that are left, cut off at the tile's sides
 * @param scarred scarred parts, cut off at the tile's sides
 * @param stretches where scars separate two fragments
 * @param open steps of scars that only a look beyond the tile can decide
 */
record TileCut(
    List<Polygon> fragments,
    List<Polygon> scarred,
    List<FragmentStretch> stretches,
    List<OpenStep> open) {

  private static final double EQUAL_SQUARE_METRES = 1e-6;

  /**
   * A stretch of a scar line that separates two fragments.
   *
   * @param scar position of the scar
   * @param first one fragment
   * @param second the other, larger
   * @param stretch what is known of it
   */
  record FragmentStretch(int scar, int first, int second, GapStretch stretch) {
    static final Comparator<FragmentStretch> ORDER =
        Comparator.comparingInt(FragmentStretch::scar)
            .thenComparingInt(FragmentStretch::first)
            .thenComparingInt(FragmentStretch::second)
            .thenComparingInt(part -> part.stretch.firstStep());
  }

  /**
   * A step of a scar line.
   *
   * @param scar position of the scar
   * @param number number of the step
   * @param middle its middle
   * @param alongX direction of the line
   * @param alongY direction of the line
   * @param length grid length
   */
  record OpenStep(
      int scar, int number, Coordinate middle, double alongX, double alongY, double length) {}

  /**
   * The cuts of a tile.
   *
   * @param byShape one a shape that lies in the tile
   * @param bedsOfFragments beds, by number of their shape, that each fragment of the joined meadow
   *     is part of
   */
  record Cuts(Map<Integer, TileCut> byShape, List<List<Integer>> bedsOfFragments) {}

  /** Cuts everything in a tile. */
  static Cuts of(Tile tile, List<Footprint> all) {
    List<Footprint> footprints = Arrays.stream(tile.footprints()).mapToObj(all::get).toList();
    Map<Integer, TileCut> cuts = new TreeMap<>();
    Optional<Geometry> scars =
        footprints.isEmpty()
            ? Optional.empty()
            : Optional.of(
                WindowUnion.of(
                    footprints.stream()
                        .map(Footprint::area)
                        .filter(area -> !area.isEmpty())
                        .toList(),
                    tile.known(),
                    tile.parts().get(0).geometry().getFactory()));
    Optional<OutlineIndex> outline = scars.map(OutlineIndex::new);
    List<Tile.Part> parts = tile.parts();
    boolean oneBed =
        parts.size() == 2
            && Math.abs(parts.get(0).geometry().getArea() - parts.get(1).geometry().getArea())
                <= EQUAL_SQUARE_METRES;
    for (Tile.Part part : parts) {
      cuts.put(
          part.shape(),
          oneBed && part.shape() > 0
              ? cuts.get(0)
              : new Cutter(tile, footprints, scars, outline).cut(part.geometry()));
    }
    return new Cuts(cuts, oneBed ? oneBed(cuts, parts.get(1).shape()) : bedsOfFragments(cuts));
  }

  private static List<List<Integer>> oneBed(Map<Integer, TileCut> cuts, int bed) {
    List<Integer> only = List.of(bed);
    return cuts.get(0).fragments.stream().map(fragment -> only).toList();
  }

  /** A piece of a bed lies in one fragment: a point inside the one finds the other. */
  private static List<List<Integer>> bedsOfFragments(Map<Integer, TileCut> cuts) {
    if (!cuts.containsKey(0)) {
      return List.of();
    }
    List<Polygon> fragments = cuts.get(0).fragments;
    PieceLocator locator = new PieceLocator(fragments);
    List<TreeSet<Integer>> beds = new ArrayList<>();
    fragments.forEach(fragment -> beds.add(new TreeSet<>()));
    cuts.forEach(
        (shape, cut) -> {
          if (shape > 0) {
            for (Polygon piece : cut.fragments) {
              locator
                  .around(piece.getInteriorPoint().getCoordinate())
                  .ifPresent(fragment -> beds.get(fragment).add(shape));
            }
          }
        });
    return beds.stream().map(List::<Integer>copyOf).toList();
  }

  /** Cuts one shape. */
  private static final class Cutter {
    private final Tile tile;
    private final List<Footprint> footprints;
    private final Optional<Geometry> scars;
    private final Optional<OutlineIndex> outline;
    private final List<FragmentStretch> stretches = new ArrayList<>();
    private final List<OpenStep> open = new ArrayList<>();
    private PieceLocator locator;

    Cutter(
        Tile tile,
        List<Footprint> footprints,
        Optional<Geometry> scars,
        Optional<OutlineIndex> outline) {
      this.tile = tile;
      this.footprints = footprints;
      this.scars = scars;
      this.outline = outline;
    }

    TileCut cut(Geometry shape) {
      if (scars.isEmpty()) {
        return new TileCut(
            CompactPolygons.of(Scarring.polygonsOf(shape)), List.of(), List.of(), List.of());
      }
      ShapeCut cut = ShapeCut.of(shape, scars.get());
      locator = new PieceLocator(cut.left());
      footprints.stream().filter(footprint -> footprint.scar().isLine()).forEach(this::walk);
      return new TileCut(cut.left(), cut.cutOut(), List.copyOf(stretches), List.copyOf(open));
    }

    private void walk(Footprint footprint) {
      double halfWidth = GapFinder.halfWidth(footprint);
      Map<Long, GapStretch> found = new TreeMap<>();
      ScarSteps.visit(
          footprint.line(),
          (number, from, to, alongX, alongY, length) -> {
            Coordinate middle = ScarSteps.middle(from, to);
            if (!tile.holds(middle)) {
              return;
            }
            Side left = side(middle, -alongY, alongX, halfWidth);
            if (left == Side.BARE) {
              return;
            }
            Side right = side(middle, alongY, -alongX, halfWidth);
            if (right == Side.BARE) {
              return;
            }
            if (left == Side.OPEN || right == Side.OPEN) {
              open.add(new OpenStep(footprint.index(), number, middle, alongX, alongY, length));
              return;
            }
            double width = left.distance + right.distance;
            if (left.fragment != right.fragment && GapFinder.takesUp(halfWidth, width)) {
              long pair =
                  (long) Math.min(left.fragment, right.fragment) << Integer.SIZE
                      | Math.max(left.fragment, right.fragment);
              found.computeIfAbsent(pair, key -> new GapStretch()).add(number, width, length);
            }
          });
      found.forEach(
          (pair, stretch) ->
              stretches.add(
                  new FragmentStretch(
                      footprint.index(), (int) (pair >>> Integer.SIZE), pair.intValue(), stretch)));
    }

    /** What lies straight beside a scar, see {@link GapFinder}. */
    private Side side(Coordinate from, double directionX, double directionY, double halfWidth) {
      Coordinate beside =
          GapFinder.beyond(from, directionX, directionY, halfWidth + GapFinder.EDGE_METRES);
      if (!tile.holds(beside)) {
        return Side.OPEN;
      }
      OptionalInt fragment = locator.at(beside);
      if (fragment.isPresent()) {
        return new Side(fragment.getAsInt(), halfWidth);
      }
      Coordinate farthest =
          GapFinder.beyond(from, directionX, directionY, GapFinder.reach(halfWidth));
      double edge = outline.orElseThrow().firstCrossing(from, farthest);
      Coordinate end =
          Double.isInfinite(edge) ? farthest : GapFinder.beyond(from, directionX, directionY, edge);
      if (!tile.knows(end)) {
        return Side.OPEN;
      }
      if (GapFinder.isNoGap(edge, halfWidth)) {
        return Side.BARE;
      }
      Coordinate behind =
          GapFinder.beyond(from, directionX, directionY, edge + GapFinder.EDGE_METRES);
      if (!tile.holds(behind)) {
        return Side.OPEN;
      }
      fragment = locator.at(behind);
      return fragment.isPresent() ? new Side(fragment.getAsInt(), edge) : Side.BARE;
    }
  }

  /**
   * What lies beside a scar.
   *
   * @param fragment fragment of grass
   * @param distance how far its edge is from the middle of the scar
   */
  private record Side(int fragment, double distance) {
    static final Side BARE = new Side(-1, 0);
    static final Side OPEN = new Side(-2, 0);
  }
}
