package loomwright.operation;

import java.util.List;
import java.util.Map;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/** What the plan says should be live. */
public final class Intent {
    private Intent() {}

    /** Whether a consumer is meant to be live in a step, with the switches as they stand in the plan. */
    public static boolean meantLive(Consumer consumer, Plan plan, Step step) {
        if (!consumer.meantLive().contains(step.condition())) {
            return false;
        }
        for (Map.Entry<String, List<String>> when : consumer.meantLiveWhen().entrySet()) {
            if (!when.getValue().contains(positionOf(plan, when.getKey(), step))) {
                return false;
            }
        }
        return true;
    }

    private static String positionOf(Plan plan, String switchId, Step step) {
        // The plan's own check has made sure that every switch named there exists.
        Switch chosen = (Switch) plan.findPart(switchId).orElseThrow();
        return chosen.in(step.condition()).name();
    }
}
