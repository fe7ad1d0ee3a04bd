package loomwright.operation;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.network.Resistor;

/** All steps of a plan, to be decided in one setting after another. Steps that are electrically the same are one. */
final class DecisionCircuits {
    private final Wiring wiring;
    private final Thresholds thresholds;
    private final List<List<Part>> open;
    private final List<Resistor> additions;
    private final List<Consumer> consumers;
    private final boolean changeable;
    /** Those that were asked for. */
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
        this.wiring = wiring;
        this.thresholds = thresholds;
        this.open = open;
        this.additions = additions;
        this.consumers = consumers;
        this.changeable = changeable;
    }

    /** One step; made when it is first asked for, as a trial often ends before the last. */
    DecisionCircuit get(Step step) {
        DecisionCircuit known = steps.get(step);
        if (known == null) {
            StepElements elements = new StepElements(wiring, step, open, thresholds, additions);
            known = steps.values().stream()
                    .filter(other -> other.hasElements(elements))
                    .findFirst()
                    .orElseGet(() -> new DecisionCircuit(wiring, elements, thresholds, consumers, changeable));
            steps.put(step, known);
        }
        return known;
    }

    /** See {@link DecisionCircuit#forget}. */
    void forget() {
        steps.values().forEach(DecisionCircuit::forget);
    }
}
