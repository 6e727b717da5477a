package org.meadowmark.core.measure;

import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.ItemBoundable;
import org.locationtech.jts.index.strtree.ItemDistance;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.model.GroundScale;

/**
 * Pieces of grass and the edge-to-edge distances between those that are near each other.
 *
 * <p>Distances come from a tree of outline facets a piece, built once; only pairs whose envelopes
 * are within reach are measured. Time n log n in vertices plus the number of near pairs. Pieces do
 * not overlap, so the distance between outlines is the distance between pieces.
 */
final class PieceGraph {
  /**
   * Two near pieces.
   *
   * @param first position of one
   * @param second position of the other, larger
   * @param metres distance on the ground, edge to edge
   */
  record Link(int first, int second, double metres) {
    static final Comparator<Link> BY_PIECES =
        Comparator.comparingInt(Link::first).thenComparingInt(Link::second);
  }

  /**
   * Nearest other piece.
   *
   * @param piece its position
   * @param metres distance on the ground, edge to edge
   */
  record Nearest(int piece, double metres) {}

  /** More than any grid in use stretches; the exact factor is applied to each pair. */
  private static final double LARGEST_FACTOR = 1.1;

  /** A gap mapped at exactly the crossing distance can be crossed whatever its rounding. */
  static final double EQUAL_METRES = 1e-6;

  /** Where links are thinned, every one up to this length is kept. */
  private static final double SHORT_METRES = 1;

  /** Longer ones are looked at in steps, each with the ways over what the last one left. */
  private static final double LEVEL_FACTOR = 4;

  /** From this reach on one search serves a group of pieces. */
  private static final double LONG_METRES = 10;

  /** So many groups lie side by side in the reach, at least. */
  private static final double GROUPS_IN_REACH = 3;

  private static final int PIECES_AT_ONCE = 2_048;

  private final List<Polygon> pieces;
  private final Optional<Measured> measured;
  private final GroundScale scale;
  private final double reachMetres;
  private final Optional<Sample> sample;
  private final STRtree index;
  private final PieceOutline[] outlines;
  private final double[] gridAreas;
  private final Links links;
  private final Links crossings;

  /**
   * Makes graphs of one survey.
   *
   * @param scale grid-to-ground scale; that at the piece with fewer vertices applies to a pair
   * @param reachMetres largest distance that links are kept for
   * @param barriers what no way over water may touch
   * @param mostPieces most pieces for which all links are kept; beyond it those are left out that a
   *     way over third pieces, each within reach, makes useless
   * @param sample what is drawn where sums over all pairs would take too long
   */
  record Maker(
      GroundScale scale, double reachMetres, Barriers barriers, int mostPieces, Sample sample) {
    /** The same, but links are left out however few the pieces are. */
    Maker thinning() {
      return new Maker(scale, reachMetres, barriers, 0, sample);
    }

    /** Measures near pairs of pieces that do not overlap. */
    PieceGraph graph(List<Polygon> pieces) {
      return new PieceGraph(pieces, this, Optional.empty());
    }

    /**
     * Measures near pairs of pieces of which many are those of a graph already measured, in the
     * same order; what is known of these is not measured again.
     */
    PieceGraph graph(List<Polygon> pieces, PieceGraph measured) {
      return new PieceGraph(pieces, this, Optional.of(new Measured(measured, pieces)));
    }
  }

  /** Pieces of a graph that are pieces of another, measured before. */
  private static final class Measured {
    private static final int NOT_IN_IT = -1;

    private final PieceGraph graph;
    private final int[] place;

    Measured(PieceGraph graph, List<Polygon> pieces) {
      this.graph = graph;
      Map<Polygon, Integer> places = new IdentityHashMap<>();
      for (int i = 0; i < graph.pieces.size(); i++) {
        places.put(graph.pieces.get(i), i);
      }
      place = pieces.stream().mapToInt(piece -> places.getOrDefault(piece, NOT_IN_IT)).toArray();
    }

