package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Plan;

/**
 * An earth point that no longer touches the chassis; the wires bolted together there still touch each other.
 *
 * @param part its id
 */
public record LostEarth(String part) implements SingleFault {
    @Override
    public Kind kind() {
        return Kind.EARTH_LOST;
    }

    @Override
    public List<String> ids() {
        return List.of(part);
    }

    @Override
    public Plan applyTo(Plan plan) {
        String label = Edits.part(plan, part).label();
        return plan.withPart(new Joint(part, label, List.of(EarthPoint.TERMINAL), 0.0));
    }
}
