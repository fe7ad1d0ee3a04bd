package loomwright.mistakes;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.operation.PlanSolver;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.SwitchSettings;

/**
 * A plan solved with its fuses whole and, if one carries more than opens it, again and again with those open that blow, one after
 * the other, until none does any more.
 *
 * @param plan as it was solved first
 * @param stages all steps, of each of these in turn
 * @param blown ids of the fuses that are open in the last
 */
record FusedSteps(Plan plan, List<List<SolvedStep>> stages, Set<String> blown) {
    /** Steps of a sound plan in the same setting, for what a fault leaves as it is; empty if nothing is taken over. */
    static final List<SolvedStep> NOTHING_KNOWN = List.of();

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
        private final Map<Set<String>, SettingScan> byBlown = new HashMap<>();

        Solver(PlanSolver solver) {
            this.solver = solver;
        }

        /** Solves the plan as it is set. */
        FusedSteps solve(Plan set) {
            return solve(set, NOTHING_KNOWN, (scan, faulty, sound) -> false);
        }

        /** As the other; all fuses whole, a known step that tells the same is taken over. */
        FusedSteps solve(Plan set, List<SolvedStep> known, Alike alike) {
            Set<String> open = new LinkedHashSet<>();
            List<List<SolvedStep>> stages = new ArrayList<>();
            boolean more;
            do {
                Plan fused = Fuses.blown(set, open);
                stages.add(steps(
                        byBlown.computeIfAbsent(
                                Set.copyOf(open), none -> new SettingScan(SwitchSettings.of(fused), solver)),
                        fused,
                        open.isEmpty() ? known : NOTHING_KNOWN,
                        alike));
                more = open.addAll(Fuses.firstToOpen(fused, stages.get(stages.size() - 1)));
            } while (more);
            return new FusedSteps(set, stages, open);
        }

        private static List<SolvedStep> steps(SettingScan scan, Plan fused, List<SolvedStep> known, Alike alike) {
            // A fault may hold a switch, which then has no setting of its own.
            return scan.settings()
                    .settingOf(fused)
                    .map(setting -> scan.report(
                            setting,
                            step -> known.stream()
                                    .filter(one -> one.step() == step && alike.isSure(scan, fused, one))
                                    .findFirst()))
                    .orElseGet(() -> scan.reported().solve(fused));
        }
    }

    /** Whether the step that was scanned last is sure to tell the same as another. */
    @FunctionalInterface
    interface Alike {
        boolean isSure(SettingScan scan, Plan scanned, SolvedStep other);
    }
}
