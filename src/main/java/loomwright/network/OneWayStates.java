package loomwright.network;

import java.util.ArrayList;
import java.util.List;

/**
 * The state of each one-way element: blocking, conducting or at its limit. With the states fixed, each is a plain
 * linear branch, blocking ones truly open, and afterwards it shows whether the states were right.
 */
final class OneWayStates {
    private static final double TOLERANCE = 1e-9;

    private enum State {
        BLOCKING,
        CONDUCTING,
        LIMITED
    }

    private final Branch[] free;
    private final State[] states;
    /** Elements that were found to block after all: they give no island its potential. */
    private final boolean[] proved;

    /**
     * Reads the states off a solution.
     *
     * @param free the branches with one-way elements as they are
     * @param driveV their drives
     */
    OneWayStates(Branch[] free, double[] driveV) {
        this.free = free;
        states = new State[free.length];
        proved = new boolean[free.length];
        for (int b = 0; b < free.length; b++) {
            if (free[b] instanceof Branch.OneWayBranch oneWay) {
                double a = oneWay.currentA(driveV[b]);
                states[b] = a <= 0 ? State.BLOCKING : a >= oneWay.limitA ? State.LIMITED : State.CONDUCTING;
            }
        }
    }

    /** The branches with each one-way element replaced by what it is in its state. */
    Branch[] fixed(Network network) {
        Branch[] fixed = free.clone();
        for (int b = 0; b < free.length; b++) {
            if (network.elements().get(b) instanceof OneWay o) {
                fixed[b] = switch (states[b]) {
                    case BLOCKING -> new Branch.Linear(o.from(), o.to(), 0, 0, 0);
                    case LIMITED -> new Branch.Linear(o.from(), o.to(), 0, 0, o.limitA());
                    case CONDUCTING ->
                        o.slopeOhm() == 0
                                ? new Branch.Ideal(o.from(), o.to(), o.thresholdV())
                                : new Branch.Linear(o.from(), o.to(), -o.thresholdV(), 1 / o.slopeOhm(), 0);
                };
            }
        }
        return fixed;
    }

    /**
     * Lets blocking elements that stand at their very threshold conduct where that gives an island its potential: the
     * open end of a diode shows the voltage behind it.
     */
    void bridgeIslands(Islands islands, Contraction contraction, double[] voltageV, double scaleV) {
        NodeSets joined = new NodeSets(islands.count);
        for (int b = 0; b < free.length; b++) {
            if (states[b] == State.BLOCKING && !proved[b] && free[b] instanceof Branch.OneWayBranch oneWay) {
                int from = islands.islandOf[contraction.superOf[oneWay.from]];
                int to = islands.islandOf[contraction.superOf[oneWay.to]];
                if (voltageV[b] + oneWay.biasV >= -TOLERANCE * scaleV && joined.join(from, to)) {
                    states[b] = State.CONDUCTING;
                }
            }
        }
    }

    /** The elements that contradict their states in a solution with these states fixed. */
    List<Integer> contradicted(Network network, Outcome outcome, double[] voltageV, double scaleV, double scaleA) {
        List<Integer> wrong = new ArrayList<>();
        for (int b = 0; b < free.length; b++) {
            if (network.elements().get(b) instanceof OneWay o) {
                double a = outcome.currentA[b];
                boolean sameIsland = outcome.islandOf[o.from()] == outcome.islandOf[o.to()];
                double v = voltageV[b];
                boolean right = switch (states[b]) {
                    case BLOCKING -> !sameIsland || v <= o.thresholdV() + TOLERANCE * scaleV;
                    case CONDUCTING ->
                        !outcome.determined[b] || (a >= -TOLERANCE * scaleA && a <= o.limitA() + TOLERANCE * scaleA);
                    case LIMITED -> !sameIsland || v >= o.thresholdV() + o.slopeOhm() * o.limitA() - TOLERANCE * scaleV;
                };
                if (!right) {
                    wrong.add(b);
                }
            }
        }
        return wrong;
    }

    /** Changes an element to the state that its solution points to. */
    void change(int branch, Outcome outcome) {
        states[branch] = switch (states[branch]) {
            case BLOCKING, LIMITED -> State.CONDUCTING;
            case CONDUCTING -> outcome.currentA[branch] < 0 ? State.BLOCKING : State.LIMITED;
        };
        proved[branch] |= states[branch] == State.BLOCKING;
    }
}
