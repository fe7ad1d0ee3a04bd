package loomwright.circuit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Fault;
import loomwright.answer.Faults;

/** Checks that ids are unique and that everything named in a plan exists. */
final class References {
    private final Map<String, Part> parts = new HashMap<>();
    private final Faults faults;

    private References(Faults faults) {
        this.faults = faults;
    }

    static void check(List<Part> parts, List<Wire> wires, List<Connector> connectors, Faults faults) {
        References references = new References(faults);
        references.checkParts(parts);
        references.checkWires(wires);
        references.checkConnectors(connectors);
        for (int i = 0; i < parts.size(); i++) {
            references.checkMeantLive("/parts/" + i, parts.get(i));
        }
    }

    private void checkParts(List<Part> list) {
        for (int i = 0; i < list.size(); i++) {
            Part part = list.get(i);
            unique(parts.putIfAbsent(part.id(), part) == null, "/parts/" + i + "/id", part.id(), "parts");
        }
    }

    private void checkWires(List<Wire> wires) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < wires.size(); i++) {
            Wire wire = wires.get(i);
            String at = "/wires/" + i;
            unique(seen.add(wire.id()), at + "/id", wire.id(), "wires");
            // The answers name parts and wires side by side.
            unique(!parts.containsKey(wire.id()), at + "/id", wire.id(), "parts and wires");
            terminal(at + "/from", wire.from());
            terminal(at + "/to", wire.to());
            if (wire.from().equals(wire.to())) {
                faults.check(
                        false,
                        Fault.Code.CONTRADICTION,
                        at + "/to",
                        wire.to().toString(),
                        "another terminal than from: a wire has two ends");
            }
        }
    }

    private void checkConnectors(List<Connector> connectors) {
        Set<String> seen = new HashSet<>();
        Map<String, String> taken = new HashMap<>();
        for (int i = 0; i < connectors.size(); i++) {
            Connector connector = connectors.get(i);
            String at = "/connectors/" + i;
            unique(seen.add(connector.id()), at + "/id", connector.id(), "connectors");
            for (int h = 0; h < 2; h++) {
                String half = connector.halves().get(h);
                String pointer = at + "/halves/" + h;
                faults.check(
                        parts.get(half) instanceof ConnectorHalf,
                        Fault.Code.UNKNOWN_REFERENCE,
                        pointer,
                        half,
                        "the id of a part of kind connector-half");
                unique(taken.put(half, connector.id()) == null, pointer, half, "pushed-together halves");
            }
        }
    }

    private void checkMeantLive(String at, Part part) {
        if (!(part instanceof Consumer consumer)) {
            return;
        }
        consumer.meantLiveWhen().forEach((id, positions) -> {
            String pointer = at + "/meantLiveWhen/" + id;
            if (!(parts.get(id) instanceof Switch chosen)) {
                faults.check(false, Fault.Code.UNKNOWN_REFERENCE, pointer, id, "the id of a part of kind switch");
                return;
            }
            List<String> known =
                    chosen.positions().stream().map(Switch.Position::name).toList();
            for (int i = 0; i < positions.size(); i++) {
                if (known.contains(positions.get(i))) {
                    continue;
                }
                faults.check(
                        false,
                        Fault.Code.UNKNOWN_REFERENCE,
                        pointer + "/" + i,
                        positions.get(i),
                        "a position of switch " + id + ": " + String.join(", ", known));
            }
        });
    }

    private void terminal(String pointer, TerminalRef ref) {
        Part part = parts.get(ref.part());
        if (part == null) {
            faults.check(
                    false,
                    Fault.Code.UNKNOWN_REFERENCE,
                    pointer,
                    ref.toString(),
                    "a terminal of a part of this plan; there is no part '" + ref.part() + "'");
        } else if (!part.terminals().contains(ref.terminal())) {
            faults.check(
                    false,
                    Fault.Code.UNKNOWN_REFERENCE,
                    pointer,
                    ref.toString(),
                    "a terminal of " + part.id() + " (" + part.kind() + "): " + String.join(", ", part.terminals()));
        }
    }

    private void unique(boolean first, String pointer, String id, String among) {
        if (!first) {
            faults.check(false, Fault.Code.DUPLICATE, pointer, id, "an id used once among the " + among);
        }
    }
}
