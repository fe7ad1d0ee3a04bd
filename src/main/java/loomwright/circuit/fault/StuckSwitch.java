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
        return plan.withPart(stuck.stayingAs(stuck.positions().stream()
                .filter(p -> p.name().equals(position))
                .findFirst()));
    }
}
