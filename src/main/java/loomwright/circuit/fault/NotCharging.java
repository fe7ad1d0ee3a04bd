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
 */
public record NotCharging(List<String> ids) implements SingleFault {
    public NotCharging {
        ids = List.copyOf(ids);
    }

    static NotCharging of(Plan plan) {
        List<String> generators = Edits.ids(plan, Generator.class);
        return new NotCharging(generators.isEmpty() ? Edits.ids(plan, Battery.class) : generators);
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
