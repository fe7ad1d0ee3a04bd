package loomwright.operation;

import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.network.Element;
import loomwright.network.NetworkSolver;
import loomwright.network.Solution;
import org.jspecify.annotations.Nullable;

/** One step of a plan, each state solved afresh as accurately as figures are reported. */
final class ReportCircuit implements StateSearch.Circuit {
    private final Wiring wiring;
    private final Step step;
    private final Thresholds thresholds;
    private final NetworkSolver solver;
    private final Map<List<Element>, Solution> known;
    private @Nullable StepNetwork network;
    private @Nullable Solution solution;

    /**
     * Prepares a step.
     *
     * @param known solutions by the elements of the parts: a plan is often electrically the same in two steps, as with the key
     *     off before and after, or in two settings
     */
    ReportCircuit(
            Wiring wiring, Step step, Thresholds thresholds, NetworkSolver solver, Map<List<Element>, Solution> known) {
        this.wiring = wiring;
        this.step = step;
        this.thresholds = thresholds;
        this.solver = solver;
        this.known = known;
    }

    static Map<List<Element>, Solution> nothingKnown() {
        return new HashMap<>();
    }

    @Override
    public StateSearch.Verdict probe(BitSet active, BitSet changes) {
        StepNetwork built = StepNetwork.of(wiring, step, thresholds.ids(active));
        Solution solved = solve(built);
        network = built;
        solution = solved;
        changes.clear();
        if (!solved.solved()) {
            return StateSearch.Verdict.UNSOLVABLE;
        }
        List<Threshold> all = thresholds.list();
        for (int t = 0; t < all.size(); t++) {
            Threshold threshold = all.get(t);
            boolean was = active.get(t);
            double effectiveV =
                    threshold.sense().effectiveV(NodeVoltages.meterAt(threshold.part(), wiring, solved), was);
            if (threshold.activeAt(effectiveV, was) != was) {
                changes.set(t);
            }
        }
        return StateSearch.Verdict.TOLD;
    }

    private Solution solve(StepNetwork built) {
        List<Element> ofParts = built.elementsOfParts();
        Solution before = known.get(ofParts);
        if (before == null) {
            before = solver.solve(built.network());
            known.put(ofParts, before);
        }
        return before;
    }

    /** The step settled, read in terms of the plan. */
    SolvedStep settle(BitSet before) {
        return solved(new StateSearch(this, thresholds.memory()).settle(before), before);
    }

    /** As {@link #settle(BitSet)}, beginning with the state in which the parts are said to rest; searched for if they do not. */
    SolvedStep settle(BitSet before, BitSet rest) {
        BitSet changes = new BitSet();
        boolean rests = probe(rest, changes) == StateSearch.Verdict.TOLD && changes.isEmpty();
        return rests ? solved(StableState.settled((BitSet) rest.clone()), before) : settle(before);
    }

    private SolvedStep solved(StableState state, BitSet before) {
        if (network == null || solution == null) {
            throw new IllegalStateException("nothing was solved");
        }
        return new SolvedStep(wiring, step, thresholds, state, network, solution, before);
    }
}
