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
                    && (soft.slopeOhm != o.slopeOhm()
                            || point.dead()
                            || point.current[b] <= TOLERANCE * point.largestA())) {
                return false;
            }
        }
        return true;
    }

    /**
     * The blocking elements that conduct to give an island its potential: the open end of a diode shows the voltage
     * behind it. An island may stand anywhere between the thresholds around it; as in a real circuit it goes where the
     * least leak draws it.
     *
     * @param point with the islands as they are
     * @param voltageV of each branch, with the scale of these
     */
    List<Integer> bridges(OperatingPoint point, double[] voltageV, double scaleV, Eliminations eliminations) {
        Islands islands = point.islands();
        if (islands.count == 1) {
            return List.of();
        }
        LeastLeak leak = new LeastLeak(islands, point);
        List<Integer> borders = new ArrayList<>();
        for (int b = 0; b < free.length; b++) {
            if (states[b] == State.BLOCKING && !proved[b] && free[b] instanceof Branch.OneWayBranch) {
                if (leak.border(b, voltageV[b] + free[b].biasV)) {
                    borders.add(b);
                }
            }
        }
        if (borders.isEmpty()) {
            return List.of();
        }
        double[] shiftV = leak.shiftV(eliminations);
        List<Integer> bridges = new ArrayList<>();
        NodeSets joined = new NodeSets(islands.count);
        for (int b : borders) {
            int from = islands.islandOf[point.from[b]];
            int to = islands.islandOf[point.to[b]];
            double driveV = voltageV[b] + free[b].biasV + shiftV[from] - shiftV[to];
            if (driveV >= -TOLERANCE * scaleV && joined.join(from, to)) {
                bridges.add(b);
            }
        }
        return bridges;
    }

    /**
     * Of a loop of conducting elements whose voltages do not add up to zero, which drives a current round it, lets that
     * element give way which is the first to do so as this current grows: one that it runs against blocks, one that it runs
     * with comes to its limit.
     *
     * @param currentA of the last solution
     * @return false if there is none: then the loop is a dead short
     */
    boolean giveWay(Contraction contraction, int closing, double[] currentA) {
        List<Integer> loop = contraction.loop(closing);
        double sumV = 0;
        boolean[] forward = new boolean[loop.size()];
        int node = contraction.branches[closing].from;
        for (int k = 0; k < forward.length; k++) {
            Branch.Ideal branch = (Branch.Ideal) contraction.branches[loop.get(k)];
            forward[k] = branch.from == node;
            sumV += forward[k] ? branch.voltageV : -branch.voltageV;
            node = forward[k] ? branch.to : branch.from;
        }
        int first = -1;
        State givenWay = State.BLOCKING;
        double leastA = Double.POSITIVE_INFINITY;
        for (int k = 0; k < forward.length; k++) {
            int b = loop.get(k);
            if (states[b] == State.CONDUCTING && free[b] instanceof Branch.OneWayBranch oneWay) {
                boolean against = forward[k] == sumV > 0;
                double roomA = against ? currentA[b] : oneWay.limitA - currentA[b];
                if (roomA < leastA) {
                    first = b;
                    givenWay = against ? State.BLOCKING : State.LIMITED;
                    leastA = roomA;
                }
            }
        }
        if (first >= 0) {
            states[first] = givenWay;
        }
        return first >= 0;
    }

    void conduct(List<Integer> elements) {
        elements.forEach(b -> states[b] = State.CONDUCTING);
    }

    /**
     * Opens the elements that conduct no current, and forgets which were found to block: what they did on the way to a
     * solution can hang on the order of the elements.
     *
     * @return whether there were any
     */
    boolean reopen(Outcome outcome, double scaleA) {
        boolean any = false;
        for (int b = 0; b < free.length; b++) {
            boolean idle = states[b] == State.CONDUCTING
                    && outcome.determined[b]
                    && Math.abs(outcome.currentA[b]) <= TOLERANCE * scaleA;
            if (idle) {
                states[b] = State.BLOCKING;
            }
            any |= idle || proved[b];
            proved[b] = false;
        }
        return any;
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
