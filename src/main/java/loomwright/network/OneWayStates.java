package loomwright.network;

import java.util.ArrayList;
import java.util.List;

/**
 * The state of each one-way element: blocking, conducting or at its limit. With the states fixed, each is a plain
 * linear branch, blocking ones truly open, and afterwards it shows whether the states were right.
 */
final class OneWayStates {
    /** Of a voltage or current, against the largest: what is nearer to the bounds of a state is at them. */
    static final double TOLERANCE = 1e-9;
    /** What is left of currents that cancel, against the sum of their amounts or the largest. */
    static final double ROUNDING = 1e-12;

    private enum State {
        BLOCKING,
        CONDUCTING,
        LIMITED
    }

    private final Network network;
    private final BranchLaw[] free;
    private final State[] states;

    /**
     * Reads the states off a solution.
     *
     * @param free the branches with one-way elements as they are
     * @param driveV their drives
     */
    OneWayStates(Network network, BranchLaw[] free, double[] driveV) {
        this.network = network;
        this.free = free;
        states = new State[free.length];
        for (int b = 0; b < free.length; b++) {
            if (free[b] instanceof BranchLaw.OneWayBranch oneWay) {
                double a = oneWay.currentA(driveV[b]);
                states[b] = a <= 0 ? State.BLOCKING : a >= oneWay.limitA ? State.LIMITED : State.CONDUCTING;
            }
        }
    }

    /** The branches with each one-way element replaced by what it is in its state. */
    BranchLaw[] fixed() {
        BranchLaw[] fixed = free.clone();
        for (int b = 0; b < free.length; b++) {
            if (network.elements().get(b) instanceof UnidirectionalElement o) {
                fixed[b] = switch (states[b]) {
                    case BLOCKING -> new BranchLaw.Linear(o.from(), o.to(), 0, 0, 0);
                    case LIMITED -> new BranchLaw.Linear(o.from(), o.to(), 0, 0, o.limitA());
                    case CONDUCTING ->
                        o.slopeOhm() == 0
                                ? new BranchLaw.Ideal(o.from(), o.to(), o.thresholdV())
                                : new BranchLaw.Linear(o.from(), o.to(), -o.thresholdV(), 1 / o.slopeOhm(), 0);
                };
            }
        }
        return fixed;
    }

    /** Whether the branches obey the laws of the elements: none that conducts has a slope taken larger than it is. */
    boolean asInLaw() {
        for (int b = 0; b < free.length; b++) {
            if (states[b] == State.CONDUCTING
                    && free[b] instanceof BranchLaw.OneWayBranch soft
                    && network.elements().get(b) instanceof UnidirectionalElement o
                    && soft.slopeOhm != o.slopeOhm()) {
                return false;
            }
        }
        return true;
    }

    /**
     * Of a loop of conducting elements whose voltages do not add up to zero, which drives a current round it, lets that
     * element give way which is the first to do so as this current grows: one that it runs against blocks, one that it runs
     * with comes to its limit.
     *
     * @param currentA of the last solution
     * @return false if there is none: then the loop is a dead short
     */
    boolean resolveConflict(Contraction contraction, int closing, double[] currentA) {
        List<Integer> loop = contraction.loop(closing);
        double sumV = 0;
        boolean[] forward = new boolean[loop.size()];
        int node = contraction.branches[closing].from;
        for (int k = 0; k < forward.length; k++) {
            BranchLaw.Ideal branch = (BranchLaw.Ideal) contraction.branches[loop.get(k)];
            forward[k] = branch.from == node;
            sumV += forward[k] ? branch.voltageV : -branch.voltageV;
            node = forward[k] ? branch.to : branch.from;
        }
        int first = -1;
        State givenWay = State.BLOCKING;
        double leastA = Double.POSITIVE_INFINITY;
        for (int k = 0; k < forward.length; k++) {
            int b = loop.get(k);
            if (states[b] == State.CONDUCTING && free[b] instanceof BranchLaw.OneWayBranch oneWay) {
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

    /**
     * Lets the elements at their limit conduct freely that drive a current into, or out of, an island from which nothing
     * leads it back.
     *
     * @return whether there were any
     */
    boolean releaseLimits(NewtonLoop loop) {
        boolean any = false;
        for (int b = 0; b < free.length; b++) {
            boolean into = loop.islands().islandOf[loop.point.from[b]] == loop.withoutReturn;
            boolean out = loop.islands().islandOf[loop.point.to[b]] == loop.withoutReturn;
            if (states[b] == State.LIMITED && into != out) {
                states[b] = State.CONDUCTING;
                any = true;
            }
        }
        return any;
    }

    boolean isOneWay(int b) {
        return free[b] instanceof BranchLaw.OneWayBranch;
    }

    boolean isConducting(int b) {
        return states[b] == State.CONDUCTING;
    }

    /** Whether an element conducts no current to speak of: it may as well block. */
    boolean isIdle(int b, double currentA, double voltageV, double scaleA, double scaleV) {
        return states[b] == State.CONDUCTING
                && Math.abs(currentA) <= TOLERANCE * scaleA
                && Math.abs(beyondThresholdV(b, voltageV)) <= TOLERANCE * scaleV;
    }

    /** Whether something may be joined only by elements that carry no current, or all they can. */
    boolean mayHang(Outcome outcome, double[] voltageV, double scaleA, double scaleV) {
        for (int b = 0; b < free.length; b++) {
            if (isOneWay(b)
                    && (outcome.islandOf[free[b].from] != outcome.islandOf[free[b].to]
                            || isIdle(b, outcome.currentA[b], voltageV[b], scaleA, scaleV))) {
                return true;
            }
        }
        return false;
    }

    private double beyondThresholdV(int b, double voltageV) {
        return voltageV + free[b].biasV;
    }

    /**
     * What keeps two islands from moving apart that are joined by this element alone: one that conducts as soon as the state
     * would change.
     *
     * @param from the island at its {@code from}
     * @param voltageV over it before they move
     */
    BranchLaw.OneWayBranch border(int b, int from, int to, double voltageV) {
        double beyondV = beyondThresholdV(b, voltageV);
        if (states[b] == State.LIMITED) {
            UnidirectionalElement o = (UnidirectionalElement) network.elements().get(b);
            return new BranchLaw.OneWayBranch(to, from, o.slopeOhm() * o.limitA() - beyondV);
        }
        return new BranchLaw.OneWayBranch(from, to, beyondV);
    }

    /** The elements that contradict their states in a solution with these states fixed. */
    List<Integer> contradicted(Outcome outcome, double[] voltageV, double scaleV, double scaleA) {
        List<Integer> wrong = new ArrayList<>();
        for (int b = 0; b < free.length; b++) {
            if (network.elements().get(b) instanceof UnidirectionalElement o) {
                double a = outcome.currentA[b];
                boolean sameIsland = outcome.islandOf[o.from()] == outcome.islandOf[o.to()];
                double v = voltageV[b];
                boolean right = switch (states[b]) {
                    case BLOCKING -> !sameIsland || v <= o.thresholdV() + TOLERANCE * scaleV;
                    case CONDUCTING ->
                        !outcome.determined[b]
                                || (a >= -TOLERANCE * scaleA && a <= o.limitA() * (1 + TOLERANCE) + ROUNDING * scaleA);
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
    }
}
