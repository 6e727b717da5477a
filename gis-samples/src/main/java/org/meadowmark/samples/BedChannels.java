package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jgrapht.Graph;
import org.jgrapht.alg.spanning.PrimMinimumSpanningTree;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snapround.SnapRoundingNoder;

/**
 * Invents channels among beds: the shortest tree that joins places spread over them, each branch a
 * meandering line, noded where lines meet.
 */
final class BedChannels {
  private static final PrecisionModel CENTIMETRES = new PrecisionModel(100);
  private static final double STEP_METRES = 25;
  private static final double HALF_WIDTH_METRES = 20;

  private BedChannels() {}

  static List<ChannelPath> thread(List<Polygon> beds, int ends, Draws draws) {
    List<Coordinate> places = spread(beds, ends);
    Graph<Integer, DefaultWeightedEdge> graph =
        new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
    for (int i = 0; i < places.size(); i++) {
      graph.addVertex(i);
      for (int k = 0; k < i; k++) {
        graph.setEdgeWeight(graph.addEdge(k, i), places.get(i).distance(places.get(k)));
      }
    }
    List<DefaultWeightedEdge> tree =
        new ArrayList<>(new PrimMinimumSpanningTree<>(graph).getSpanningTree().getEdges());
    tree.sort(
        Comparator.comparing((DefaultWeightedEdge edge) -> graph.getEdgeSource(edge))
            .thenComparing(graph::getEdgeTarget));
    List<SegmentString> lines = new ArrayList<>();
    for (DefaultWeightedEdge edge : tree) {
      Coordinate from = places.get(graph.getEdgeSource(edge));
      Coordinate to = places.get(graph.getEdgeTarget(edge));
      double wavelength = Math.min(2_500, Math.max(400, from.distance(to) / 4));
      SineGeneratedCurve curve =
          SineGeneratedCurve.natural(
              wavelength, Math.toRadians(draws.between(30, 50)), STEP_METRES);
      lines.add(
          new NodedSegmentString(
              curve.along(List.of(from, to), draws), Names.channel(lines.size())));
    }
    return noded(lines);
  }

  private static List<ChannelPath> noded(List<SegmentString> lines) {
    SnapRoundingNoder noder = new SnapRoundingNoder(CENTIMETRES);
    noder.computeNodes(lines);
    List<ChannelPath> reaches = new ArrayList<>();
    for (Object piece : noder.getNodedSubstrings()) {
      SegmentString reach = (SegmentString) piece;
      reaches.add(
          new ChannelPath(
              (String) reach.getData(),
              reach.getCoordinates(),
              HALF_WIDTH_METRES,
              HALF_WIDTH_METRES));
    }
    reaches.sort(Comparator.comparing(ChannelPath::name).thenComparing(reach -> reach.points()[0]));
    return reaches;
  }

  /** Places on the margins of beds, each as far as can be from those before it. */
  private static List<Coordinate> spread(List<Polygon> beds, int wanted) {
    Polygon largest =
        beds.stream().max(Comparator.comparingDouble(Geometry::getArea)).orElseThrow();
    double[] apart = new double[beds.size()];
    Arrays.fill(apart, Double.POSITIVE_INFINITY);
    List<Coordinate> places = new ArrayList<>();
    Polygon next = largest;
    while (places.size() < wanted) {
      Coordinate place = next.getCoordinate().copy();
      CENTIMETRES.makePrecise(place);
      places.add(place);
      int farthest = 0;
      for (int i = 0; i < apart.length; i++) {
        apart[i] = Math.min(apart[i], place.distance(beds.get(i).getCoordinate()));
        if (apart[i] > apart[farthest]) {
          farthest = i;
        }
      }
      if (apart[farthest] < 100) {
        break;
      }
      next = beds.get(farthest);
    }
    if (places.size() < 2) {
      Coordinate only = places.get(0);
      double reach = Math.max(500, largest.getEnvelopeInternal().getDiameter());
      places.add(new Coordinate(only.x + Math.rint(reach), only.y));
    }
    return places;
  }
}