    boolean has(int piece) {
      return place[piece] != NOT_IN_IT;
    }

    boolean hasLinks(int first, int second) {
      return !graph.isThinned() && has(first) && has(second);
    }

    PieceOutline outline(int piece) {
      return graph.outline(place[piece]);
    }

    /** Length of a link, empty for pieces out of reach of each other. */
    OptionalDouble metres(int first, int second) {
      Link wanted = new Link(place[first], place[second], 0);
      int found = Collections.binarySearch(graph.links, wanted, Link.BY_PIECES);
      return found < 0 ? OptionalDouble.empty() : OptionalDouble.of(graph.links.metres(found));
    }
  }

  private PieceGraph(List<Polygon> pieces, Maker maker, Optional<Measured> measured) {
    this.pieces = pieces;
    this.measured = measured;
    this.scale = maker.scale;
    this.reachMetres = maker.reachMetres;
    outlines = new PieceOutline[pieces.size()];
    gridAreas = pieces.parallelStream().mapToDouble(Polygon::getArea).toArray();
    index = StrTreeQuery.positions(pieces);
    boolean thinned = pieces.size() > maker.mostPieces;
    sample = thinned ? Optional.of(maker.sample) : Optional.empty();
    if (pieces.size() < 2) {
      links = new Links();
      crossings = links;
    } else if (thinned) {
      double shortMetres = Math.min(SHORT_METRES, reachMetres);
      Links found = inBlocks((from, to) -> linksUpTo(from, to, shortMetres));
      for (double metres = shortMetres; metres < reachMetres; ) {
        metres = Math.min(reachMetres, LEVEL_FACTOR * metres);
        found = withUsefulUpTo(metres, found, overWater(found, maker.barriers));
      }
      links = found;
      crossings = overWater(links, maker.barriers);
    } else {
      links = inBlocks((from, to) -> linksUpTo(from, to, reachMetres));
      crossings = overWater(links, maker.barriers);
    }
  }

  private Links overWater(Links straight, Barriers barriers) {
    return barriers.isEmpty()
        ? straight
        : Links.of(
            new OverWater(barriers, pieces).crossings(straight, this::factorOf, reachMetres));
  }

  /** Links of the pieces from one position to before another. */
  private interface Block {
    Links links(int from, int to);
  }

  private Links inBlocks(Block block) {
    int blocks = (pieces.size() + PIECES_AT_ONCE - 1) / PIECES_AT_ONCE;
    return Links.joined(
        IntStream.range(0, blocks)
            .parallel()
            .mapToObj(
                i ->
                    block.links(
                        i * PIECES_AT_ONCE, Math.min(pieces.size(), (i + 1) * PIECES_AT_ONCE)))
            .toList());
  }

  /** Whether links are left out that are of no use to shortest ways. */
  boolean isThinned() {
    return sample.isPresent();
  }

  private double factorOf(Link link) {
    return factor(isBigger(link.first, link.second) ? link.second : link.first);
  }

  private Links linksUpTo(int from, int to, double metres) {
    Links found = new Links();
    for (int i = from; i < to; i++) {
      for (int j : window(extent(i), metres)) {
        if (j > i) {
          int first = i;
          link(i, j, metres).ifPresent(length -> found.append(first, j, length));
        }
      }
    }
    return found;
  }

  private int[] window(Envelope extent, double metres) {
    Envelope around = new Envelope(extent);
    around.expandBy(metres * LARGEST_FACTOR);
    return StrTreeQuery.<Integer>items(index, around).stream()
        .mapToInt(Integer::intValue)
        .sorted()
        .toArray();
  }

