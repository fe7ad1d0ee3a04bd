package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Joint;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;

/**
 * A wire that has come off, or was left off, at one end, and touches nothing there.
 *
 * @param wire its id
 * @param end the end that is off
 * @param terminal where that end belongs
 */
public record WireOff(String wire, WireEnd end, TerminalRef terminal) implements SingleFault {
    /** Name of the only terminal of the part that stands for the end in the air. */
    public static final String LOOSE = "end";

    @Override
    public Kind kind() {
        return Kind.WIRE_OFF;
    }

    @Override
    public List<String> ids() {
        return List.of(wire);
    }

    @Override
    public Plan applyTo(Plan plan) {
        TerminalRef loose = looseEnd(plan);
        Joint inTheAir = new Joint(loose.part(), "Loose end of " + wire, List.of(LOOSE), 0.0);
        return Edits.withWire(Edits.adding(plan, inTheAir, null), Edits.moved(Edits.wire(plan, wire), end, loose));
    }

    /** The terminal by which the end in the air goes once the fault is applied to {@code plan}. */
    public TerminalRef looseEnd(Plan plan) {
        return new TerminalRef(plan.freeId(wire, "-loose"), LOOSE);
    }
}
