package loomwright.operation;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.network.Resistor;

/** All steps of a plan, to be solved quickly in one setting after another. Steps that are electrically the same are one. */
final class SweptSteps {
    /** A state is kept in the bits of a long. */
    private static final int MOST_THRESHOLDS = 62;

    private final Map<Step, SweptStep> steps = new EnumMap<>(Step.class);

    private SweptSteps() {}

    /**
     * Prepares the steps.
     *
     * @param open for each part that is open its settings
     * @param additions of which one at most is there besides
     * @param consumers those that are asked about
     * @return empty if the plan has more relays and the like than the quick way can keep
     */
    static Optional<SweptSteps> of(
            Wiring wiring, List<List<Part>> open, List<Resistor> additions, List<Consumer> consumers) {
        List<Threshold> thresholds = Threshold.all(wiring.plan());
        if (thresholds.size() > MOST_THRESHOLDS) {
            return Optional.empty();
        }
        SweptSteps all = new SweptSteps();
        for (Step step : Step.values()) {
            SweptElements elements = new SweptElements(wiring, step, open, thresholds, additions);
            SweptStep same = all.steps.values().stream()
                    .filter(known -> known.hasElements(elements))
                    .findFirst()
                    .orElseGet(() -> new SweptStep(wiring, elements, thresholds, consumers));
            all.steps.put(step, same);
        }
        return Optional.of(all);
    }

    SweptStep get(Step step) {
        return Objects.requireNonNull(steps.get(step));
    }
}
