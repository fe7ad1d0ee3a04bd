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
     * Whether the branches obey the laws of the elements beyond doubt: none that conducts has a slope taken larger than
     * it is, or so little current that this may be rounding.
     */
    boolean asInLaw(Network network, OperatingPoint point) {
        for (int b = 0; b < free.length; b++) {
            if (states[b] == State.CONDUCTING
                    && free[b] instanceof Branch.OneWayBranch soft
                    && network.elements().get(b) instanceof OneWay o
                    && (soft.slopeOhm != o.slopeOhm() || point.current[b] <= TOLERANCE * point.largestA())) {
                return false;
            }
        }
        return true;
    }

    /**
     * The blocking elements that conduct to give an island its potential: the open end of a diode shows the voltage
     * behind it. An island may stand anywhere between the thresholds around it; as in a real circuit the least leak draws
     * it towards the reference, until the first element is at its threshold.
     *
     * @param point with the islands as they are
     * @param voltageV of each branch, with the scale of these
     */
    List<Integer> bridges(OperatingPoint point, double[] voltageV, double scaleV) {
        Islands islands = point.islands();
        if (islands.count == 1) {
            return List.of();
        }
        List<Integer> bridges = new ArrayList<>();
        double[] shiftV = leaked(islands, point.contraction, point.nodeV(), voltageV);
        NodeSets joined = new NodeSets(islands.count);
        for (int b = 0; b < free.length; b++) {
            if (mayBridge(b)) {
                int from = islands.islandOf[point.from[b]];
                int to = islands.islandOf[point.to[b]];
                double driveV = voltageV[b] + free[b].biasV + shiftV[from] - shiftV[to];
                if (driveV >= -TOLERANCE * scaleV && joined.join(from, to)) {
                    bridges.add(b);
                }
            }
        }
        return bridges;
    }

    void conduct(List<Integer> elements) {
        elements.forEach(b -> states[b] = State.CONDUCTING);
    }

    private boolean mayBridge(int b) {
        return states[b] == State.BLOCKING && !proved[b] && free[b] instanceof Branch.OneWayBranch;
    }

    /** By island, how far its potential moves towards that of the reference before an element would conduct. */
    private double[] leaked(Islands islands, Contraction contraction, double[] nodeV, double[] voltageV) {
        double[] meanV = new double[islands.count];
        int[] nodes = new int[islands.count];
        for (int node = 0; node < nodeV.length; node++) {
            int island = islands.islandOf[contraction.superOf[node]];
            nodes[island]++;
            meanV[island] += (nodeV[node] - meanV[island]) / nodes[island];
        }
        double[] shiftV = new double[islands.count];
        for (int k = 1; k < islands.count; k++) {
            double reachV = Math.abs(meanV[k]);
            for (int b = 0; b < free.length; b++) {
                if (mayBridge(b)) {
                    int from = islands.islandOf[contraction.superOf[free[b].from]];
                    int to = islands.islandOf[contraction.superOf[free[b].to]];
                    boolean towards = meanV[k] > 0 ? to == k : from == k;
                    if (from != to && towards) {
                        double driveV = voltageV[b] + free[b].biasV + shiftV[from] - shiftV[to];
                        reachV = Math.min(reachV, Math.max(0, -driveV));
                    }
                }
            }
            shiftV[k] = -Math.copySign(reachV, meanV[k]);
        }
        return shiftV;
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
