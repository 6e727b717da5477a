package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.TreeMap;
import org.jgrapht.alg.util.UnionFind;
import org.locationtech.jts.coverage.CoverageUnion;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.index.strtree.STRtree;

/** Joins small faces of a coverage to the neighbour that they share most edge with. */
final class SmallFaces {
  private SmallFaces() {}

  /** Faces in the order of their first part; a small face with no neighbour stays as it is. */
  static List<Polygon> merged(List<Polygon> faces, double smallSquareMetres) {
    STRtree index = new STRtree();
    UnionFind<Integer> groups = new UnionFind<>(new HashSet<>());
    for (int i = 0; i < faces.size(); i++) {
      index.insert(faces.get(i).getEnvelopeInternal(), i);
      groups.addElement(i);
    }
    for (int i = 0; i < faces.size(); i++) {
      if (faces.get(i).getArea() < smallSquareMetres) {
        int neighbour = closest(faces, i, index);
        if (neighbour >= 0) {
          groups.union(i, neighbour);
        }
      }
    }
    TreeMap<Integer, List<Geometry>> parts = new TreeMap<>();
    TreeMap<Integer, Integer> firstOfGroup = new TreeMap<>();
    for (int i = 0; i < faces.size(); i++) {
      int first = firstOfGroup.computeIfAbsent(groups.find(i), group -> parts.size());
      parts.computeIfAbsent(first, group -> new ArrayList<>()).add(faces.get(i));
    }
    List<Polygon> merged = new ArrayList<>();
    for (List<Geometry> group : parts.values()) {
      Geometry union = CoverageUnion.union(group.toArray(Geometry[]::new));
      for (Object part : PolygonExtracter.getPolygons(union)) {
        Polygon polygon = (Polygon) part;
        polygon.normalize();
        merged.add(polygon);
      }
    }
    return merged;
  }

  private static int closest(List<Polygon> faces, int face, STRtree index) {
    List<Integer> near = new ArrayList<>();
    for (Object found : index.query(faces.get(face).getEnvelopeInternal())) {
      near.add((Integer) found);
    }
    near.sort(Integer::compare);
    int best = -1;
    double longest = 0;
    for (int other : near) {
      if (other != face) {
        double shared =
            faces.get(face).getBoundary().intersection(faces.get(other).getBoundary()).getLength();
        if (shared > longest) {
          longest = shared;
          best = other;
        }
      }
    }
    return best;
  }
}
