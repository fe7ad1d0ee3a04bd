package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;

/**
 * A wire that sits on a wrong terminal of the right part.
 *
 * @param wire its id
 * @param end the end that is wrong
 * @param belongs where that end belongs
 * @param sits where it is
 */
public record MisplacedWire(String wire, WireEnd end, TerminalRef belongs, TerminalRef sits) implements SingleFault {
    @Override
    public Kind kind() {
        return Kind.WIRE_MISPLACED;
    }

    @Override
    public List<String> ids() {
        return List.of(wire, belongs.part());
    }

    @Override
    public Plan applyTo(Plan plan) {
        return Edits.withWire(plan, Edits.moved(Edits.wire(plan, wire), end, sits));
    }
}
