package org.meadowmark.core.rank;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.CoordinateList;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentString;
import org.locationtech.jts.noding.snap.SnappingNoder;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Ids;

/**
 * Cuts channel centrelines into segments of near-equal length.
 *
 * <p>Lines are noded where they cross or meet, repeated stretches are kept once, stretches of one
 * channel between junctions are joined, and a stretch of length ℓ is cut into round(ℓ / nominal)
 * equal pieces, at least one. Ids are the channel's name and a number along it from the end that
 * lies farther west, so they depend neither on line direction nor on input order.
 *
 * <p>Time n log n in vertices.
 */
public final class ChannelSegmenter {
  /** Ends and crossings closer than this are one node. */
  private static final double NODE_TOLERANCE_METRES = 0.01;

  private static final Comparator<Coordinate[]> BY_POSITION =
      Comparator.comparing((Coordinate[] line) -> line[0])
          .thenComparing(line -> line[line.length - 1])
          .thenComparing(line -> line[1]);

  private final GroundScale scale;
  private final double nominalMetres;
  private final GeometryFactory factory;

  /**
   * Creates a segmenter.
   *
   * @param scale grid-to-ground scale
   * @param nominalMetres nominal length of a segment on the ground
   * @param factory makes the lines
   */
  public ChannelSegmenter(GroundScale scale, double nominalMetres, GeometryFactory factory) {
    this.scale = scale;
    this.nominalMetres = nominalMetres;
    this.factory = factory;
  }

  /**
   * {@return segments of channels, in order of channel name, then along the channel}
   *
   * @param channels centrelines on the analysis grid, in any order and direction
   */
  public List<ChannelSegment> cut(List<Channel> channels) {
    Map<String, List<Coordinate[]>> stretches = stretches(channels);
    List<ChannelSegment> segments = new ArrayList<>();
    Set<String> slugs = new HashSet<>();
    stretches.forEach(
        (name, lines) -> {
          String slug = unusedSlug(name, slugs);
          lines.sort(BY_POSITION);
          int number = 0;
          for (Coordinate[] line : lines) {
            for (LineString piece : pieces(line)) {
              number++;
              segments.add(
                  new ChannelSegment(
                      String.format(Locale.ROOT, "%s-%04d", slug, number),
                      name,
                      piece,
                      piece.getLength() / factor(piece)));
            }
          }
        });
    return List.copyOf(segments);
  }

  private double factor(Geometry line) {
    Coordinate centre = line.getEnvelopeInternal().centre();
    return scale.lengthFactor(centre.x, centre.y);
  }

