package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * What scars do to one piece of mapped grass: the scarred part, and the pieces that are left.
 *
 * <p>A cluster of footprints strictly inside the grass becomes a hole, and the holes of the cluster
 * become pieces; only clusters that reach the outline need an overlay. Time is linear in the
 * vertices of inner clusters and n log n in those of the outline and of clusters that reach it.
 *
 * @param scarred union of footprints ∩ grass
 * @param pieces maximal connected pieces of grass without the footprints; pieces that meet only in
 *     a point are separate
 * @param cutters clusters that could have separated pieces: they reach the outline or enclose grass
 */
record Scarring(Geometry scarred, List<Polygon> pieces, List<FootprintClusters.Cluster> cutters) {

  static Scarring of(Geometry grass, FootprintClusters clusters) {
    List<FootprintClusters.Cluster> near = clusters.near(grass.getEnvelopeInternal());
    if (near.isEmpty()) {
      return new Scarring(grass.getFactory().createMultiPolygon(), polygonsOf(grass), List.of());
    }
    PreparedGeometry prepared = PreparedGeometryFactory.prepare(grass);
    List<FootprintClusters.Cluster> inner = new ArrayList<>();
    List<FootprintClusters.Cluster> cutters = new ArrayList<>();
    List<Polygon> crossing = new ArrayList<>();
    for (FootprintClusters.Cluster cluster : near) {
      if (cluster.area() instanceof Polygon && prepared.containsProperly(cluster.area())) {
        inner.add(cluster);
        if (((Polygon) cluster.area()).getNumInteriorRing() > 0) {
          cutters.add(cluster);
        }
      } else if (prepared.intersects(cluster.area())) {
        crossing.addAll(polygonsOf(cluster.area()));
        cutters.add(cluster);
      }
    }

    GeometryFactory factory = grass.getFactory();
    List<Polygon> scarred = new ArrayList<>(overlay(grass, crossing, OverlayNG.INTERSECTION));
    inner.forEach(cluster -> scarred.add((Polygon) cluster.area()));
    List<Polygon> pieces =
        new Faces(overlay(grass, crossing, OverlayNG.DIFFERENCE), inner, factory)
            .cutOut()
            .orElseGet(() -> overlay(grass, scarred, OverlayNG.DIFFERENCE));
    return new Scarring(
        factory.createMultiPolygon(scarred.toArray(Polygon[]::new)),
        List.copyOf(pieces),
        List.copyOf(cutters));
  }

  private static List<Polygon> overlay(Geometry grass, List<Polygon> shapes, int operation) {
    if (shapes.isEmpty()) {
      return operation == OverlayNG.DIFFERENCE ? polygonsOf(grass) : List.of();
    }
    Geometry shape = grass.getFactory().createMultiPolygon(shapes.toArray(Polygon[]::new));
    return polygonsOf(OverlayNGRobust.overlay(grass, shape, operation));
  }

  static List<Polygon> polygonsOf(Geometry geometry) {
    List<Polygon> polygons = new ArrayList<>();
    for (Object polygon : PolygonExtracter.getPolygons(geometry)) {
      if (!((Polygon) polygon).isEmpty()) {
        polygons.add((Polygon) polygon);
      }
    }
    return polygons;
  }

  /** Puts inner clusters as holes into the faces that contain them. */
  private static final class Faces {
    private static final class Face {
      final Polygon outline;
      final int owner;
      final double area;
      final List<LinearRing> cuts = new ArrayList<>();
      private IndexedPointInAreaLocator locator;

      Face(Polygon outline, int owner) {
        this.outline = outline;
        this.owner = owner;
        this.area = outline.getArea();
      }

      boolean contains(Coordinate point) {
        if (locator == null) {
          locator = new IndexedPointInAreaLocator(outline);
        }
        return locator.locate(point) == Location.INTERIOR;
      }
    }

    private static final int NO_OWNER = -1;

    private final List<Face> faces = new ArrayList<>();
    private final STRtree index = new STRtree();
    private final List<FootprintClusters.Cluster> inner;
    private final GeometryFactory factory;

    Faces(List<Polygon> pieces, List<FootprintClusters.Cluster> inner, GeometryFactory factory) {
      this.inner = inner;
      this.factory = factory;
      pieces.forEach(piece -> faces.add(new Face(piece, NO_OWNER)));
      for (int i = 0; i < inner.size(); i++) {
        Polygon area = (Polygon) inner.get(i).area();
        for (int hole = 0; hole < area.getNumInteriorRing(); hole++) {
          faces.add(new Face(factory.createPolygon(area.getInteriorRingN(hole)), i));
        }
      }
      faces.forEach(face -> index.insert(face.outline.getEnvelopeInternal(), face));
      index.build();
    }

    /** Empty where rounding in the overlay leaves a cluster outside every face. */
    Optional<List<Polygon>> cutOut() {
      for (int i = 0; i < inner.size(); i++) {
        LinearRing outline = ((Polygon) inner.get(i).area()).getExteriorRing();
        Optional<Face> face = smallestAround(outline.getCoordinateN(0), i);
        if (face.isEmpty()) {
          return Optional.empty();
        }
        face.get().cuts.add(outline);
      }
      return Optional.of(faces.stream().map(this::withCuts).toList());
    }

    private Optional<Face> smallestAround(Coordinate point, int cluster) {
      List<Face> around = StrTreeQuery.items(index, new Envelope(point));
      return around.stream()
          .filter(face -> face.owner != cluster)
          .sorted(Comparator.comparingDouble(face -> face.area))
          .filter(face -> face.contains(point))
          .findFirst();
    }

    private Polygon withCuts(Face face) {
      if (face.cuts.isEmpty()) {
        return face.outline;
      }
      List<LinearRing> holes = new ArrayList<>();
      for (int i = 0; i < face.outline.getNumInteriorRing(); i++) {
        holes.add(face.outline.getInteriorRingN(i));
      }
      holes.addAll(face.cuts);
      return factory.createPolygon(
          face.outline.getExteriorRing(), holes.toArray(LinearRing[]::new));
    }
  }
}
