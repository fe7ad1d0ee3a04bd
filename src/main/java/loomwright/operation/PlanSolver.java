package loomwright.operation;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.network.NetworkSolver;

/**
 * Solves a plan in every step, in the order they happen.
 *
 * <p>Modified nodal analysis in {@code network}, state iteration here ({@link StateSearch}). Cost: a few network solutions
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
     * @param progress hears of the steps done, often; what it throws ends the solution
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
        stepsDone = 0;
        List<SolvedStep> solved = new ArrayList<>();
        Iterator<SolvedStep> steps = settings(plan).steps(plan);
        do {
            solved.add(steps.next());
            stepsDone = solved.size();
        } while (solved.get(solved.size() - 1).step() != last);
        return solved;
    }

    /**
     * Prepares a plan of which several settings are to be solved.
     *
     * @throws loomwright.answer.RejectedInput if a conductor size is not known
     */
    public PlanSettings settings(Plan plan) {
        return new PlanSettings(plan, solver);
    }

    /**
     * Solves some steps of a plan that differs a little from one solved before, each beginning in the state in which the
     * step before it left that other plan.
     *
     * @param like all steps of the other plan
     * @return the steps wanted, in their order
     */
    public List<SolvedStep> solve(Plan plan, Set<Step> wanted, List<SolvedStep> like) {
        PlanSettings settings = settings(plan);
        List<SolvedStep> steps = new ArrayList<>();
        Set<String> before = Set.of();
        for (SolvedStep other : like) {
            if (wanted.contains(other.step())) {
                steps.add(settings.solve(plan, other.step(), before));
            }
            before = other.active();
        }
        return steps;
    }
}
