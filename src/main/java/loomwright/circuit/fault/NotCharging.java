package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Conditions;
import loomwright.circuit.Generator;
import loomwright.circuit.Plan;
import loomwright.circuit.ResolvedSupply;
import loomwright.circuit.Switch;
import loomwright.circuit.Wire;

/**
 * A charging system that gives nothing: with the engine running the battery feeds as it does with the key on. Of a
 * machine only its windings are left: the field of an alternator, armature and field of a dynamo.
 *
 * @param ids of the machines, or of the batteries if the plan draws none
 * @param description what gives nothing, as a sentence
 */
public record NotCharging(List<String> ids, String description) implements SingleFault {
    public NotCharging {
        ids = List.copyOf(ids);
    }

    static NotCharging of(Plan plan) {
        List<String> alternators = Edits.ids(plan, Generator.class);
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
        for (Generator generator : plan.listParts(Generator.class)) {
            changed = changed.withPart(Edits.frozen(generator, "no-output", List.of(), Switch.CONTACT_OHM));
            for (Generator.Winding winding : generator.windings(plan.system())) {
                changed = Edits.adding(
                        changed,
                        null,
                        Wire.ofResistance(
                                changed.freeId(generator.id(), "-field"),
                                generator.terminal(winding.from()),
                                generator.terminal(winding.to()),
                                winding.resistanceOhm()));
            }
        }
        return changed;
    }
}
