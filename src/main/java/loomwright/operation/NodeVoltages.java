package loomwright.operation;

import loomwright.circuit.Part;
import loomwright.network.Solution;

/** What a meter shows between two nodes. */
final class NodeVoltages {
    private NodeVoltages() {}

    /**
     * Voltage of {@code node} against {@code other}, V; 0 between nodes that nothing joins, where a meter finds its own
     * resistance the only path.
     */
    static double across(Solution solution, int node, int other) {
        return solution.island(node) == solution.island(other) ? solution.voltageV(node) - solution.voltageV(other) : 0;
    }

    /** A meter at the terminals of one part. */
    static Threshold.Meter meterAt(Part part, Wiring wiring, Solution solution) {
        return (terminal, other) -> across(solution, wiring.node(part, terminal), wiring.node(part, other));
    }
}
