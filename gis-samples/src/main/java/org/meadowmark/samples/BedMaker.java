package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.coverage.CoverageSimplifier;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * Turns fields into polygons: beds between contours of grass, depth and texture, and land. Beds
 * that touch share their edges exactly.
 */
final class BedMaker {
  private static final double SMALLEST_BED_SQUARE_METRES = 450;
  private static final double MERGED_BELOW_SQUARE_METRES = 2_500;
  private static final double SMALLEST_LAND_SQUARE_METRES = 900;
  private static final double SIMPLIFIED_BY_METRES = 2;

  /** Depth limits between species: common practice, no source; only the order is believable. */
  private static final double SHOALGRASS_TO_METRES = 0.70;

  private static final double TURTLEGRASS_TO_METRES = 1.45;

  private final Terrain terrain;
  private final GeometryFactory factory;

  BedMaker(Terrain terrain, GeometryFactory factory) {
    this.terrain = terrain;
    this.factory = factory;
  }

  /** A bed in local metres. */
  record Outline(Polygon polygon, String species, String texture) {}

  List<Outline> beds(int most) {
    FieldGrid grass = terrain.grass();
    Contours.Cells grassy =
        (column, row) ->
            grass.get(column, row) >= 0
                || grass.get(column + 1, row) >= 0
                || grass.get(column, row + 1) >= 0
                || grass.get(column + 1, row + 1) >= 0;
    Contours contours = new Contours(factory);
    contours.add(grass, 0, grassy);
    contours.add(terrain.depth(), SHOALGRASS_TO_METRES, grassy);
    contours.add(terrain.depth(), TURTLEGRASS_TO_METRES, grassy);
    contours.add(terrain.texture(), 0, grassy);
    contours.add(terrain.cover(), 0, grassy);
    List<Polygon> faces =
        new ArrayList<>(
            SmallFaces.merged(
                contours.faces(0, inner -> grass.at(inner.getX(), inner.getY()) >= 0),
                MERGED_BELOW_SQUARE_METRES));
    faces.removeIf(face -> face.getArea() < SMALLEST_BED_SQUARE_METRES);
    faces.sort(Comparator.comparingDouble(Polygon::getArea).reversed());
    List<Polygon> kept = new ArrayList<>(faces.subList(0, Math.min(most, faces.size())));
    kept.sort(Geometry::compareTo);
    return simplified(kept).stream().map(this::outline).toList();
  }

  List<Polygon> land() {
    Contours contours = new Contours(factory);
    contours.add(terrain.land(), 0, (column, row) -> true);
    return simplified(
        contours.faces(
            SMALLEST_LAND_SQUARE_METRES,
            inner -> terrain.land().at(inner.getX(), inner.getY()) >= 0));
  }

  private static List<Polygon> simplified(List<Polygon> faces) {
    List<Polygon> result = new ArrayList<>();
    for (Geometry face :
        CoverageSimplifier.simplify(faces.toArray(Geometry[]::new), SIMPLIFIED_BY_METRES)) {
      result.add((Polygon) face);
    }
    return result;
  }

  private Outline outline(Polygon polygon) {
    Point inner = polygon.getInteriorPoint();
    double depth = terrain.depth().at(inner.getX(), inner.getY());
    String species = "manateegrass";
    if (depth < SHOALGRASS_TO_METRES) {
      species = "shoalgrass";
    } else if (depth < TURTLEGRASS_TO_METRES) {
      species = "turtlegrass";
    }
    boolean patchy = terrain.texture().at(inner.getX(), inner.getY()) >= 0;
    return new Outline(polygon, species, patchy ? "patchy" : "continuous");
  }
}
