package org.lensward.lens.stock;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jgrapht.Graph;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem.MinimumCostFlowProblemImpl;
import org.jgrapht.graph.AsWeightedGraph;
import org.jgrapht.graph.SimpleDirectedGraph;

/**
 * A flow of least first cost, of those one of least second cost, and so on; exact, since no cost is weighed against another. After each
 * cost only the flows of least cost are kept: by complementary slackness they are those that leave every arc of positive reduced cost
 * empty and fill every arc of negative reduced cost (Ahuja, Magnanti and Orlin, Network Flows, 1993, section 9.3). Costs and capacities
 * are whole numbers, so potentials are exact in double precision.
 *
 * @param <V> places the flow passes
 */
final class LexicographicFlow<V> {

    /** Successive shortest paths: capacities are small, so scaling gains nothing. */
    private static final int NO_SCALING = 1;

    /** A way for the flow; as an edge of the graph, one is never equal to another. */
    static final class Arc<V> {

        private final V from;
        private final V to;
        private final int capacity;
        private final List<Integer> costs;

        /**
         * An arc.
         *
         * @param capacity most that may pass
         * @param costs of one unit of flow, the first cost first; not negative
         */
        Arc(V from, V to, int capacity, List<Integer> costs) {
            this.from = from;
            this.to = to;
            this.capacity = capacity;
            this.costs = costs;
        }

        V from() {
            return from;
        }

        V to() {
            return to;
        }
    }

    private record Bounds(int least, int most) {}

    private final Map<V, Integer> supplies;
    private final Map<Arc<V>, Bounds> bounds = new LinkedHashMap<>();
    private Map<Arc<V>, Double> flow = Map.of();

    private LexicographicFlow(Map<V, Integer> supplies, List<Arc<V>> arcs) {
        this.supplies = supplies;
        arcs.forEach(arc -> bounds.put(arc, new Bounds(0, arc.capacity)));
    }

    /**
     * What passes each arc; some flow must be possible.
     *
     * @param supplies of every place in order; nought where the flow only passes, negative where it ends
     * @param arcs at least one, each with one cost for every rank
     */
    static <V> Map<Arc<V>, Integer> least(Map<V, Integer> supplies, List<Arc<V>> arcs) {
        LexicographicFlow<V> search = new LexicographicFlow<>(supplies, arcs);
        int ranks = arcs.get(0).costs.size();
        for (int rank = 0; rank < ranks; rank++) {
            int current = rank;
            // A cost that is nought everywhere decides nothing, but the last one must find the flow.
            if (rank == ranks - 1 || arcs.stream().anyMatch(arc -> arc.costs.get(current) > 0)) {
                search.minimise(rank);
            }
        }
        Map<Arc<V>, Integer> whole = new LinkedHashMap<>();
        arcs.forEach(arc -> whole.put(arc, (int) Math.round(search.flow.getOrDefault(arc, 0.0))));
        return whole;
    }

    private void minimise(int rank) {
        Graph<V, Arc<V>> weighted = new AsWeightedGraph<>(graph(), arc -> (double) arc.costs.get(rank), false, false);
        CapacityScalingMinimumCostFlow<V, Arc<V>> algorithm = new CapacityScalingMinimumCostFlow<>(NO_SCALING);
        flow = algorithm
                .getMinimumCostFlow(new MinimumCostFlowProblemImpl<>(
                        weighted, supplies::get, arc -> within(arc).most(), arc -> within(arc)
                                .least()))
                .getFlowMap();
        Map<V, Double> potentials = algorithm.getDualSolution();
        bounds.replaceAll((arc, range) -> {
            double rise =
                    Objects.requireNonNull(potentials.get(arc.to)) - Objects.requireNonNull(potentials.get(arc.from));
            double reduced = arc.costs.get(rank) + rise;
            return reduced > 0
                    ? new Bounds(range.least(), range.least())
                    : reduced < 0 ? new Bounds(range.most(), range.most()) : range;
        });
    }

    private Bounds within(Arc<V> arc) {
        return bounds.getOrDefault(arc, new Bounds(0, 0));
    }

    private Graph<V, Arc<V>> graph() {
        Graph<V, Arc<V>> graph = new SimpleDirectedGraph<>(null, null, false);
        supplies.keySet().forEach(graph::addVertex);
        bounds.keySet().forEach(arc -> graph.addEdge(arc.from, arc.to, arc));
        return graph;
    }
}
