package org.meadowmark.core.rank.statistics;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.stream.IntStream;
import org.meadowmark.core.rank.network.SegmentNetwork;

/**
 * Segments near a segment along the channels, itself among them.
 *
 * <p>The distance of two segments is from middle to middle along the network. Metres and not steps,
 * so that a channel cut finer has the same neighbourhoods on the ground. Time is n log n for
 * neighbourhoods of bounded size.
 */
public final class NetworkNeighbours {
  private record Reached(int segment, double metres) {}

  private NetworkNeighbours() {}

  /**
   * {@return positions of the neighbours of each segment, itself among them, ascending}
   *
   * @param network how the segments hang together, and how long they are
   * @param metres largest distance from middle to middle along the channels, ground metres
   */
  public static int[][] within(SegmentNetwork network, double metres) {
    return IntStream.range(0, network.size())
        .parallel()
        .mapToObj(segment -> around(network, segment, metres))
        .toArray(int[][]::new);
  }

  private static int[] around(SegmentNetwork network, int from, double limitMetres) {
    Map<Integer, Double> nearest = new HashMap<>();
    PriorityQueue<Reached> open = new PriorityQueue<>(Comparator.comparingDouble(Reached::metres));
    nearest.put(from, 0.0);
    open.add(new Reached(from, 0));
    while (!open.isEmpty()) {
      Reached here = open.poll();
      if (here.metres > nearest.get(here.segment)) {
        continue;
      }
      for (int next : network.neighbours(here.segment)) {
        double step = (network.lengthMetres(here.segment) + network.lengthMetres(next)) / 2;
        double metres = here.metres + step;
        Double known = nearest.get(next);
        if (metres <= limitMetres && (known == null || metres < known)) {
          nearest.put(next, metres);
          open.add(new Reached(next, metres));
        }
      }
    }
    int[] positions = nearest.keySet().stream().mapToInt(Integer::intValue).toArray();
    Arrays.sort(positions);
    return positions;
  }
}
