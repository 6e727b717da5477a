package org.meadowmark.core.change.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Two solvers of different make, by different algorithms, must find flows of the same worth. */
class FlowSolverTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void bothSolversFindTheSameLeastCost(long seed) {
    Random random = new Random(seed);
    FlowNetwork network = new FlowNetwork();
    int[] left = new int[3 + random.nextInt(12)];
    int[] right = new int[3 + random.nextInt(12)];
    for (int i = 0; i < left.length; i++) {
      left[i] = network.addNode();
      network.addArc(FlowNetwork.SOURCE, left[i], 1 + random.nextInt(50_000), 0);
    }
    for (int i = 0; i < right.length; i++) {
      right[i] = network.addNode();
      network.addArc(right[i], FlowNetwork.SINK, 1 + random.nextInt(50_000), 0);
    }
    for (int from : left) {
      for (int to : right) {
        if (random.nextInt(3) == 0) {
          network.addArc(from, to, 1 + random.nextInt(40_000), -1 - random.nextInt(10_000));
        }
      }
    }
    long one = cost(network, FlowSolver.NATIVE.solve(network));
    long other = cost(network, FlowSolver.PORTABLE.solve(network));
    assertThat(one).isNegative();
    assertThat(other).isEqualTo(one);
  }

  private static long cost(FlowNetwork network, long[] flow) {
    long[] balance = new long[network.nodes()];
    long cost = 0;
    for (int arc = 0; arc < flow.length; arc++) {
      assertThat(flow[arc]).isBetween(0L, network.capacity(arc));
      balance[network.tail(arc)] -= flow[arc];
      balance[network.head(arc)] += flow[arc];
      cost += flow[arc] * network.cost(arc);
    }
    for (int node = 2; node < balance.length; node++) {
      assertThat(balance[node]).isZero();
    }
    return cost;
  }
}