  private static String unusedSlug(String name, Set<String> used) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFD)
            .replaceAll("\\p{M}", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-")
            .replaceAll("^-|-$", "");
    String slug = plain.isEmpty() ? "channel" : plain;
    for (int i = 2; !used.add(slug); i++) {
      slug = (plain.isEmpty() ? "channel" : plain) + "-" + i;
    }
    return slug;
  }

  /** Lines between junctions by channel name, each from its western end. */
  private Map<String, List<Coordinate[]>> stretches(List<Channel> channels) {
    List<NodedSegmentString> input = new ArrayList<>();
    List<Channel> ordered = new ArrayList<>(channels);
    ordered.sort(Comparator.comparing(Channel::id, Ids.ORDER));
    for (Channel channel : ordered) {
      String name = channel.name().isEmpty() ? "channel " + channel.id() : channel.name();
      for (Object part : LinearComponentExtracter.getLines(channel.geometry())) {
        Coordinate[] line =
            CoordinateArrays.removeRepeatedPoints(((LineString) part).getCoordinates());
        if (line.length > 1) {
          input.add(new NodedSegmentString(line, name));
        }
      }
    }
    if (input.isEmpty()) {
      return Map.of();
    }
    SnappingNoder noder = new SnappingNoder(NODE_TOLERANCE_METRES);
    noder.computeNodes(input);

    Map<List<Coordinate>, NamedLine> unique = new LinkedHashMap<>();
    for (Object noded : noder.getNodedSubstrings()) {
      SegmentString string = (SegmentString) noded;
      Coordinate[] line = fromWest(CoordinateArrays.removeRepeatedPoints(string.getCoordinates()));
      if (line.length > 1) {
        unique.merge(
            List.of(line),
            new NamedLine((String) string.getData(), line),
            (a, b) -> a.name.compareTo(b.name) <= 0 ? a : b);
      }
    }
    return join(List.copyOf(unique.values()));
  }

  private record NamedLine(String name, Coordinate[] line) {
    Coordinate first() {
      return line[0];
    }

    Coordinate last() {
      return line[line.length - 1];
    }
  }

  /** Joins lines at nodes where exactly two ends of one channel and no other meet. */
  private static Map<String, List<Coordinate[]>> join(List<NamedLine> lines) {
    Map<Coordinate, List<NamedLine>> atNode = new HashMap<>();
    for (NamedLine line : lines) {
      atNode.computeIfAbsent(line.first(), node -> new ArrayList<>()).add(line);
      atNode.computeIfAbsent(line.last(), node -> new ArrayList<>()).add(line);
    }
    List<NamedLine> ordered = new ArrayList<>(lines);
    ordered.sort(Comparator.comparing(NamedLine::line, BY_POSITION));
    Map<String, List<Coordinate[]>> joined = new TreeMap<>();
    Set<NamedLine> done = new HashSet<>();
    for (NamedLine line : ordered) {
      if (done.add(line)) {
        Coordinate[] forward = grow(line, line.line, atNode, done);
        Coordinate[] whole = reversed(grow(line, reversed(forward), atNode, done));
        boolean isFreeRing =
            whole[0].equals2D(whole[whole.length - 1]) && atNode.get(whole[0]).size() == 2;
        joined
            .computeIfAbsent(line.name, name -> new ArrayList<>())
            .add(fromWest(isFreeRing ? fromWesternVertex(whole) : whole));
      }
    }
    return joined;
  }

  /** Extends a path at its end as long as one unused line of the same channel goes on there. */
  private static Coordinate[] grow(
      NamedLine from,
      Coordinate[] path,
      Map<Coordinate, List<NamedLine>> atNode,
      Set<NamedLine> done) {
    CoordinateList grown = new CoordinateList(path);
    while (true) {
      Coordinate end = grown.getCoordinate(grown.size() - 1);
      List<NamedLine> meeting = atNode.get(end);
      NamedLine next =
          meeting.size() == 2
              ? meeting.stream()
                  .filter(line -> line.name.equals(from.name) && !done.contains(line))
                  .findFirst()
                  .orElse(null)
              : null;
      if (next == null) {
        return grown.toCoordinateArray();
      }
      done.add(next);
      Coordinate[] line = next.first().equals2D(end) ? next.line : reversed(next.line);
      grown.add(line, false);
    }
  }

  private static Coordinate[] reversed(Coordinate[] line) {
    Coordinate[] copy = line.clone();
    CoordinateArrays.reverse(copy);
    return copy;
  }

  private static Coordinate[] fromWest(Coordinate[] line) {
    int order = line[0].compareTo(line[line.length - 1]);
    if (order == 0) {
      order = line[1].compareTo(line[line.length - 2]);
    }
    return order <= 0 ? line : reversed(line);
  }

  private static Coordinate[] fromWesternVertex(Coordinate[] ring) {
    Coordinate[] open = Arrays.copyOf(ring, ring.length - 1);
    CoordinateArrays.scroll(open, CoordinateArrays.minCoordinate(open));
    Coordinate[] closed = Arrays.copyOf(open, ring.length);
    closed[ring.length - 1] = closed[0];
    return closed;
  }

  private List<LineString> pieces(Coordinate[] line) {
    LineString whole = factory.createLineString(line);
    double total = whole.getLength();
    int count = Math.max(1, (int) Math.round(total / factor(whole) / nominalMetres));
    List<LineString> pieces = new ArrayList<>();
    CoordinateList open = new CoordinateList();
    open.add(line[0]);
    double walked = 0;
    for (int v = 0; v + 1 < line.length; v++) {
      double length = line[v].distance(line[v + 1]);
      while (pieces.size() + 1 < count && total * (pieces.size() + 1) / count <= walked + length) {
        double fraction = (total * (pieces.size() + 1) / count - walked) / length;
        Coordinate cut =
            new Coordinate(
                line[v].x + fraction * (line[v + 1].x - line[v].x),
                line[v].y + fraction * (line[v + 1].y - line[v].y));
        open.add(cut, false);
        pieces.add(factory.createLineString(open.toCoordinateArray()));
        open = new CoordinateList();
        open.add(cut);
      }
      open.add(line[v + 1], false);
      walked += length;
    }
    pieces.add(factory.createLineString(open.toCoordinateArray()));
    return pieces;
  }
}
