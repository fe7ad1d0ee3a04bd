package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Bare copper on bare metal: a terminal, or the wire on it, touches the chassis.
 *
 * @param terminal where
 */
public record ShortToEarth(TerminalRef terminal) implements SingleFault {
    /** Of a chafed wire on sheet metal (common practice, no source). */
    static final double CONTACT_OHM = 0.01;

    @Override
    public Kind kind() {
        return Kind.SHORT_TO_EARTH;
    }

    @Override
    public List<String> ids() {
        return List.of(terminal.part());
    }

    @Override
    public String description() {
        return terminal + " touches the chassis.";
    }

    @Override
    public Plan applyTo(Plan plan) {
        Edits.part(plan, terminal.part());
        EarthPoint metal = new EarthPoint(plan.freeId(terminal.part(), "-bare-metal"), null, 0.0);
        String id = plan.freeId(terminal.part(), "-short");
        return Edits.adding(
                plan, metal, Wire.ofResistance(id, terminal, metal.terminal(EarthPoint.TERMINAL), CONTACT_OHM));
    }
}
