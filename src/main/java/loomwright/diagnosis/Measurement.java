package loomwright.diagnosis;

import java.util.Arrays;
import java.util.Collections;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import loomwright.circuit.Condition;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;

/**
 * Something to measure: where the leads are, what the meter is set to, and how the vehicle stands meanwhile.
 *
 * @param switches the free switches that are not as drawn, id to position, sorted
 */
record Measurement(Probe probe, Quantity quantity, Condition condition, Map<String, String> switches) {
    Measurement {
        switches = Collections.unmodifiableMap(new TreeMap<>(switches));
    }

    /** The step in which it is taken: the first in which the key stands so. */
    Step step() {
        return Arrays.stream(Step.values())
                .filter(step -> step.condition() == condition)
                .findFirst()
                .orElseThrow();
    }

    /** As one tells somebody with a meter. */
    String description() {
        String set = switches.entrySet().stream()
                .map(s -> ", " + s.getKey() + " at " + s.getValue())
                .collect(Collectors.joining());
        return quantity == Quantity.VOLTS
                ? "volts from " + probe.from() + " to " + probe.to() + ", " + step().description() + set
                : "ohms from " + probe.from() + " to " + probe.to() + ", battery disconnected, key at "
                        + condition.name().toLowerCase(Locale.ROOT) + set;
    }
}
