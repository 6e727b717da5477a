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
import java.util.function.IntFunction;
import java.util.stream.IntStream;
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
      Links found = inBlocks(i -> linksUpTo(i, shortMetres));
      for (double metres = shortMetres; metres < reachMetres; ) {
        metres = Math.min(reachMetres, LEVEL_FACTOR * metres);
        found = withUsefulUpTo(metres, found, overWater(found, maker.barriers));
      }
      links = found;
      crossings = overWater(links, maker.barriers);
    } else {
      links = inBlocks(i -> linksUpTo(i, reachMetres));
      crossings = overWater(links, maker.barriers);
    }
  }

  private Links overWater(Links straight, Barriers barriers) {
    return barriers.isEmpty()
        ? straight
        : Links.of(
            new OverWater(barriers, pieces).crossings(straight, this::factorOf, reachMetres));
  }

  private Links inBlocks(IntFunction<Links> linksOfPiece) {
    int blocks = (pieces.size() + PIECES_AT_ONCE - 1) / PIECES_AT_ONCE;
    return Links.joined(
        IntStream.range(0, blocks)
            .parallel()
            .mapToObj(
                block ->
                    Links.joined(
                        IntStream.range(
                                block * PIECES_AT_ONCE,
                                Math.min(pieces.size(), (block + 1) * PIECES_AT_ONCE))
                            .mapToObj(linksOfPiece)
                            .toList()))
            .toList());
  }

  /** Whether links are left out that are of no use to shortest ways. */
  boolean isThinned() {
    return sample.isPresent();
  }

  private double factorOf(Link link) {
    return factor(isBigger(link.first, link.second) ? link.second : link.first);
  }

  private Links linksUpTo(int i, double metres) {
    Links found = new Links();
    for (int j : window(i, metres)) {
      if (j > i) {
        link(i, j, metres).ifPresent(length -> found.append(i, j, length));
      }
    }
    return found;
  }

  private int[] window(int i, double metres) {
    Envelope around = new Envelope(pieces.get(i).getEnvelopeInternal());
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
    double reach = (metres + EQUAL_METRES) * factor;
    return outline(i).isWithin(outline(j), reach)
        ? OptionalDouble.of(gridDistance(i, j) / factor)
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
        i -> {
          NearLinks search =
              Optional.ofNullable(searches.poll()).orElseGet(() -> new NearLinks(arcs));
          Links found = new Links();
          int next = starts[i];
          int[] window = window(i, metres);
          search.search(Arrays.binarySearch(window, i), window, metres);
          Envelope extent = pieces.get(i).getEnvelopeInternal();
          for (int place = 0; place < window.length; place++) {
            int j = window[place];
            if (j <= i) {
              continue;
            }
            if (next < starts[i + 1] && shortLinks.second(next) == j) {
              found.append(i, j, shortLinks.metres(next++));
              continue;
            }
            double way = search.way(place);
            double atLeast = extent.distance(pieces.get(j).getEnvelopeInternal()) / LARGEST_FACTOR;
            if (way >= atLeast) {
              link(i, j, Math.min(metres, way)).ifPresent(length -> found.append(i, j, length));
            }
          }
          searches.add(search);
          return found;
        });
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
