package loomwright.operation;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
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
 * Terminals that hang together by wires, joints, connectors, fuses, links, resistors, ballasts and diodes alone, whatever the
 * switches do. Breadth-first search from the few terminals asked for; cost: the wires once for each terminal reached.
 */
final class Joined {
    private Joined() {}

    static Set<TerminalRef> with(Plan plan, Collection<TerminalRef> starts) {
        Set<TerminalRef> reached = new LinkedHashSet<>(starts);
        Deque<TerminalRef> open = new ArrayDeque<>(starts);
        while (!open.isEmpty()) {
            TerminalRef at = open.removeFirst();
            for (Wire wire : plan.wires()) {
                if (wire.from().equals(at) && reached.add(wire.to())) {
                    open.add(wire.to());
                } else if (wire.to().equals(at) && reached.add(wire.from())) {
                    open.add(wire.from());
                }
            }
            Part part = plan.findPart(at.part()).orElseThrow();
            if (isPassive(part)) {
                reach(part, reached, open);
            }
            for (Connector connector : plan.connectors()) {
                if (connector.halves().contains(at.part())) {
                    mate(plan, connector, at, reached, open);
                }
            }
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

    private static void reach(Part part, Set<TerminalRef> reached, Deque<TerminalRef> open) {
        for (String name : part.terminals()) {
            TerminalRef other = part.terminal(name);
            if (reached.add(other)) {
                open.add(other);
            }
        }
    }

    private static void mate(
            Plan plan, Connector connector, TerminalRef at, Set<TerminalRef> reached, Deque<TerminalRef> open) {
        List<String> halves = connector.halves();
        Part other = plan.findPart(halves.get(halves.get(0).equals(at.part()) ? 1 : 0))
                .orElseThrow();
        if (other.terminals().contains(at.terminal()) && reached.add(other.terminal(at.terminal()))) {
            open.add(other.terminal(at.terminal()));
        }
    }

    /** Whether a terminal is joined to the chassis or to the battery's earthed pole in this way. */
    static boolean isEarthed(Plan plan, TerminalRef terminal) {
        boolean negativeEarth = plan.system().earthPolarity().feedSign() > 0;
        String pole = negativeEarth ? Battery.MINUS : Battery.PLUS;
        return with(plan, List.of(terminal)).stream().anyMatch(reached -> {
            Part part = plan.findPart(reached.part()).orElseThrow();
            return part instanceof EarthPoint
                    || (part instanceof Battery && reached.terminal().equals(pole));
        });
    }
}
