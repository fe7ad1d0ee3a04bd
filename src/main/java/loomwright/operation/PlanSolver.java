package loomwright.operation;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import loomwright.answer.Progress;
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
    private int stepsDone;

    public PlanSolver(NetworkLimits limits) {
        this(limits, Progress.UNWATCHED);
    }

    /**
     * A solver that can be stopped.
     *
     * @param progress is told the steps done, often; what it throws ends the solution
     */
    public PlanSolver(NetworkLimits limits, Progress progress) {
        this.solver = new NetworkSolver(limits, (done, of) -> progress.at(stepsDone, Step.values().length));
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
        stepsDone = 0;
        for (Step step : Step.values()) {
            SolvedStep solved = new SolvedStep(wiring, step, settling.settle(step, active));
            active = solved.active();
            steps.add(solved);
            stepsDone++;
            if (step == last) {
                break;
            }
        }
        return steps;
    }

    /**
     * Solves some steps of a plan that differs a little from one solved before, each beginning in the state in which the
     * step before it left that other plan.
     *
     * @param like all steps of the other plan
     * @return the steps wanted, in their order
     */
    public List<SolvedStep> solve(Plan plan, Set<Step> wanted, List<SolvedStep> like) {
        Wiring wiring = Wiring.of(plan);
        Settling settling = new Settling(wiring, solver);
        List<SolvedStep> steps = new ArrayList<>();
        Set<String> before = Set.of();
        for (SolvedStep other : like) {
            if (wanted.contains(other.step())) {
                steps.add(new SolvedStep(wiring, other.step(), settling.settle(other.step(), before)));
            }
            before = other.active();
        }
        return steps;
    }
}
