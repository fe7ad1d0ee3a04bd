package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/**
 * A switch whose contacts stay as in one position wherever it is put.
 *
 * @param part its id
 * @param position as which they stay; empty for contacts that never touch
 */
public record StuckSwitch(String part, String position) implements SingleFault {
    @Override
    public Kind kind() {
        return Kind.SWITCH_STUCK;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public Plan applyTo(Plan plan) {
        Switch stuck = (Switch) Edits.part(plan, part);
        List<List<String>> joins = stuck.positions().stream()
                .filter(p -> p.name().equals(position))
                .findFirst()
                .map(stuck::joinsIn)
                .orElse(List.of());
        return plan.withPart(new Switch(
                stuck.id(),
                stuck.label(),
                stuck.terminals(),
                stuck.positions().stream()
                        .map(p -> new Switch.Position(p.name(), joins))
                        .toList(),
                stuck.positionByCondition(),
                stuck.position(),
                stuck.contactResistanceOhm(),
                stuck.ratingA(),
                stuck.momentary(),
                null));
    }
}
