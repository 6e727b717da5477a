package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.ItemBoundable;
import org.locationtech.jts.index.strtree.ItemDistance;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.FacetSequence;
import org.locationtech.jts.operation.distance.FacetSequenceTreeBuilder;
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

  private static final ItemDistance FACET_DISTANCE =
      (a, b) -> ((FacetSequence) a.getItem()).distance((FacetSequence) b.getItem());

  private final List<Polygon> pieces;
  private final Optional<Measured> measured;
  private final GroundScale scale;
  private final double reachMetres;
  private final STRtree index;
  private final STRtree[] facets;
  private final double[] gridAreas;
  private final List<Link> links;
  private final List<Link> crossings;

  /**
   * Makes graphs of one survey.
   *
   * @param scale grid-to-ground scale; that at the piece with fewer vertices applies to a pair
   * @param reachMetres largest distance that links are kept for
   * @param barriers what no way over water may touch
   */
  record Maker(GroundScale scale, double reachMetres, Barriers barriers) {
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

    STRtree facet(int piece) {
      return graph.facet(place[piece]);
    }

    /** Length of a link, empty for pieces out of reach of each other. */
    OptionalDouble metres(int first, int second) {
      Link wanted = new Link(place[first], place[second], 0);
      int found = Collections.binarySearch(graph.links, wanted, Link.BY_PIECES);
      return found < 0 ? OptionalDouble.empty() : OptionalDouble.of(graph.links.get(found).metres);
    }
  }

  private PieceGraph(List<Polygon> pieces, Maker maker, Optional<Measured> measured) {
    this.pieces = pieces;
    this.measured = measured;
    this.scale = maker.scale;
    this.reachMetres = maker.reachMetres;
    facets = new STRtree[pieces.size()];
    gridAreas = pieces.parallelStream().mapToDouble(Polygon::getArea).toArray();
    index = StrTreeQuery.positions(pieces);
    links =
        pieces.size() < 2
            ? List.of()
            : IntStream.range(0, pieces.size())
                .parallel()
                .boxed()
                .flatMap(i -> linksOf(i).stream())
                .sorted(Link.BY_PIECES)
                .toList();
    crossings =
        maker.barriers.isEmpty()
            ? links
            : new OverWater(maker.barriers, pieces).crossings(links, this::factorOf, reachMetres);
  }

  private double factorOf(Link link) {
    return factor(isBigger(link.first, link.second) ? link.second : link.first);
  }

  private List<Link> linksOf(int i) {
    Envelope around = new Envelope(pieces.get(i).getEnvelopeInternal());
    around.expandBy(reachMetres * LARGEST_FACTOR);
    List<Link> found = new ArrayList<>();
    for (int j : StrTreeQuery.<Integer>items(index, around)) {
      if (j > i && isMeasured(i) && isMeasured(j)) {
        measured.get().metres(i, j).ifPresent(metres -> found.add(new Link(i, j, metres)));
      } else if (j > i) {
        double factor = factor(isBigger(i, j) ? j : i);
        double reach = (reachMetres + EQUAL_METRES) * factor;
        if (facet(i).isWithinDistance(facet(j), FACET_DISTANCE, reach)) {
          found.add(new Link(i, j, gridDistance(i, j) / factor));
        }
      }
    }
    return found;
  }

  private double factor(int i) {
    var centre = pieces.get(i).getEnvelopeInternal().centre();
    return scale.lengthFactor(centre.x, centre.y);
  }

  private boolean isBigger(int i, int j) {
    int byVertices = Integer.compare(pieces.get(i).getNumPoints(), pieces.get(j).getNumPoints());
    return byVertices != 0 ? byVertices > 0 : i > j;
  }

  private boolean isMeasured(int piece) {
    return measured.isPresent() && measured.get().has(piece);
  }

  private STRtree facet(int i) {
    if (isMeasured(i)) {
      return measured.get().facet(i);
    }
    synchronized (pieces.get(i)) {
      if (facets[i] == null) {
        facets[i] = FacetSequenceTreeBuilder.build(pieces.get(i));
      }
      return facets[i];
    }
  }

  /**
   * Ways over water up to the reach, by first and second piece: straight, or around barriers where
   * the straight way touches one.
   */
  List<Link> crossings() {
    return crossings;
  }

  /**
   * Group of each piece at a crossing distance: groups are numbered from 0 in order of their first
   * piece.
   */
  int[] groups(double crossingMetres) {
    ConnectedSets sets = new ConnectedSets(pieces.size());
    for (Link link : crossings) {
      if (link.metres <= crossingMetres + EQUAL_METRES) {
        sets.join(link.first, link.second);
      }
    }
    return sets.numbers();
  }

  /**
   * Number of groups, and the share of all area in the largest; no share where there is no area.
   */
  record GroupSummary(int count, OptionalDouble largestShare) {}

  GroupSummary summary(double crossingMetres) {
    int[] groups = groups(crossingMetres);
    int count = Arrays.stream(groups).max().orElse(-1) + 1;
    double[] areas = new double[count];
    double total = 0;
    for (int i = 0; i < groups.length; i++) {
      areas[groups[i]] += gridAreas[i];
      total += gridAreas[i];
    }
    return new GroupSummary(
        count,
        total > 0
            ? OptionalDouble.of(Arrays.stream(areas).max().orElse(0) / total)
            : OptionalDouble.empty());
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
    for (Link link : links) {
      keepNearer(nearest, link.first, link.second, link.metres);
      keepNearer(nearest, link.second, link.first, link.metres);
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
    Object[] nearest = facet(i).nearestNeighbour(facet(j), FACET_DISTANCE);
    return ((FacetSequence) nearest[0]).distance((FacetSequence) nearest[1]);
  }
}
