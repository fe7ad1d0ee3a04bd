package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Coil;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;

/**
 * A load that gets its volts and takes no current: a burnt-out lamp, an open winding, brushes that no longer touch.
 *
 * @param part id of a lamp, load, motor or ignition coil
 * @param description what is open in it, as a sentence
 */
public record OpenInside(String part, String description) implements SingleFault {
    static OpenInside of(Part part) {
        String id = part.id();
        if (part instanceof FilamentLamp) {
            return new OpenInside(id, "Lamp " + id + " has burnt out: its filament is open.");
        } else if (part instanceof Motor) {
            return new OpenInside(id, id + " is open inside: its winding or its brushes.");
        } else if (part instanceof Coil) {
            return new OpenInside(id, id + " is open inside: its primary winding.");
        }
        return new OpenInside(id, id + " is open inside.");
    }

    @Override
    public Kind kind() {
        return Kind.OPEN_INSIDE;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public Plan applyTo(Plan plan) {
        Plan open = plan.withPart(Edits.frozen(Edits.part(plan, part), "open", List.of(), Switch.CONTACT_OHM));
        // A battery is no other because the starter no longer loads it.
        return plan.hasStarter() ? Edits.withSupplyOf(plan, open) : open;
    }
}
