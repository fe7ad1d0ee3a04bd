package loomwright.operation;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.network.Resistor;

/** All steps of a plan, to be decided in one setting after another. Steps that are electrically the same are one. */
final class DecisionCircuits {
    private final Map<Step, DecisionCircuit> steps = new EnumMap<>(Step.class);

    /**
     * Prepares the steps.
     *
     * @param open for each part that is open its settings
     * @param additions of which one at most is there besides
     * @param consumers those that are asked about
     * @param changeable see {@link StepElements#network}
     */
    DecisionCircuits(
            Wiring wiring,
            Thresholds thresholds,
            List<List<Part>> open,
            List<Resistor> additions,
            List<Consumer> consumers,
            boolean changeable) {
        for (Step step : Step.values()) {
            StepElements elements = new StepElements(wiring, step, open, thresholds, additions);
            steps.put(
                    step,
                    steps.values().stream()
                            .filter(known -> known.hasElements(elements))
                            .findFirst()
                            .orElseGet(() -> new DecisionCircuit(wiring, elements, thresholds, consumers, changeable)));
        }
    }

    DecisionCircuit get(Step step) {
        return Objects.requireNonNull(steps.get(step));
    }
}
