package loomwright.operation;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.network.Element;
import loomwright.network.NetworkSolver;
import loomwright.network.Solution;

/**
 * Finds the state in which relays, solenoids, modules and loads with a voltage limit come to rest in one step.
 *
 * <p>All parts past a threshold change at once and the network is solved again, until none changes. If a state comes back
 * there is no rest that way; then they are let change one at a time, in the order of the plan: if that comes to rest, the
 * outcome hangs on which part is quicker, and this is said; if not, the circuit oscillates.
 */
final class Settling {
    /** How the search ended. */
    enum Outcome {
        SETTLED,
        /** At rest, but only because one part was taken to be quicker than another. */
        TIMING_DECIDES,
        OSCILLATING,
        /** The network of this state has no solution. */
        UNSOLVABLE
    }

    /**
     * How a step came to rest.
     *
     * @param active the parts past their thresholds
     * @param restless the parts that kept changing; empty if settled
     */
    record Rest(Outcome outcome, StepNetwork network, Solution solution, Set<String> active, Set<String> restless) {}

    private final Wiring wiring;
    private final List<Threshold> thresholds;
    private final NetworkSolver solver;
    /**
     * By the elements of the parts: a plan is often electrically the same in two steps, as with the key off before and
     * after, or in two settings.
     */
    private final Map<List<Element>, Solution> solved;

    private Settling(
            Wiring wiring, NetworkSolver solver, List<Threshold> thresholds, Map<List<Element>, Solution> solved) {
        this.wiring = wiring;
        this.solver = solver;
        this.thresholds = thresholds;
        this.solved = solved;
    }

    Settling(Wiring wiring, NetworkSolver solver) {
        this(wiring, solver, Threshold.all(wiring.plan()), new HashMap<>());
    }

    Wiring wiring() {
        return wiring;
    }

    /** The same for a plan that differs in nothing but how switches and contacts are set. */
    Settling with(Plan set) {
        return new Settling(wiring.with(set), solver, thresholds, solved);
    }

    /** The same with one more wire, see there. */
    Settling withWireToChassis(TerminalRef terminal, String id, double ohm) {
        return new Settling(wiring.withWireToChassis(terminal, id, ohm), solver, thresholds, new HashMap<>());
    }

    /** A step settled, read in terms of the plan. */
    SolvedStep solve(Step step, Set<String> before) {
        return new SolvedStep(wiring, step, settle(step, before), before);
    }

    /**
     * Settles one step.
     *
     * @param before the parts that were active when the step began
     */
    Rest settle(Step step, Set<String> before) {
        Rest together = settle(step, before, false);
        if (together.outcome() != Outcome.OSCILLATING || together.restless().size() < 2) {
            return together;
        }
        Rest oneByOne = settle(step, before, true);
        return oneByOne.outcome() == Outcome.SETTLED
                ? new Rest(
                        Outcome.TIMING_DECIDES,
                        oneByOne.network(),
                        oneByOne.solution(),
                        oneByOne.active(),
                        together.restless())
                : together;
    }

    private Rest settle(Step step, Set<String> before, boolean oneAtATime) {
        Set<Set<String>> seen = new LinkedHashSet<>();
        Set<String> active = before;
        while (true) {
            StepNetwork network = StepNetwork.of(wiring, step, active);
            Solution solution = solve(network);
            if (!solution.solved()) {
                return new Rest(Outcome.UNSOLVABLE, network, solution, active, Set.of());
            }
            Set<String> next = next(active, solution, oneAtATime);
            if (next.equals(active)) {
                return new Rest(Outcome.SETTLED, network, solution, active, Set.of());
            }
            if (!seen.add(active)) {
                return new Rest(Outcome.OSCILLATING, network, solution, active, restless(seen, active));
            }
            active = next;
        }
    }

    private Solution solve(StepNetwork network) {
        List<Element> ofParts = network.elementsOfParts();
        Solution known = solved.get(ofParts);
        if (known == null) {
            known = solver.solve(network.network());
            solved.put(ofParts, known);
        }
        return known;
    }

    private Set<String> next(Set<String> active, Solution solution, boolean oneAtATime) {
        Set<String> next = new HashSet<>(active);
        for (Threshold threshold : thresholds) {
            String id = threshold.part().id();
            boolean was = active.contains(id);
            double effectiveV =
                    threshold.sense().effectiveV(NodeVoltages.meterAt(threshold.part(), wiring, solution), was);
            boolean is = threshold.activeAt(effectiveV, was);
            if (is != was) {
                if (is) {
                    next.add(id);
                } else {
                    next.remove(id);
                }
                if (oneAtATime) {
                    return next;
                }
            }
        }
        return next;
    }

    /** The parts that differ between the states of the cycle, which begins at {@code again}. */
    private static Set<String> restless(Set<Set<String>> seen, Set<String> again) {
        Set<String> ever = new TreeSet<>();
        Set<String> always = new HashSet<>(again);
        boolean inCycle = false;
        for (Set<String> state : seen) {
            inCycle |= state.equals(again);
            if (inCycle) {
                ever.addAll(state);
                always.retainAll(state);
            }
        }
        ever.removeAll(always);
        return ever;
    }
}
