package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.Switch.ContactFault;
import loomwright.circuit.Switch.ContactState;

/**
 * One contact of a switch that closes with a resistance: burnt, dirty or weak. A bad joint in all of them is {@link BadJoint}.
 *
 * @param part id of the switch
 * @param between the two terminals of the contact
 * @param resistanceOhm while it is closed
 */
public record WornContact(String part, List<String> between, double resistanceOhm) implements SizedFault {
    public WornContact {
        between = List.copyOf(between);
    }

    @Override
    public Kind kind() {
        return Kind.CONTACT_WORN;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public double size() {
        return resistanceOhm;
    }

    @Override
    public double smallest() {
        return BadJoint.SMALLEST_OHM;
    }

    @Override
    public double largest() {
        return BadJoint.LARGEST_OHM;
    }

    @Override
    public WornContact withSize(double ohm) {
        return new WornContact(part, between, Math.min(BadJoint.MAX_OHM, ohm));
    }

    @Override
    public Plan applyTo(Plan plan) {
        return plan.withPart(((Switch) Edits.part(plan, part))
                .withContact(new ContactFault(ContactState.WORN, between, resistanceOhm)));
    }
}