  /** Distance of two pieces on the ground; empty where they are farther apart. */
  private OptionalDouble link(int i, int j, double metres) {
    if (measured.isPresent() && measured.get().hasLinks(i, j)) {
      OptionalDouble known = measured.get().metres(i, j);
      return known.isPresent() && known.getAsDouble() <= metres + EQUAL_METRES
          ? known
          : OptionalDouble.empty();
    }
    double factor = factor(isBigger(i, j) ? j : i);
    OptionalDouble distance = outline(i).distanceUpTo((metres + EQUAL_METRES) * factor, outline(j));
    return distance.isPresent()
        ? OptionalDouble.of(distance.getAsDouble() / factor)
        : OptionalDouble.empty();
  }

  /**
   * Adds the links up to a length that no way over shorter ones makes useless. Shortest ways, and
   * with them groups and nearest pieces, are those of all links.
   */
  private Links withUsefulUpTo(double metres, Links shortLinks, Links shortCrossings) {
    NearLinks.Arcs arcs = NearLinks.Arcs.of(shortCrossings, pieces.size());
    Queue<NearLinks> searches = new ConcurrentLinkedQueue<>();
    int[] starts = new int[pieces.size() + 1];
    for (int i = 0; i < shortLinks.size(); i++) {
      starts[shortLinks.first(i) + 1]++;
    }
    Arrays.parallelPrefix(starts, Integer::sum);
    return inBlocks(
        (from, to) -> {
          NearLinks search =
              Optional.ofNullable(searches.poll()).orElseGet(() -> new NearLinks(arcs));
          int[][] candidates = new int[to - from][];
          if (metres >= LONG_METRES) {
            for (int[] group : PieceGroups.of(pieces, from, to, metres / GROUPS_IN_REACH)) {
              withoutDetours(group, from, metres, search, candidates);
            }
          }
          Links found = new Links();
          for (int i = from; i < to; i++) {
            int[] near =
                candidates[i - from] == null ? window(extent(i), metres) : candidates[i - from];
            candidates[i - from] = null;
            Links known = shortLinks.part(starts[i], starts[i + 1]);
            addUseful(i, near, known, metres, search, found);
          }
          searches.add(search);
          return found;
        });
  }

  /**
   * Finds for each piece of a group the later pieces near it that a way over the middle of the
   * group does not show to be useless. One search serves all pieces of the group.
   */
  private void withoutDetours(
      int[] group, int from, double metres, NearLinks search, int[][] candidates) {
    Envelope around = new Envelope();
    for (int i : group) {
      around.expandToInclude(extent(i));
    }
    int[] window = window(around, metres);
    int middle = nearest(group, around.centre());
    search.search(Arrays.binarySearch(window, middle), window, metres);
    Boxes boxes = new Boxes(window.length);
    double[] ways = new double[window.length];
    for (int place = 0; place < window.length; place++) {
      boxes.set(place, extent(window[place]));
      ways[place] = search.way(place);
    }
    int[] near = new int[window.length];
    for (int i : group) {
      int own = Arrays.binarySearch(window, i);
      int count = 0;
      for (int place = own + 1; place < window.length; place++) {
        double most = Math.min(metres + EQUAL_METRES, ways[own] + ways[place]) * LARGEST_FACTOR;
        if (boxes.areWithin(most, own, place)) {
          near[count++] = window[place];
        }
      }
      candidates[i - from] = Arrays.copyOf(near, count);
    }
  }

  private int nearest(int[] group, Coordinate point) {
    int nearest = group[0];
    for (int i : group) {
      if (extent(i).centre().distance(point) < extent(nearest).centre().distance(point)) {
        nearest = i;
      }
    }
    return nearest;
  }

