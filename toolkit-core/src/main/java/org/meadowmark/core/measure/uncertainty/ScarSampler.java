package org.meadowmark.core.measure.uncertainty;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.Location;

/**
 * Turns a batch of scars into what has to be looked at in every draw: sample points where an edge
 * of the grass or another scar is in reach, and one number a scar for the rest of it, which only
 * grows and shrinks with its width.
 *
 * <p>A line is cut at the edges that it crosses and into stretches of about its width or half the
 * standard deviation of its shift, whichever is more. The point of a stretch lies in its middle;
 * how far to the side follows the golden ratio sequence, which fills the width evenly. A polygon
 * has points on a square grid.
 */
final class ScarSampler {
  private static final double GOLDEN_RATIO = (1 + Math.sqrt(5)) / 2;
  private static final double STRETCH_SHIFT = 0.5;
  private static final int MOST_STRETCHES = 100;
  private static final int AREA_POINTS = 100;
  private static final int MOST_GRID_LINES = 300;

  private final ScarLayer layer;
  private final GrassOutline grass;
  private final Envelope grassEnvelope;
  private final double areaFactor;

  private final Map<Integer, Integer> places = new HashMap<>();
  private final List<Integer> scars = new ArrayList<>();
  private final Map<Integer, List<Cover>> covers = new HashMap<>();
  private final List<SamplePoint> points = new ArrayList<>();
  private final List<Double> steady = new ArrayList<>();

  ScarSampler(ScarLayer layer, GrassOutline grass, Envelope grassEnvelope, double areaFactor) {
    this.layer = layer;
    this.grass = grass;
    this.grassEnvelope = grassEnvelope;
    this.areaFactor = areaFactor;
  }

  /** Scars in use, batch members and those they meet, by place in the batch. */
  List<Integer> scars() {
    return scars;
  }

  List<SamplePoint> points() {
    return points;
  }

  /** Ground area of a scar, by place, that changes with its width alone. */
  double[] steadyAreas() {
    return steady.stream().mapToDouble(Double::doubleValue).toArray();
  }

  void add(int scar) {
    int place = place(scar);
    List<Cover> near = new ArrayList<>();
    Envelope around = new Envelope(layer.scar(scar).geometry().getEnvelopeInternal());
    for (int other : layer.meeting(scar)) {
      Envelope reached = new Envelope(around);
      reached.expandBy(layer.reach(scar, other));
      for (Cover cover : coversOf(other)) {
        if (reached.intersects(cover.envelope())) {
          near.add(cover);
        }
      }
    }
    if (layer.scar(scar).geometry().getDimension() == 2) {
      addArea(scar, place, near);
    } else {
      addLine(scar, place, near);
    }
  }

  private int place(int scar) {
    return places.computeIfAbsent(
        scar,
        key -> {
          scars.add(key);
          steady.add(0.0);
          return scars.size() - 1;
        });
  }

  private List<Cover> coversOf(int scar) {
    List<Cover> known = covers.get(scar);
    if (known == null) {
      known = layer.covers(scar, place(scar));
      covers.put(scar, known);
    }
    return known;
  }

  private void addLine(int scar, int place, List<Cover> near) {
    Geometry geometry = layer.scar(scar).geometry();
    double stretch = stretchLength(scar);
    int number = 0;
    for (int part = 0; part < geometry.getNumGeometries(); part++) {
      Coordinate[] line = geometry.getGeometryN(part).getCoordinates();
      for (int i = 1; i < line.length; i++) {
        if (!line[i - 1].equals2D(line[i])) {
          number += addSegment(scar, place, line[i - 1], line[i], stretch, near, number);
        }
      }
    }
  }

  private double stretchLength(int scar) {
    UncertainScar uncertain = layer.scar(scar);
    Envelope reached = new Envelope(grassEnvelope);
    reached.expandBy(layer.reach(scar));
    Envelope shared = reached.intersection(uncertain.geometry().getEnvelopeInternal());
    double length = Math.min(uncertain.geometry().getLength(), 2 * shared.getDiameter());
    return Math.max(
        Math.max(uncertain.gridWidthMetres(), STRETCH_SHIFT * layer.errors(scar).shiftDeviation()),
        length / MOST_STRETCHES);
  }

