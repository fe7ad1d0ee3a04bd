package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.ContactState;

/**
 * A contact that is sound, or a bridge that is not there, though the plan says otherwise.
 *
 * @param part id of the switch
 * @param between the two terminals
 * @param stated what the plan says of them
 */
public record SoundContact(String part, List<String> between, ContactState stated) implements SingleFault {
    public SoundContact {
        between = List.copyOf(between);
    }

    @Override
    public Kind kind() {
        return Kind.CONTACT_SOUND;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public Plan applyTo(Plan plan) {
        return plan.withPart(((Switch) Edits.part(plan, part)).withSoundContact(between));
    }
}
