package loomwright.operation;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import loomwright.circuit.Ballast;
import loomwright.circuit.Battery;
import loomwright.circuit.Connector;
import loomwright.circuit.Diode;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.FixedResistor;
import loomwright.circuit.Fuse;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Terminals that are connected by wires, joints, connectors, fuses, links, resistors, ballasts and diodes alone, whatever the
 * switches do. Breadth-first search from the few terminals asked for; cost: the wires once for each terminal on the
 * longest way.
 */
public final class Joined {
    private Joined() {}

    /** The terminals given and all that are connected with them. */
    public static Set<TerminalRef> with(Plan plan, Collection<TerminalRef> starts) {
        Set<TerminalRef> reached = new LinkedHashSet<>(starts);
        Set<TerminalRef> open = reached;
        while (!open.isEmpty()) {
            Set<TerminalRef> next = new LinkedHashSet<>();
            for (Wire wire : plan.wires()) {
                if (open.contains(wire.from())) {
                    next.add(wire.to());
                }
                if (open.contains(wire.to())) {
                    next.add(wire.from());
                }
            }
            for (TerminalRef at : open) {
                Part part = plan.findPart(at.part()).orElseThrow();
                if (isPassive(part)) {
                    part.terminals().forEach(name -> next.add(part.terminal(name)));
                }
                for (Connector connector : plan.connectors()) {
                    if (connector.halves().contains(at.part())) {
                        mate(plan, connector, at).ifPresent(next::add);
                    }
                }
            }
            next.removeAll(reached);
            reached.addAll(next);
            open = next;
        }
        return reached;
    }

    private static boolean isPassive(Part part) {
        return part instanceof Joint
                || part instanceof Fuse
                || part instanceof FusibleLink
                || part instanceof FixedResistor
                || part instanceof Ballast
                || part instanceof Diode;
    }

    private static Optional<TerminalRef> mate(Plan plan, Connector connector, TerminalRef at) {
        List<String> halves = connector.halves();
        Part other = plan.findPart(halves.get(halves.get(0).equals(at.part()) ? 1 : 0))
                .orElseThrow();
        return other.terminals().contains(at.terminal())
                ? Optional.of(other.terminal(at.terminal()))
                : Optional.empty();
    }

    /** Whether a terminal is joined to the chassis or to the battery's earthed pole in this way. */
    public static boolean isEarthed(Plan plan, TerminalRef terminal) {
        boolean negativeEarth = plan.system().earthPolarity().feedSign() > 0;
        String pole = negativeEarth ? Battery.MINUS : Battery.PLUS;
        return with(plan, List.of(terminal)).stream().anyMatch(reached -> {
            Part part = plan.findPart(reached.part()).orElseThrow();
            return part instanceof EarthPoint
                    || (part instanceof Battery && reached.terminal().equals(pole));
        });
    }
}
