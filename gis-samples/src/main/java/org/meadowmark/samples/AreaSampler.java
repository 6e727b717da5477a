package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/**
 * Points spread evenly over polygons. Safe for use by several threads.
 *
 * <p>A point takes O(log n) for n vertices and as many tries as the polygon's box is larger than
 * the polygon.
 */
final class AreaSampler {
  private static final int TRIES = 2_000;

  private final List<Polygon> polygons;
  private final List<IndexedPointInAreaLocator> locators = new ArrayList<>();
  private final double[] cumulative;

  AreaSampler(List<Polygon> polygons) {
    this.polygons = List.copyOf(polygons);
    this.cumulative = new double[polygons.size()];
    double sum = 0;
    for (int i = 0; i < cumulative.length; i++) {
      Polygon polygon = polygons.get(i);
      sum += polygon.getArea();
      cumulative[i] = sum;
      IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(polygon);
      // The first call builds the index; after it the locator is only read.
      locator.locate(polygon.getCoordinate());
      locators.add(locator);
    }
  }

  double areaSquareMetres() {
    return cumulative.length == 0 ? 0 : cumulative[cumulative.length - 1];
  }

  Coordinate draw(Draws draws) {
    double wanted = draws.uniform() * areaSquareMetres();
    int found = Arrays.binarySearch(cumulative, wanted);
    int index = Math.min(cumulative.length - 1, found < 0 ? -found - 1 : found + 1);
    Envelope box = polygons.get(index).getEnvelopeInternal();
    IndexedPointInAreaLocator locator = locators.get(index);
    for (int i = 0; i < TRIES; i++) {
      Coordinate point =
          new Coordinate(
              draws.between(box.getMinX(), box.getMaxX()),
              draws.between(box.getMinY(), box.getMaxY()));
      if (locator.locate(point) == Location.INTERIOR) {
        return point;
      }
    }
    return polygons.get(index).getInteriorPoint().getCoordinate();
  }
}