  /** Adds what is known, and those of the candidates that no way makes useless. */
  private void addUseful(
      int i, int[] candidates, Links known, double metres, NearLinks search, Links found) {
    Envelope extent = extent(i);
    int next = 0;
    int[] window = null;
    for (int j : candidates) {
      if (j <= i) {
        continue;
      }
      while (next < known.size() && known.second(next) < j) {
        found.append(i, known.second(next), known.metres(next++));
      }
      if (next < known.size() && known.second(next) == j) {
        found.append(i, j, known.metres(next++));
        continue;
      }
      if (window == null) {
        window = window(extent, Math.min(metres, farthest(i, candidates)));
        search.search(Arrays.binarySearch(window, i), window, metres);
      }
      double way = search.way(Arrays.binarySearch(window, j));
      if (way >= extent.distance(extent(j)) / LARGEST_FACTOR) {
        link(i, j, Math.min(metres, way)).ifPresent(length -> found.append(i, j, length));
      }
    }
    while (next < known.size()) {
      found.append(i, known.second(next), known.metres(next++));
    }
  }

  private double farthest(int i, int[] candidates) {
    double farthest = 0;
    for (int j : candidates) {
      farthest = Math.max(farthest, extent(i).distance(extent(j)));
    }
    return farthest;
  }

  private Envelope extent(int i) {
    return pieces.get(i).getEnvelopeInternal();
  }

  private double factor(int i) {
    var centre = pieces.get(i).getEnvelopeInternal().centre();
    return scale.lengthFactor(centre.x, centre.y);
  }

  private boolean isBigger(int i, int j) {
    int byVertices = Integer.compare(pieces.get(i).getNumPoints(), pieces.get(j).getNumPoints());
    return byVertices != 0 ? byVertices > 0 : i > j;
  }

  private PieceOutline outline(int i) {
    Polygon piece = pieces.get(i);
    if (PieceOutline.hasFewVertices(piece)) {
      return new PieceOutline(piece);
    }
    if (measured.isPresent() && measured.get().has(i)) {
      return measured.get().outline(i);
    }
    synchronized (piece) {
      if (outlines[i] == null) {
        outlines[i] = new PieceOutline(piece);
      }
      return outlines[i];
    }
  }

  /**
   * Ways over water up to the reach, by first and second piece: straight, or around barriers where
   * the straight way touches one.
   */
  Links crossings() {
    return crossings;
  }

  /** The ways over water without the pieces. */
  PatchNetwork network() {
    return new PatchNetwork(crossings, gridAreas, sample);
  }

  /** Group of each piece at a crossing distance, see {@link PatchNetwork#groups}. */
  int[] groups(double crossingMetres) {
    return network().groups(crossingMetres);
  }

  PatchNetwork.GroupSummary summary(double crossingMetres) {
    return network().summary(crossingMetres);
  }

  /**
   * Nearest other piece of each piece in a straight line, null for the only one; of equally near
   * ones the first.
   */
  Nearest[] nearest() {
    Nearest[] nearest = new Nearest[pieces.size()];
    if (pieces.size() < 2) {
      return nearest;
    }
    for (int i = 0; i < links.size(); i++) {
      keepNearer(nearest, links.first(i), links.second(i), links.metres(i));
      keepNearer(nearest, links.second(i), links.first(i), links.metres(i));
    }
    ItemDistance distance = this::distance;
    IntStream.range(0, pieces.size())
        .parallel()
        .filter(i -> nearest[i] == null)
        .forEach(
            i -> {
              int other =
                  (Integer)
                      index.nearestNeighbour(pieces.get(i).getEnvelopeInternal(), i, distance);
              double factor = factor(isBigger(i, other) ? other : i);
              nearest[i] = new Nearest(other, gridDistance(i, other) / factor);
            });
    return nearest;
  }

  private static void keepNearer(Nearest[] nearest, int piece, int other, double metres) {
    if (nearest[piece] == null || metres < nearest[piece].metres) {
      nearest[piece] = new Nearest(other, metres);
    }
  }

  private double distance(ItemBoundable left, ItemBoundable right) {
    int i = (Integer) left.getItem();
    int j = (Integer) right.getItem();
    return i == j ? Double.MAX_VALUE : gridDistance(i, j);
  }

  private double gridDistance(int i, int j) {
    return outline(i).distance(outline(j));
  }
}
