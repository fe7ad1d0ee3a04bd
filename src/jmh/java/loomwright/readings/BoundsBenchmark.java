package loomwright.readings;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Random;
import loomwright.answer.Progress;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.tolerance.Spreads;
import loomwright.network.NetworkLimits;
import loomwright.operation.Meter;
import loomwright.operation.PlanSolver;
import loomwright.operation.Quantity;
import loomwright.operation.SolvedStep;
import loomwright.readings.ReadingState.Variant;

/**
 * How wide the bounds of the voltages on the sheet of readings are beside what vehicles within the tolerances show: vehicles at random,
 * every other one with each figure at one end of its tolerance. None may lie outside.
 *
 * <p>Arguments: seed, vehicles for each setting of the switches.
 */
public final class BoundsBenchmark {
    /** Of a width below this a meter shows nothing, V. */
    private static final double LEAST_V = 0.01;

    private static final double ROUNDING = 1e-9;

    private BoundsBenchmark() {}

    /**
     * Runs.
     *
     * @param args seed, vehicles
     */
    public static void main(String[] args) {
        long seed = args.length > 0 ? Long.parseLong(args[0]) : 20;
        int vehicles = args.length > 1 ? Integer.parseInt(args[1]) : 300;
        PrintStream out = System.out;
        List<Double> every = new ArrayList<>();
        out.println(
                "| plan | readings | vehicles' figures | outside | width, times that seen: median | highest of nine in ten |");
        out.println("| --- | --- | --- | --- | --- | --- |");
        for (String name : Plans.exampleNames()) {
            Sampled sampled = new Sampled(Plans.example(name), new Random(seed), vehicles);
            every.addAll(sampled.ratios);
            row(out, name, sampled.ratios, sampled.compared, sampled.outside);
        }
        row(out, "all", every, 0, 0);
    }

    private static void row(PrintStream out, String name, List<Double> ratios, int compared, int outside) {
        List<Double> sorted = ratios.stream().sorted().toList();
        out.printf(
                Locale.ROOT,
                "| %s | %d | %d | %d | %.2f | %.2f |%n",
                name,
                sorted.size(),
                compared,
                outside,
                sorted.get(sorted.size() / 2),
                sorted.get(sorted.size() * 9 / 10));
    }

    /** The readings of one plan. */
    private static final class Sampled {
        private final List<Double> ratios = new ArrayList<>();
        private final Map<ReadingCandidate, double[]> seen = new HashMap<>();
        private int compared;
        private int outside;

        Sampled(Plan plan, Random random, int vehicles) {
            ReadingsQuestion question = ReadingsQuestion.of(plan).requireSound();
            Plan whole = question.plan();
            PlanSolver solver = new PlanSolver(NetworkLimits.defaults());
            SolvedVariants variants = new SolvedVariants(whole, solver);
            List<ReadingCandidate> volts = Selection.of(question, variants).candidates().stream()
                    .filter(c -> c.quantity() == Quantity.VOLTS)
                    .toList();
            Map<ReadingCandidate, Range> ranges =
                    new Ranges(variants, question.asFractions()).of(volts, Progress.UNWATCHED);
            List<Variant> settings = volts.stream()
                    .flatMap(c -> c.situation().variants(whole).stream())
                    .distinct()
                    .toList();
            for (Variant setting : settings) {
                Spreads spreads = Spreads.of(setting.of(whole), question.asFractions());
                for (int i = 0; i < vehicles; i++) {
                    boolean corner = i % 2 == 0;
                    Plan vehicle = spreads.moved(random.doubles(spreads.list().size(), -1, 1)
                            .map(share -> corner ? Math.signum(share) : share)
                            .toArray());
                    take(solver.solve(vehicle), setting, volts, ranges, whole);
                }
            }
            seen.forEach((reading, ends) -> {
                Range range = Objects.requireNonNull(ranges.get(reading));
                double width = range.highest() - range.lowest();
                if (ends[1] - ends[0] > LEAST_V) {
                    ratios.add(width / (ends[1] - ends[0]));
                }
            });
        }

        private void take(
                List<SolvedStep> steps,
                Variant setting,
                List<ReadingCandidate> volts,
                Map<ReadingCandidate, Range> ranges,
                Plan plan) {
            for (ReadingCandidate c : volts) {
                if (!c.situation().variants(plan).contains(setting)) {
                    continue;
                }
                OptionalDouble shown = Meter.volts(
                        steps.stream()
                                .filter(s -> s.step() == c.situation().step())
                                .findFirst()
                                .orElseThrow(),
                        c.probe());
                if (shown.isPresent()) {
                    double v = shown.getAsDouble();
                    double[] ends = seen.computeIfAbsent(c, key -> new double[] {v, v});
                    ends[0] = Math.min(ends[0], v);
                    ends[1] = Math.max(ends[1], v);
                    Range range = Objects.requireNonNull(ranges.get(c));
                    compared++;
                    outside += v < range.lowest() - ROUNDING || v > range.highest() + ROUNDING ? 1 : 0;
                }
            }
        }
    }
}
