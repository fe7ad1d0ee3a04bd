package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Conditions;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Switch;
import loomwright.circuit.Wire;

/**
 * A charging system that gives nothing: with the engine running the battery feeds as it does with the key on. Of an
 * alternator only the field is left, between its warning-lamp terminal and its earthed pole.
 *
 * @param ids of the alternators, or of the batteries if the plan draws none
 * @param description what gives nothing, as a sentence
 */
public record NotCharging(List<String> ids, String description) implements SingleFault {
    public NotCharging {
        ids = List.copyOf(ids);
    }

    static NotCharging of(Plan plan) {
        List<String> alternators = Edits.ids(plan, Alternator.class);
        if (alternators.isEmpty()) {
            List<String> batteries = Edits.ids(plan, Battery.class);
            return new NotCharging(
                    batteries,
                    (batteries.size() == 1 ? "The battery is" : "The batteries are")
                            + " not charged while the engine is running.");
        }
        return new NotCharging(
                alternators,
                String.join(" and ", alternators)
                        + (alternators.size() == 1
                                ? " does not charge: its belt or regulator, or the feed of its field."
                                : " do not charge: their belts or regulators, or the feeds of their fields."));
    }

    @Override
    public Kind kind() {
        return Kind.NOT_CHARGING;
    }

    @Override
    public Plan applyTo(Plan plan) {
        Conditions sound = plan.conditions();
        ResolvedSupply run = plan.supply(Condition.RUN);
        Plan changed = Edits.withConditions(
                plan, new Conditions(sound.off(), sound.accessory(), sound.run(), sound.crank(), run.stated()));
        for (Alternator alternator : plan.listParts(Alternator.class)) {
            changed = changed.withPart(Edits.frozen(alternator, "no-output", List.of(), Switch.CONTACT_OHM));
            changed = Edits.adding(
                    changed,
                    null,
                    Wire.ofResistance(
                            changed.freeId(alternator.id(), "-field"),
                            alternator.terminal(Alternator.WARNING_LAMP),
                            alternator.terminal(Alternator.earthedPole(plan.system())),
                            alternator.fieldResistanceOhm(plan.system())));
        }
        return changed;
    }
}
