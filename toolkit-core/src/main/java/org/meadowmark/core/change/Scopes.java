package org.meadowmark.core.change;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.linearref.LengthIndexedLine;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;

/**
 * Tells which management area a scar or bed counts in: the one that holds its middle, of several
 * the first by id. So every scar counts once and the areas add up to the whole.
 */
public final class Scopes {
  private final List<Scope> areas = new ArrayList<>();
  private final List<PreparedGeometry> shapes = new ArrayList<>();
  private final GeometryFactory factory = new GeometryFactory();

  /**
   * Scopes of management areas in id order.
   *
   * @param managementAreas the areas, in id order, on the grid of what will be asked for
   */
  public Scopes(List<MapArea> managementAreas) {
    for (MapArea area : managementAreas) {
      areas.add(new Scope(Kind.MANAGEMENT_AREA, area.id(), area.label()));
      shapes.add(PreparedGeometryFactory.prepare(area.geometry()));
    }
  }

  /**
   * {@return management areas, then outside, then the whole survey; without areas only the whole}
   */
  public List<Scope> all() {
    List<Scope> all = new ArrayList<>(areas);
    if (!areas.isEmpty()) {
      all.add(Scope.OUTSIDE);
    }
    all.add(Scope.WHOLE);
    return all;
  }

  /** Management areas only. */
  List<PreparedGeometry> shapes() {
    return shapes;
  }

  /**
   * {@return the scope of a scar, below the whole survey}
   *
   * @param scar a scar on the grid of the areas
   */
  public Scope of(Scar scar) {
    return of(middle(scar.geometry()));
  }

  /**
   * {@return the scope of any polygon, below the whole survey}
   *
   * @param polygon a polygon on the grid of the areas; a point inside it decides
   */
  public Scope ofPolygon(Geometry polygon) {
    return of(polygon.getInteriorPoint().getCoordinate());
  }

  private static Coordinate middle(Geometry geometry) {
    return geometry.getDimension() == 1
        ? new LengthIndexedLine(geometry).extractPoint(geometry.getLength() / 2)
        : geometry.getInteriorPoint().getCoordinate();
  }

  private Scope of(Coordinate point) {
    for (int i = 0; i < areas.size(); i++) {
      if (shapes.get(i).covers(factory.createPoint(point))) {
        return areas.get(i);
      }
    }
    return Scope.OUTSIDE;
  }
}
