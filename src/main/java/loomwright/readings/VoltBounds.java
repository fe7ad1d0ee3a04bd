package loomwright.readings;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Progress;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.tolerance.Spreads;
import loomwright.operation.Meter;
import loomwright.operation.PlanSolver;
import loomwright.operation.Probe;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;

/**
 * Between which volts a reading lies when every figure of the plan is somewhere within its tolerance.
 *
 * <p>Each figure is moved to either end alone; which end lowers a reading chooses the corner at which it is solved again.
 * The bound is the lowest of all solved readings and of the sum of the single falls, less a twentieth of the width for
 * what lies between the corners: proof against linear and monotone dependence, checked against random samples in the
 * tests. Cost: one or two solutions of the plan for each figure, two
 * of one step for each reading.
 */
final class VoltBounds {
    /** What is added to the width for bends of the curves: no source, found with random samples. */
    private static final double ALLOWANCE = 0.05;
    /** Less than this share of its figure is no influence, V. */
    private static final double NOTHING_V = 1e-9;

    /** Where to measure, and when. */
    record Asked(Step step, Probe probe) {}

    /** What is read in some steps of one solved plan; readings of other steps are not in it. */
    private record Sample(Map<Integer, OptionalDouble> figures, Map<Integer, Set<String>> pulledIn) {}

    private final Spreads spreads;
    private final List<Asked> asked;
    private final PlanSolver solver;
    private final Progress progress;
    private final double[] lowest;
    private final double[] highest;
    private final double[] falls;
    private final double[] rises;
    private final boolean[] hanging;
    private final List<SolvedStep> like;
    private final Sample nominal;

    private VoltBounds(Spreads spreads, List<Asked> asked, PlanSolver solver, Progress progress) {
        this.spreads = spreads;
        this.asked = asked;
        this.solver = solver;
        this.progress = progress;
        this.like = solver.solve(spreads.plan());
        this.nominal = sample(spreads.plan(), like);
        this.lowest = new double[asked.size()];
        this.highest = new double[asked.size()];
        this.falls = new double[asked.size()];
        this.rises = new double[asked.size()];
        this.hanging = new boolean[asked.size()];
    }

    /** The ranges of readings, in their order. */
    static List<Range> of(Spreads spreads, List<Asked> asked, PlanSolver solver, Progress progress) {
        return new VoltBounds(spreads, asked, solver, progress).ranges();
    }

    private List<Range> ranges() {
        for (int r = 0; r < asked.size(); r++) {
            lowest[r] = middle(r);
            highest[r] = lowest[r];
        }
        double[][] down = influences();
        for (int r = 0; r < asked.size(); r++) {
            progress.at(spreads.list().size() + r, spreads.list().size() + asked.size());
            if (nominal.figures().getOrDefault(r, OptionalDouble.empty()).isPresent()) {
                take(down[r], Set.of(asked.get(r).step()));
                take(opposite(down[r]), Set.of(asked.get(r).step()));
            }
        }
        List<Range> ranges = new ArrayList<>();
        for (int r = 0; r < asked.size(); r++) {
            ranges.add(range(r));
        }
        return ranges;
    }

    private double middle(int r) {
        return nominal.figures().getOrDefault(r, OptionalDouble.empty()).orElse(0);
    }

    /** Moves each figure alone: by reading and figure, the end (-1 or 1) at which the reading is lower, 0 without influence. */
    private double[][] influences() {
        Set<Step> steps = asked.stream().map(Asked::step).collect(Collectors.toSet());
        double[][] down = new double[asked.size()][spreads.list().size()];
        for (int i = 0; i < spreads.list().size(); i++) {
            progress.at(i, spreads.list().size() + asked.size());
            double[] shares = new double[spreads.list().size()];
            shares[i] = 1;
            Sample high = take(shares, steps);
            shares[i] = -1;
            Sample low = spreads.bends(i) ? take(shares, steps) : null;
            for (int r = 0; r < asked.size(); r++) {
                double up =
                        high.figures().getOrDefault(r, OptionalDouble.empty()).orElse(middle(r)) - middle(r);
                double back = low == null
                        ? -up
                        : low.figures().getOrDefault(r, OptionalDouble.empty()).orElse(middle(r)) - middle(r);
                falls[r] -= Math.min(0, Math.min(up, back));
                rises[r] += Math.max(0, Math.max(up, back));
                down[r][i] = Math.abs(up - back) < NOTHING_V ? 0 : up < back ? 1 : -1;
            }
        }
        return down;
    }

    private static double[] opposite(double[] shares) {
        double[] other = new double[shares.length];
        for (int i = 0; i < shares.length; i++) {
            other[i] = -shares[i];
        }
        return other;
    }

    /** Solves the plan with its figures moved, and stretches the bounds by what is read. */
    private Sample take(double[] shares, Set<Step> steps) {
        Plan moved = spreads.moved(shares);
        Sample sample = sample(moved, solver.solve(moved, steps, like));
        sample.figures().forEach((r, figure) -> {
            lowest[r] = Math.min(lowest[r], figure.orElse(lowest[r]));
            highest[r] = Math.max(highest[r], figure.orElse(highest[r]));
            hanging[r] |= figure.isPresent()
                            != nominal.figures()
                                    .getOrDefault(r, OptionalDouble.empty())
                                    .isPresent()
                    || !Objects.equals(
                            sample.pulledIn().get(r), nominal.pulledIn().get(r));
        });
        return sample;
    }

    private Sample sample(Plan plan, List<SolvedStep> steps) {
        Map<Integer, OptionalDouble> figures = new HashMap<>();
        Map<Integer, Set<String>> pulledIn = new HashMap<>();
        for (SolvedStep solved : steps) {
            Set<String> in = pulledIn(plan, solved);
            for (int r = 0; r < asked.size(); r++) {
                if (asked.get(r).step() == solved.step()) {
                    figures.put(r, Meter.volts(solved, asked.get(r).probe()));
                    pulledIn.put(r, in);
                }
            }
        }
        return new Sample(figures, pulledIn);
    }

    private static Set<String> pulledIn(Plan plan, SolvedStep solved) {
        return plan.parts().stream()
                .filter(p -> p instanceof Electromagnet)
                .filter(solved::isActive)
                .map(Part::id)
                .collect(Collectors.toSet());
    }

    private Range range(int r) {
        OptionalDouble middle = nominal.figures().getOrDefault(r, OptionalDouble.empty());
        if (middle.isEmpty()) {
            return Range.NONE;
        }
        double low = Math.min(lowest[r], middle.getAsDouble() - falls[r]);
        double high = Math.max(highest[r], middle.getAsDouble() + rises[r]);
        double more = ALLOWANCE * (high - low);
        return new Range(middle, low - more, high + more, hanging[r]);
    }
}
