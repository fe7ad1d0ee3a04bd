package loomwright.operation;

import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/** What the plan says should be live. */
public final class Intent {
    private Intent() {}

    /** Whether a consumer is meant to be live in a step, with the switches as they stand in the plan. */
    public static boolean meantLive(Consumer consumer, Plan plan, Step step) {
        return consumer.meantLive().contains(step.condition())
                && consumer.meantLiveWhen().entrySet().stream()
                        .allMatch(e -> e.getValue().contains(positionOf(plan, e.getKey(), step)));
    }

    private static String positionOf(Plan plan, String switchId, Step step) {
        // The plan's own check has made sure that every switch named there exists.
        Switch chosen = (Switch) plan.findPart(switchId).orElseThrow();
        return chosen.in(step.condition()).name();
    }
}
