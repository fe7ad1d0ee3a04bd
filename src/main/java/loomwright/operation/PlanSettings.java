package loomwright.operation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.network.Element;
import loomwright.network.NetworkSolver;
import loomwright.network.Solution;

/**
 * A plan with its switches and contacts set in one way after another, each solved as {@link PlanSolver} does; what the
 * settings have in common is worked out once, and a network that comes again is not solved again. Not thread safe.
 */
public final class PlanSettings {
    private final Wiring wiring;
    private final Thresholds thresholds;
    private final NetworkSolver solver;
    private final Map<List<Element>, Solution> known = ReportCircuit.nothingKnown();
    /** As it was set last. */
    private Wiring set;

    PlanSettings(Plan plan, NetworkSolver solver) {
        this.wiring = Wiring.of(plan);
        this.set = wiring;
        this.thresholds = Thresholds.of(plan);
        this.solver = solver;
    }

    /**
     * Solves one step.
     *
     * @param set the plan, differing from the one prepared in nothing but how switches and contacts are set
     * @param before ids of the parts that were active when the step began, see {@link SolvedStep#active()}
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public SolvedStep solve(Plan set, Step step, Set<String> before) {
        return circuit(set, step).settle(thresholds.bits(before));
    }

    SolvedStep solve(Plan set, Step step, BitSet before) {
        return circuit(set, step).settle(before);
    }

    /** As {@link #solve(Plan, Step, BitSet)}, where it was decided already in which state the parts come to rest. */
    SolvedStep solve(Plan set, Step step, BitSet before, BitSet rest) {
        return circuit(set, step).settle(before, rest);
    }

    /** A plan that differs in more than how its switches are set, for its own settings to be solved. */
    public PlanSettings changed(Plan other) {
        return new PlanSettings(other, solver);
    }

    @SuppressWarnings("ReferenceEquality") // an equal plan of another identity is set anew, which costs time alone
    private ReportCircuit circuit(Plan plan, Step step) {
        if (set.plan() != plan) {
            set = wiring.with(plan);
        }
        return new ReportCircuit(set, step, thresholds, solver, known);
    }

    Wiring wiring() {
        return wiring;
    }

    Thresholds thresholds() {
        return thresholds;
    }

    /**
     * Solves all steps, each when it is asked for.
     *
     * @param set the plan, differing from the one prepared in nothing but how switches and contacts are set
     * @throws loomwright.network.NoConvergence (the iterator) if a network could not be solved within the limits
     */
    public Iterator<SolvedStep> steps(Plan set) {
        return new Steps((step, before) -> solve(set, step, before));
    }

    /** As {@link #steps}, all of them. */
    public List<SolvedStep> solve(Plan set) {
        List<SolvedStep> solved = new ArrayList<>();
        steps(set).forEachRemaining(solved::add);
        return solved;
    }

    /**
     * As {@link #steps}, with a terminal joined to the chassis by one more wire, as if it were the last of the plan's.
     *
     * @param wire an id for it
     * @param resistanceOhm of it
     */
    public Iterator<SolvedStep> stepsJoinedToChassis(
            Plan set, TerminalRef terminal, String wire, double resistanceOhm) {
        Wiring joined = wiring.with(set).withWireToChassis(terminal, wire, resistanceOhm);
        Map<List<Element>, Solution> ofJoined = ReportCircuit.nothingKnown();
        return new Steps(
                (step, before) -> new ReportCircuit(joined, step, thresholds, solver, ofJoined).settle(before));
    }

    /**
     * Prepares a quick look at what wires carry while one terminal after another is joined to the chassis as by {@link
     * #stepsJoinedToChassis}.
     *
     * @param open the parts in which the settings differ, each in all of its own
     */
    public ShortScan scanShorts(List<List<Part>> open, List<TerminalRef> terminals, double resistanceOhm) {
        return new ShortScan(wiring, thresholds, open, terminals, resistanceOhm);
    }

    /**
     * Prepares a quick look at plans that differ from this one in a few resistances.
     *
     * @param room from {@link ChangeScan#room}, for this plan or one that differs in how switches and contacts are set
     */
    public ChangeScan scanChanges(ChangeScan.Room room) {
        return new ChangeScan(wiring, thresholds, room);
    }

    /** Solves a step from where the one before left the plan. */
    @FunctionalInterface
    private interface StepSolution {
        SolvedStep from(Step step, BitSet before);
    }

    /** The steps in the order they happen, each beginning in the state that the one before left. */
    private static final class Steps implements Iterator<SolvedStep> {
        private static final Step[] ALL = Step.values();

        private final StepSolution solution;
        private BitSet active = new BitSet();
        private int next;

        Steps(StepSolution solution) {
            this.solution = solution;
        }

        @Override
        public boolean hasNext() {
            return next < ALL.length;
        }

        @Override
        public SolvedStep next() {
            if (!hasNext()) {
                throw new NoSuchElementException();
            }
            SolvedStep solved = solution.from(ALL[next++], active);
            active = solved.activeBits();
            return solved;
        }
    }
}
