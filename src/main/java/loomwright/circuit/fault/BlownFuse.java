package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/**
 * A fuse or fusible link that has opened.
 *
 * @param part its id
 */
public record BlownFuse(String part) implements SingleFault {
    @Override
    public Kind kind() {
        return Kind.FUSE_BLOWN;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public Plan applyTo(Plan plan) {
        return plan.withPart(Edits.frozen(Edits.part(plan, part), "blown", List.of(), Switch.CONTACT_OHM));
    }
}
