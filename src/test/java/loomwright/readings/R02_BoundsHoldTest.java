package loomwright.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;
import loomwright.answer.Progress;
import loomwright.circuit.ForEachExample;
import loomwright.circuit.Plan;
import loomwright.circuit.Plans;
import loomwright.circuit.tolerance.Spreads;
import loomwright.circuit.tolerance.Tolerances;
import loomwright.network.NetworkLimits;
import loomwright.operation.DisconnectedPlan;
import loomwright.operation.Meter;
import loomwright.operation.PlanSolver;
import loomwright.operation.Quantity;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.readings.ReadingState.Variant;

/** No vehicle within the tolerances shows a figure outside the bounds, before any error of the meter is added. */
class R02_BoundsHoldTest {
    private static final NetworkLimits LIMITS = NetworkLimits.defaults();
    private static final int SAMPLES = 300;
    /** Of figures that are 0 but for rounding. */
    private static final double ROUNDING = 1e-9;

    @ForEachExample
    void randomVehiclesLieWithinTheBounds(String example) {
        Plan plan = Plans.example(example);
        ReadingsQuestion question = ReadingsQuestion.of(plan);
        SolvedVariants variants = new SolvedVariants(plan, new PlanSolver(LIMITS));
        List<ReadingCandidate> candidates = Selection.of(question, variants).candidates();
        Tolerances tolerances = question.asFractions();
        Map<ReadingCandidate, Range> ranges = new Ranges(variants, tolerances).of(candidates, Progress.UNWATCHED);
        List<Variant> all = new ArrayList<>(candidates.stream()
                .flatMap(c -> c.situation().variants(plan).stream())
                .distinct()
                .toList());
        Random random = new Random(20260);
        int compared = 0;
        for (int sample = 0; sample < SAMPLES; sample++) {
            Variant variant = all.get(random.nextInt(all.size()));
            Spreads spreads = Spreads.of(variant.of(plan), tolerances);
            boolean corner = random.nextInt(3) == 0;
            Plan vehicle = spreads.moved(random.doubles(spreads.list().size(), -1, 1)
                    .map(share -> corner ? Math.signum(share) : share)
                    .toArray());
            compared += compare(vehicle, variant, candidates, ranges, plan);
        }
        assertThat(compared).isGreaterThan(SAMPLES * 5);
    }

    private static int compare(
            Plan vehicle,
            Variant variant,
            List<ReadingCandidate> candidates,
            Map<ReadingCandidate, Range> ranges,
            Plan plan) {
        Map<Step, SolvedStep> steps =
                new PlanSolver(LIMITS).solve(vehicle).stream().collect(Collectors.toMap(SolvedStep::step, s -> s));
        DisconnectedPlan disconnected = DisconnectedPlan.of(vehicle, Step.OFF.condition());
        int compared = 0;
        for (ReadingCandidate c : candidates) {
            if (!c.situation().variants(plan).contains(variant)) {
                continue;
            }
            OptionalDouble shown = c.quantity() == Quantity.OHMS
                    ? disconnected.ohms(c.probe())
                    : Meter.volts(Objects.requireNonNull(steps.get(c.situation().step())), c.probe());
            Range range = Objects.requireNonNull(ranges.get(c));
            if (shown.isPresent()) {
                assertThat(shown.getAsDouble())
                        .as("%s %s %s", c.situation(), c.quantity(), c.probe())
                        .isBetween(range.lowest() - ROUNDING, range.highest() + ROUNDING);
                compared++;
            }
        }
        return compared;
    }
}
