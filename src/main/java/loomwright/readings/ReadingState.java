package loomwright.readings;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.message.Message;
import loomwright.operation.Contacts;
import loomwright.operation.Step;

/**
 * How the vehicle stands while a reading is taken.
 *
 * @param setting of free switches that do not stand as drawn: id to position
 */
record ReadingState(Step step, Map<String, String> setting, Contacts contacts) {
    ReadingState {
        setting = Map.copyOf(setting);
    }

    /** A plan to solve: switches set, contacts held. */
    record Variant(Map<String, String> setting, Contacts contacts) {
        Plan of(Plan plan) {
            Plan set = plan;
            for (Map.Entry<String, String> one : setting.entrySet()) {
                Switch chosen = (Switch) plan.findPart(one.getKey()).orElseThrow();
                set = set.withPart(chosen.withPosition(one.getValue()));
            }
            return contacts.held(set);
        }
    }

    /** The plans between whose readings the meter's lies. */
    List<Variant> variants(Plan plan) {
        return Contacts.matter(plan)
                ? contacts.states().stream().map(c -> new Variant(setting, c)).toList()
                : List.of(new Variant(setting, Contacts.CLOSED));
    }

    Message message(Plan plan, boolean batteryOff) {
        boolean said = contacts != Contacts.EITHER && Contacts.matter(plan);
        return ReadingText.STATE.with(
                arg("battery", batteryOff ? "off" : "on"),
                arg("when", step.in(plan, new TreeMap<>(setting))),
                arg("contacts", said ? contacts.name().toLowerCase(Locale.ROOT) : "any"));
    }
}
