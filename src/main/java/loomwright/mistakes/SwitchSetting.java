package loomwright.mistakes;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Condition;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.message.Argument.Instant;
import loomwright.operation.Step;

/**
 * A plan as drawn, and with each free switch in each of its other positions, one at a time: what a switch is for shows when it
 * is on, and mistakes that need two switches at once are for the search of sneak paths.
 *
 * @param plan with the switches so
 * @param switches the position of the switch that is not as in the plan, by its id; empty for none
 */
record SwitchSetting(Plan plan, Map<String, String> switches) {
    Instant at(Step step) {
        return step.in(plan, switches);
    }

    static List<SwitchSetting> list(Plan plan) {
        List<SwitchSetting> all = new ArrayList<>();
        all.add(new SwitchSetting(plan, Map.of()));
        for (Part part : plan.parts()) {
            if (part instanceof Switch chosen && chosen.free()) {
                String drawn = chosen.in(Condition.OFF).name();
                for (Switch.Position position : chosen.positions()) {
                    if (!position.name().equals(drawn)) {
                        all.add(new SwitchSetting(
                                plan.withPart(chosen.withPosition(position.name())),
                                Map.of(chosen.id(), position.name())));
                    }
                }
            }
        }
        return all;
    }
}
