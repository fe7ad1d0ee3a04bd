package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;

/**
 * What belongs on one terminal of a part is on another, and the other way round.
 *
 * @param one terminal of a part
 * @param other terminal of the same part
 */
public record SwappedLeads(TerminalRef one, TerminalRef other) implements SingleFault {
    public SwappedLeads {
        if (!one.part().equals(other.part()) || one.equals(other)) {
            throw new IllegalArgumentException(one + " and " + other + " are not two terminals of one part");
        }
    }

    @Override
    public Kind kind() {
        return Kind.LEADS_SWAPPED;
    }

    @Override
    public List<String> ids() {
        return List.of(one.part());
    }

    @Override
    public Plan applyTo(Plan plan) {
        Edits.part(plan, one.part());
        return Edits.withWires(plan, w -> {
            TerminalRef from = swapped(w.from());
            TerminalRef to = swapped(w.to());
            return from.equals(w.from()) && to.equals(w.to()) ? w : w.withEnds(from, to);
        });
    }

    private TerminalRef swapped(TerminalRef ref) {
        if (ref.equals(one)) {
            return other;
        }
        return ref.equals(other) ? one : ref;
    }
}
