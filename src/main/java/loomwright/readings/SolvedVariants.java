package loomwright.readings;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Plan;
import loomwright.operation.Meter;
import loomwright.operation.PlanSolver;
import loomwright.operation.Probe;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.readings.ReadingState.Variant;

/** The plan with everything at its stated figure, solved in each variant once. For one thread. */
final class SolvedVariants {
    /** What no meter shows. */
    private static final double SAME_V = 1e-5;

    private final Plan plan;
    private final PlanSolver solver;
    private final Map<Variant, List<SolvedStep>> solved = new HashMap<>();

    SolvedVariants(Plan plan, PlanSolver solver) {
        this.plan = plan;
        this.solver = solver;
    }

    Plan plan() {
        return plan;
    }

    PlanSolver solver() {
        return solver;
    }

    /** The first variant of a situation. */
    SolvedStep in(ReadingState situation) {
        return in(situation.variants(plan).get(0), situation.step());
    }

    /**
     * The plans between whose readings that of a meter lies: one, if the engine stands and the contacts make no difference
     * to it.
     */
    List<Variant> variants(ReadingState situation, Probe probe) {
        List<Variant> all = situation.variants(plan);
        boolean same = !situation.step().engineTurning()
                && all.stream()
                                .map(v -> Meter.volts(in(v, situation.step()), probe))
                                .map(volts -> Math.rint(volts.orElse(Double.MAX_VALUE) / SAME_V))
                                .distinct()
                                .count()
                        == 1;
        return same ? all.subList(0, 1) : all;
    }

    private SolvedStep in(Variant variant, Step step) {
        return solved.computeIfAbsent(variant, v -> solver.solve(v.of(plan))).stream()
                .filter(s -> s.step() == step)
                .findFirst()
                .orElseThrow();
    }
}
