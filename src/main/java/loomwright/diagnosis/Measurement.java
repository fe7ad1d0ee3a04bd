package loomwright.diagnosis;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import loomwright.circuit.Condition;
import loomwright.operation.Contacts;
import loomwright.operation.Probe;
import loomwright.operation.Quantity;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * Something to measure or to look at: where the leads are, what the meter is set to, and how the vehicle stands meanwhile.
 *
 * @param probe where the leads are; across the part that is looked at
 * @param switches the free switches that are not as drawn, id to position, sorted
 * @param contacts how the ignition's contacts stand
 * @param part the part that is looked at; null for a reading of a meter
 */
record Measurement(
        Probe probe,
        Quantity quantity,
        Step step,
        Map<String, String> switches,
        Contacts contacts,
        @Nullable String part) {
    Measurement {
        switches = Collections.unmodifiableMap(new TreeMap<>(switches));
    }

    Measurement(Probe probe, Quantity quantity, Step step, Map<String, String> switches) {
        this(probe, quantity, step, switches, Contacts.EITHER, null);
    }

    Condition condition() {
        return step.condition();
    }

    /** Whether it is a voltage, the only figure that depends on the supply. */
    boolean isVolts() {
        return part == null && quantity == Quantity.VOLTS;
    }

    /** The first step in which the key stands so. */
    static Step stepOf(Condition condition) {
        return switch (condition) {
            case OFF -> Step.OFF;
            case ACCESSORY -> Step.ACCESSORY;
            case RUN -> Step.RUN;
            case CRANK -> Step.CRANK;
            case RUNNING -> Step.RUNNING;
        };
    }
}