  private int addSegment(
      int scar, int place, Coordinate a, Coordinate b, double stretch, List<Cover> near, int from) {
    Envelope segment = new Envelope(a, b);
    Envelope reached = new Envelope(segment);
    reached.expandBy(layer.reach(scar));
    if (!reached.intersects(grassEnvelope)) {
      return 0;
    }
    List<LineSegment> edges = grass.near(reached);
    List<Cover> local = inReach(near, scar, segment);
    double width = layer.scar(scar).gridWidthMetres();
    double length = a.distance(b);
    if (edges.isEmpty() && local.isEmpty()) {
      if (grass.contains((a.x + b.x) / 2, (a.y + b.y) / 2)) {
        addSteady(place, length * width / areaFactor);
      }
      return 0;
    }
    double acrossX = -(b.y - a.y) / length * width;
    double acrossY = (b.x - a.x) / length * width;
    boolean allInside = edges.isEmpty() && grass.contains(a.x, a.y);
    double[] cuts = cuts(a, b, edges);
    int number = 0;
    for (int cut = 1; cut < cuts.length; cut++) {
      double share = cuts[cut] - cuts[cut - 1];
      int count = (int) Math.ceil(share * length / stretch);
      for (int i = 0; i < count; i++) {
        double along = cuts[cut - 1] + share * (i + 0.5) / count;
        double side = fraction((from + number + 0.5) * GOLDEN_RATIO) - 0.5;
        number++;
        double x = a.x + along * (b.x - a.x);
        double y = a.y + along * (b.y - a.y);
        double area = share * length / count * width / areaFactor;
        double[] nearEdges = inReach(edges, x, y, layer.reach(scar));
        Cover[] nearCovers = inReach(local, scar, x, y);
        boolean inside =
            edges.isEmpty() ? allInside : grass.contains(x + side * acrossX, y + side * acrossY);
        if (nearEdges.length > 0 || inside && nearCovers.length > 0) {
          points.add(
              new SamplePoint(
                  place,
                  x,
                  y,
                  side * acrossX,
                  side * acrossY,
                  area,
                  inside,
                  nearEdges,
                  nearCovers));
        } else if (inside) {
          addSteady(place, area);
        }
      }
    }
    return number;
  }

  private void addArea(int scar, int place, List<Cover> near) {
    Geometry outline = layer.scar(scar).geometry();
    Envelope box = outline.getEnvelopeInternal();
    Envelope reached = new Envelope(box);
    double reach = layer.reach(scar);
    reached.expandBy(reach);
    List<LineSegment> edges = grass.near(reached);
    if (edges.isEmpty() && near.isEmpty()) {
      return;
    }
    List<Coordinate> inOutline = gridPoints(outline, box);
    double area = outline.getArea() / inOutline.size() / areaFactor;
    for (Coordinate point : inOutline) {
      double[] nearEdges = inReach(edges, point.x, point.y, reach);
      Cover[] nearCovers = inReach(near, scar, point.x, point.y);
      boolean inside = grass.contains(point.x, point.y);
      if (nearEdges.length > 0 || inside && nearCovers.length > 0) {
        points.add(
            new SamplePoint(place, point.x, point.y, 0, 0, area, inside, nearEdges, nearCovers));
      }
    }
  }

  private static List<Coordinate> gridPoints(Geometry outline, Envelope box) {
    double step =
        Math.max(Math.sqrt(outline.getArea() / AREA_POINTS), box.getDiameter() / MOST_GRID_LINES);
    IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(outline);
    List<Coordinate> found = new ArrayList<>();
    for (double y = box.getMinY() + step / 2; y < box.getMaxY(); y += step) {
      for (double x = box.getMinX() + step / 2; x < box.getMaxX(); x += step) {
        Coordinate point = new Coordinate(x, y);
        if (locator.locate(point) == Location.INTERIOR) {
          found.add(point);
        }
      }
    }
    return found.isEmpty() ? List.of(outline.getInteriorPoint().getCoordinate()) : found;
  }

  private void addSteady(int place, double area) {
    steady.set(place, steady.get(place) + area);
  }

  private static double[] cuts(Coordinate a, Coordinate b, List<LineSegment> edges) {
    LineSegment segment = new LineSegment(a, b);
    List<Double> cuts = new ArrayList<>(List.of(0.0, 1.0));
    for (LineSegment edge : edges) {
      Coordinate crossing = segment.intersection(edge);
      if (crossing != null) {
        cuts.add(segment.segmentFraction(crossing));
      }
    }
    return cuts.stream().mapToDouble(Double::doubleValue).sorted().distinct().toArray();
  }

  private List<Cover> inReach(List<Cover> near, int scar, Envelope segment) {
    List<Cover> found = new ArrayList<>();
    for (Cover cover : near) {
      Envelope around = new Envelope(cover.envelope());
      around.expandBy(layer.reach(scar, scars.get(cover.scar())));
      if (around.intersects(segment)) {
        found.add(cover);
      }
    }
    return found;
  }

  private Cover[] inReach(List<Cover> near, int scar, double x, double y) {
    List<Cover> found = new ArrayList<>();
    for (Cover cover : near) {
      if (cover.distance(x, y) <= layer.reach(scar, scars.get(cover.scar()))) {
        found.add(cover);
      }
    }
    return found.toArray(Cover[]::new);
  }

  private static double[] inReach(List<LineSegment> edges, double x, double y, double reach) {
    Coordinate point = new Coordinate(x, y);
    return edges.stream()
        .filter(edge -> edge.distance(point) <= reach)
        .flatMap(edge -> Stream.of(edge.p0, edge.p1))
        .flatMapToDouble(end -> DoubleStream.of(end.x, end.y))
        .toArray();
  }

  private static double fraction(double value) {
    return value - Math.floor(value);
  }
}
