package loomwright.readings;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Progress;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.tolerance.Spreads;
import loomwright.circuit.tolerance.Tolerances;
import loomwright.operation.Quantity;
import loomwright.readings.ReadingState.Variant;

/** What each of many readings may be, the plan solved once for what they share. */
final class Ranges {
    private final SolvedVariants variants;
    private final Plan plan;
    private final Tolerances tolerances;
    private int solutions;
    private int begun;

    Ranges(SolvedVariants variants, Tolerances tolerances) {
        this.variants = variants;
        this.plan = variants.plan();
        this.tolerances = tolerances;
    }

    /** About how many times the plan was solved. */
    int solutions() {
        return solutions;
    }

    Map<ReadingCandidate, Range> of(List<ReadingCandidate> candidates, Progress progress) {
        Map<Variant, List<ReadingCandidate>> byVariant = new LinkedHashMap<>();
        for (ReadingCandidate c : candidates) {
            List<Variant> between = c.quantity() == Quantity.OHMS
                    ? c.situation().variants(plan)
                    : variants.variants(c.situation(), c.probe());
            between.forEach(
                    v -> byVariant.computeIfAbsent(v, none -> new ArrayList<>()).add(c));
        }
        Map<ReadingCandidate, Range> ranges = new HashMap<>();
        byVariant.forEach((variant, list) -> {
            Progress here = progress.part(begun++, byVariant.size());
            Spreads spreads = Spreads.of(variant.of(plan), tolerances);
            List<ReadingCandidate> volts =
                    list.stream().filter(c -> c.quantity() == Quantity.VOLTS).toList();
            List<Range> found = VoltBounds.of(
                    spreads,
                    volts.stream()
                            .map(c -> new VoltBounds.Asked(c.situation().step(), c.probe()))
                            .toList(),
                    variants.solver(),
                    here);
            solutions += spreads.list().size() + 2 * volts.size();
            for (int i = 0; i < volts.size(); i++) {
                ReadingCandidate reading = volts.get(i);
                boolean averages = reading.situation().step().engineTurning();
                ranges.merge(reading, found.get(i), averages ? Range::and : Range::or);
            }
            Map<Condition, OhmBounds> meters = new HashMap<>();
            list.stream()
                    .filter(c -> c.quantity() == Quantity.OHMS)
                    .forEach(c -> ranges.merge(
                            c,
                            meters.computeIfAbsent(
                                            c.situation().step().condition(),
                                            condition -> new OhmBounds(spreads, condition))
                                    .of(c.probe()),
                            Range::and));
        });
        return ranges;
    }
}
