package org.meadowmark.core.plan.layout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/**
 * A short way through places, from any to any: nearest neighbour from the westernmost place, then
 * exchanges of two legs (2-opt: Croes 1958, Operations Research 6:791–812, from memory) until none
 * shortens the way. No way is shorter than the shortest tree that joins the places (minimum
 * spanning tree, Prim 1957, Bell System Technical Journal 36:1389–1401, from memory). Straight
 * lines; land between is not looked at. Time n² a pass.
 *
 * @param order positions of the places in the order of visits
 * @param lengthMetres length of the way on the grid
 * @param lowerBoundMetres no way is shorter
 */
public record VisitOrder(List<Integer> order, double lengthMetres, double lowerBoundMetres) {
  /** More places than these are visited by the nearest neighbour alone. */
  private static final int MOST_FOR_EXCHANGE = 5_000;

  private static final int MOST_PASSES = 50;
  private static final double LEAST_GAIN = 1e-9;

  /**
   * Keeps a copy of the list that cannot be changed.
   *
   * @param order positions of the places in the order of visits
   * @param lengthMetres length of the way on the grid
   * @param lowerBoundMetres no way is shorter
   * @throws NullPointerException if the list or an entry of it is null
   */
  public VisitOrder {
    order = List.copyOf(order);
  }

  /**
   * {@return the way through places; starts at that of its ends which lies farther west}
   *
   * @param coordinates the places, on the grid
   */
  public static VisitOrder of(List<Coordinate> coordinates) {
    Places places = Places.of(coordinates);
    if (places.count() == 0) {
      return new VisitOrder(List.of(), 0, 0);
    }
    int[] way = nearestNeighbour(places);
    if (places.count() <= MOST_FOR_EXCHANGE) {
      exchange(way, places);
    }
    List<Integer> order = new ArrayList<>();
    for (int place : way) {
      order.add(place);
    }
    if (places.x()[way[way.length - 1]] < places.x()[way[0]]) {
      Collections.reverse(order);
    }
    double length = 0;
    for (int i = 1; i < way.length; i++) {
      length += distance(places, way[i - 1], way[i]);
    }
    return new VisitOrder(order, length, Math.min(length, treeLength(places)));
  }

  /** {@return the way as a multiple of the bound; 1 where there is no way to go} */
  public double ratioToBound() {
    return lowerBoundMetres > 0 ? lengthMetres / lowerBoundMetres : 1;
  }

  private static int[] nearestNeighbour(Places places) {
    int count = places.count();
    boolean[] visited = new boolean[count];
    int[] way = new int[count];
    int current = 0;
    for (int i = 1; i < count; i++) {
      if (places.x()[i] < places.x()[current]) {
        current = i;
      }
    }
    for (int step = 0; step < count; step++) {
      way[step] = current;
      visited[current] = true;
      int next = -1;
      for (int i = 0; i < count; i++) {
        if (!visited[i]
            && (next < 0 || places.squared(current, i) < places.squared(current, next))) {
          next = i;
        }
      }
      current = next;
    }
    return way;
  }

  /** Turns a stretch round where that shortens the way; either end of the way may be turned. */
  private static void exchange(int[] way, Places places) {
    boolean shorter = true;
    for (int pass = 0; shorter && pass < MOST_PASSES; pass++) {
      shorter = false;
      for (int from = 0; from < way.length - 1; from++) {
        for (int to = from + 1; to < way.length; to++) {
          double gain = 0;
          if (from > 0) {
            gain +=
                distance(places, way[from - 1], way[from])
                    - distance(places, way[from - 1], way[to]);
          }
          if (to < way.length - 1) {
            gain +=
                distance(places, way[to], way[to + 1]) - distance(places, way[from], way[to + 1]);
          }
          if (gain > LEAST_GAIN) {
            turn(way, from, to);
            shorter = true;
          }
        }
      }
    }
  }

  private static void turn(int[] way, int from, int to) {
    for (int a = from, b = to; a < b; a++, b--) {
      int kept = way[a];
      way[a] = way[b];
      way[b] = kept;
    }
  }

  private static double treeLength(Places places) {
    int count = places.count();
    boolean[] joined = new boolean[count];
    double[] nearest = new double[count];
    Arrays.fill(nearest, Double.POSITIVE_INFINITY);
    nearest[0] = 0;
    double sum = 0;
    for (int step = 0; step < count; step++) {
      int next = -1;
      for (int i = 0; i < count; i++) {
        if (!joined[i] && (next < 0 || nearest[i] < nearest[next])) {
          next = i;
        }
      }
      joined[next] = true;
      sum += Math.sqrt(nearest[next]);
      for (int i = 0; i < count; i++) {
        if (!joined[i]) {
          nearest[i] = Math.min(nearest[i], places.squared(next, i));
        }
      }
    }
    return sum;
  }

  private static double distance(Places places, int a, int b) {
    return Math.sqrt(places.squared(a, b));
  }

  /** Ordinates in arrays: passes over all pairs take their time. */
  private record Places(double[] x, double[] y) {
    private static Places of(List<Coordinate> coordinates) {
      return new Places(
          coordinates.stream().mapToDouble(Coordinate::getX).toArray(),
          coordinates.stream().mapToDouble(Coordinate::getY).toArray());
    }

    private int count() {
      return x.length;
    }

    private double squared(int a, int b) {
      double dx = x[a] - x[b];
      double dy = y[a] - y[b];
      return dx * dx + dy * dy;
    }
  }
}
