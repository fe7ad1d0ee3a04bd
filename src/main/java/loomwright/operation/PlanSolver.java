package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.network.NetworkSolver;

/**
 * Solves a plan in every step, in the order they happen.
 *
 * <p>Modified nodal analysis in {@code network}, state iteration here ({@link Settling}). Cost: a few network solutions
 * per step. Not thread safe: the solver holds work space.
 */
public final class PlanSolver {
    private final NetworkSolver solver;

    public PlanSolver(NetworkLimits limits) {
        this.solver = new NetworkSolver(limits);
    }

    /**
     * Solves all steps.
     *
     * @return one solved step for each {@link Step}, in their order
     * @throws loomwright.answer.RejectedInput if a conductor size is not known
     * @throws loomwright.network.NoConvergence if a network could not be solved within the limits
     */
    public List<SolvedStep> solve(Plan plan) {
        return solve(plan, Step.OFF_AGAIN);
    }

    /** As {@link #solve(Plan)}, the steps up to {@code last} only: what comes after has no bearing on them. */
    public List<SolvedStep> solve(Plan plan, Step last) {
        Wiring wiring = Wiring.of(plan);
        Settling settling = new Settling(wiring, solver);
        List<SolvedStep> steps = new ArrayList<>();
        Set<String> active = Set.of();
        for (Step step : Step.values()) {
            SolvedStep solved = new SolvedStep(wiring, step, settling.settle(step, active));
            active = solved.active();
            steps.add(solved);
            if (step == last) {
                break;
            }
        }
        return steps;
    }
}
