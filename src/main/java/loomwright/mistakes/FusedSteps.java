package loomwright.mistakes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.operation.PlanSettings;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;

/**
 * A plan solved with its fuses whole and, if one carries more than opens it, again and again with those open that blow, one after
 * the other, until none does any more.
 *
 * @param plan as it was solved first
 * @param stages all steps, of each of these in turn
 * @param blown ids of the fuses that are open in the last
 */
record FusedSteps(Plan plan, List<List<SolvedStep>> stages, Set<String> blown) {
    /** With all fuses whole. */
    List<SolvedStep> first() {
        return stages.get(0);
    }

    /** With those open that blow. */
    List<SolvedStep> last() {
        return stages.get(stages.size() - 1);
    }

    /** A plan that is solved with its switches in one position after another; what these have in common is worked out once. */
    static final class Solver {
        private final PlanSolver solver;
        private final Map<Set<String>, PlanSettings> byBlown = new HashMap<>();

        Solver(PlanSolver solver) {
            this.solver = solver;
        }

        /** Solves the plan as it is set. */
        FusedSteps solve(Plan set) {
            Set<String> open = new LinkedHashSet<>();
            List<List<SolvedStep>> stages = new ArrayList<>();
            boolean more;
            do {
                Plan fused = Fuses.blown(set, open);
                stages.add(byBlown.computeIfAbsent(Set.copyOf(open), none -> solver.settings(fused))
                        .solve(fused));
                more = open.addAll(Fuses.firstToOpen(fused, stages.get(stages.size() - 1)));
            } while (more);
            return new FusedSteps(set, stages, open);
        }
    }
}
