package loomwright.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import loomwright.answer.Deadline;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.fault.BatteryFault;
import loomwright.circuit.fault.BlownFuse;
import loomwright.circuit.fault.SingleFault;
import loomwright.mistakes.Fuses;
import loomwright.network.NetworkLimits;
import loomwright.network.NoConvergence;
import loomwright.operation.DisconnectedPlan;
import loomwright.operation.Meter;
import loomwright.operation.PlanSolver;
import loomwright.operation.Quantity;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Says what a meter would show on a plan with faults in it. Looks at the clock before each solution.
 *
 * <p>Not thread safe: the solver holds work space.
 */
final class Bench {
    /** What stands for an open circuit: more than a common meter's range shows (common practice, no source). */
    static final double OPEN_OHM = 1e7;

    private static final int TELL_EVERY = 100;

    private final Plan plan;
    private final NetworkLimits networkLimits;
    private final DiagnosisLimits limits;
    private final Progress progress;
    private final PlanSolver solver;
    private final long endNs;
    private final Map<Map<String, String>, Plan> settings = new HashMap<>();
    private final Map<Asked, Optional<Measured>> known = new HashMap<>();
    private int solutions;

    Bench(Plan plan, DiagnosisLimits limits, NetworkLimits networkLimits, Progress progress) {
        this.plan = plan;
        this.networkLimits = networkLimits;
        this.limits = limits;
        this.progress = progress;
        this.solver = new PlanSolver(networkLimits, new Deadline(limits.timeMs(), progress.untold()));
        this.endNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(limits.timeMs());
    }

    Plan plan() {
        return plan;
    }

    /** How often a plan was solved so far. */
    int solutions() {
        return solutions;
    }

    /**
     * What was found on the bench.
     *
     * @param figures what a meter shows, one for each measurement; 0 V where nothing joins the points, as a meter's own
     *     resistance has it
     * @param opening the fuses that carry more than opens them, the worst in each setting of the switches
     * @param openingBeforeAReading those of them that open before a reading could be taken
     */
    record Measured(PredictedFigures figures, Set<String> opening, Set<String> openingBeforeAReading) {}

    /** The same question is answered from memory. */
    private record Asked(List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {}

    /**
     * Measures.
     *
     * @return empty if the plan with these faults has no solution
     * @throws OutOfTime if the time is up
     */
    Optional<Measured> measure(List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {
        Asked asked = new Asked(faults, fusesBlown, measurements);
        Optional<Measured> before = known.get(asked);
        if (before == null) {
            before = solved(faults, fusesBlown, measurements);
            known.put(asked, before);
        }
        return before;
    }

    private Optional<Measured> solved(
            List<SingleFault> faults, Set<String> fusesBlown, List<Measurement> measurements) {
        double[] values = new double[measurements.size()];
        Set<String> opening = new LinkedHashSet<>();
        Set<String> openingBeforeAReading = new LinkedHashSet<>();
        try {
            for (Map.Entry<Map<String, String>, List<Integer>> group :
                    bySwitches(measurements).entrySet()) {
                Plan faulty = faulty(faults, fusesBlown, group.getKey());
                List<SolvedStep> steps = solve(faulty, measurements, group.getValue());
                if (!measure(faulty, steps, measurements, group.getValue(), values)) {
                    return Optional.empty();
                }
                for (String fuse : Fuses.firstToOpen(faulty, steps)) {
                    opening.add(fuse);
                    if (Fuses.opensBeforeAReading(faulty, fuse, steps)) {
                        openingBeforeAReading.add(fuse);
                    }
                }
            }
        } catch (NoConvergence none) {
            return Optional.empty();
        }
        return Optional.of(new Measured(new PredictedFigures(values), opening, openingBeforeAReading));
    }

    private static Map<Map<String, String>, List<Integer>> bySwitches(List<Measurement> measurements) {
        Map<Map<String, String>, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < measurements.size(); i++) {
            groups.computeIfAbsent(measurements.get(i).switches(), key -> new ArrayList<>())
                    .add(i);
        }
        return groups;
    }

    private boolean measure(
            Plan faulty, List<SolvedStep> steps, List<Measurement> measurements, List<Integer> which, double[] values) {
        Map<Condition, DisconnectedPlan> disconnected = new EnumMap<>(Condition.class);
        for (int i : which) {
            Measurement m = measurements.get(i);
            if (m.quantity() == Quantity.OHMS) {
                values[i] = Math.min(
                        OPEN_OHM,
                        disconnected
                                .computeIfAbsent(m.condition(), c -> disconnected(faulty, c))
                                .ohms(m.probe())
                                .orElse(OPEN_OHM));
            } else {
                SolvedStep solved = in(m.step(), steps);
                if (!solved.solved()) {
                    return false;
                }
                values[i] = Meter.volts(solved, m.probe()).orElse(0);
            }
        }
        return true;
    }

    /**
     * The steps in which volts are measured, and those before; with the key on in any case, since that has been before
     * anything was measured, and what opens a fuse then has opened it. Where nothing can be solved with the key on, only as
     * far as was measured: what was read at rest is worth having all the same.
     */
    private List<SolvedStep> solve(Plan faulty, List<Measurement> measurements, List<Integer> which) {
        Optional<Step> measured = which.stream()
                .map(measurements::get)
                .filter(m -> m.quantity() == Quantity.VOLTS)
                .map(Measurement::step)
                .max(Comparator.naturalOrder());
        count();
        if (measured.filter(step -> step.compareTo(Step.RUN) >= 0).isPresent()) {
            return solver.solve(faulty, measured.orElseThrow());
        }
        try {
            return solver.solve(faulty, Step.RUN);
        } catch (NoConvergence none) {
            count();
            return measured.map(step -> solver.solve(faulty, step)).orElse(List.of());
        }
    }

    private static SolvedStep in(Step step, List<SolvedStep> steps) {
        return steps.stream().filter(s -> s.step() == step).findFirst().orElseThrow();
    }

    private DisconnectedPlan disconnected(Plan faulty, Condition condition) {
        count();
        return DisconnectedPlan.of(faulty, condition, networkLimits);
    }

    private Plan faulty(List<SingleFault> faults, Set<String> fusesBlown, Map<String, String> switches) {
        Plan changed = settings.computeIfAbsent(switches, this::set);
        // What is wrong with the battery first: without charge it feeds the running engine as well.
        for (SingleFault fault : faults) {
            changed = fault instanceof BatteryFault ? fault.applyTo(changed) : changed;
        }
        for (SingleFault fault : faults) {
            changed = fault instanceof BatteryFault ? changed : fault.applyTo(changed);
        }
        for (String fuse : fusesBlown) {
            changed = new BlownFuse(fuse).applyTo(changed);
        }
        return changed;
    }

    private Plan set(Map<String, String> switches) {
        Plan changed = plan;
        for (Map.Entry<String, String> entry : switches.entrySet()) {
            Switch chosen = (Switch) changed.findPart(entry.getKey()).orElseThrow();
            changed = changed.withPart(chosen.withPosition(entry.getValue()));
        }
        return changed;
    }

    private void count() {
        solutions++;
        if (solutions % TELL_EVERY == 0) {
            progress.at(Math.min(solutions, limits.maxSolutions()), limits.maxSolutions());
        }
        if (System.nanoTime() > endNs) {
            throw new OutOfTime("A diagnosis may take " + limits.timeMs() / 1000.0 + " s; " + solutions
                    + " solutions were made by then. Give fewer readings or a smaller plan.");
        }
    }
}
