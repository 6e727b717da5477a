package org.meadowmark.core.change.match;

import com.google.ortools.Loader;
import com.google.ortools.graph.MinCostFlow;
import com.google.ortools.graph.MinCostFlowBase;
import java.util.Map;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem.MinimumCostFlowProblemImpl;
import org.jgrapht.graph.DirectedWeightedMultigraph;

/**
 * Finds a flow of least cost: what each arc of a network carries.
 *
 * <p>The same network gives the same flow. Where several flows cost the same, the two solvers may
 * choose differently.
 */
enum FlowSolver {
  /** Cost scaling, in the native library of OR-Tools. */
  NATIVE {
    @Override
    long[] solve(FlowNetwork network) {
      MinCostFlow solver = new MinCostFlow(network.nodes(), network.arcs() + 1);
      try {
        for (int arc = 0; arc < network.arcs(); arc++) {
          solver.addArcWithCapacityAndUnitCost(
              network.tail(arc), network.head(arc), network.capacity(arc), network.cost(arc));
        }
        long supply = network.supply();
        solver.addArcWithCapacityAndUnitCost(FlowNetwork.SOURCE, FlowNetwork.SINK, supply, 0);
        solver.setNodeSupply(FlowNetwork.SOURCE, supply);
        solver.setNodeSupply(FlowNetwork.SINK, -supply);
        MinCostFlowBase.Status status = solver.solve();
        if (status != MinCostFlowBase.Status.OPTIMAL) {
          throw new IllegalStateException("no flow of least cost: " + status);
        }
        long[] flow = new long[network.arcs()];
        for (int arc = 0; arc < flow.length; arc++) {
          flow[arc] = solver.getFlow(arc);
        }
        return flow;
      } finally {
        solver.delete();
      }
    }
  },

  /** Capacity scaling, in JGraphT: for machines that the native library is not made for. */
  PORTABLE {
    @Override
    long[] solve(FlowNetwork network) {
      DirectedWeightedMultigraph<Integer, Integer> graph =
          new DirectedWeightedMultigraph<>(null, null);
      for (int node = 0; node < network.nodes(); node++) {
        graph.addVertex(node);
      }
      for (int arc = 0; arc < network.arcs(); arc++) {
        graph.addEdge(network.tail(arc), network.head(arc), arc);
        graph.setEdgeWeight(arc, network.cost(arc));
      }
      int around = network.arcs();
      int supply = Math.toIntExact(network.supply());
      graph.addEdge(FlowNetwork.SOURCE, FlowNetwork.SINK, around);
      graph.setEdgeWeight(around, 0);
      Map<Integer, Double> carried =
          new CapacityScalingMinimumCostFlow<Integer, Integer>()
              .getMinimumCostFlow(
                  new MinimumCostFlowProblemImpl<>(
                      graph,
                      node ->
                          node == FlowNetwork.SOURCE
                              ? supply
                              : node == FlowNetwork.SINK ? -supply : 0,
                      arc -> arc == around ? supply : Math.toIntExact(network.capacity(arc))))
              .getFlowMap();
      long[] flow = new long[network.arcs()];
      for (int arc = 0; arc < flow.length; arc++) {
        flow[arc] = Math.round(carried.get(arc));
      }
      return flow;
    }
  };

  private static final boolean NATIVE_RUNS = load();

  abstract long[] solve(FlowNetwork network);

  /** The native one where it runs. */
  static FlowSolver best() {
    return NATIVE_RUNS ? NATIVE : PORTABLE;
  }

  private static boolean load() {
    try {
      Loader.loadNativeLibraries();
      return true;
    } catch (RuntimeException | LinkageError e) {
      return false;
    }
  }
}
