package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.ContactFault;
import loomwright.circuit.Switch.ContactState;

/**
 * One contact of a switch that never closes.
 *
 * @param part id of the switch
 * @param between the two terminals of the contact
 */
public record OpenContact(String part, List<String> between) implements SingleFault {
    public OpenContact {
        between = List.copyOf(between);
    }

    @Override
    public Kind kind() {
        return Kind.CONTACT_OPEN;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public Plan applyTo(Plan plan) {
        return plan.withPart(
                ((Switch) Edits.part(plan, part)).withContact(new ContactFault(ContactState.OPEN, between, null)));
    }
}
