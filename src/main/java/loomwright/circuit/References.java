package loomwright.circuit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;

/** Checks that ids are unique and that everything named in a plan exists. */
final class References {
    private static final int MOST_NAMED = 5;

    private final Map<String, Part> parts = new HashMap<>();
    private final List<LooseEnd> loose = new ArrayList<>();

    private final InputErrors faults;

    /** An end of a wire that leads to no part. */
    private record LooseEnd(String pointer, String wire, TerminalRef at) {}

    private References(InputErrors faults) {
        this.faults = faults;
    }

    static void check(List<Part> parts, List<Wire> wires, List<Connector> connectors, InputErrors faults) {
        References references = new References(faults);
        references.checkParts(parts);
        references.checkWires(wires);
        references.reportMissing();
        references.checkConnectors(connectors);
        for (int i = 0; i < parts.size(); i++) {
            if (parts.get(i) instanceof Consumer consumer
                    && !consumer.meantLiveWhen().isEmpty()) {
                references.checkMeantLive("/parts/" + i, consumer);
            }
        }
    }

    private void checkParts(List<Part> list) {
        for (int i = 0; i < list.size(); i++) {
            Part part = list.get(i);
            if (parts.putIfAbsent(part.id(), part) != null) {
                duplicate("/parts/" + i + "/id", part.id(), "parts");
            }
        }
    }

    private void checkWires(List<Wire> wires) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < wires.size(); i++) {
            Wire wire = wires.get(i);
            boolean again = !seen.add(wire.id());
            if (again || !isSound(wire)) {
                checkWire("/wires/" + i, wire, again);
            }
        }
    }

    /** Whether nothing is wrong with a wire, found without putting what could be into words. */
    private boolean isSound(Wire wire) {
        return !parts.containsKey(wire.id())
                && isTerminal(wire.from())
                && isTerminal(wire.to())
                && !wire.from().equals(wire.to());
    }

    private boolean isTerminal(TerminalRef ref) {
        Part part = parts.get(ref.part());
        return part != null && part.terminals().contains(ref.terminal());
    }

    private void checkWire(String at, Wire wire, boolean again) {
        if (again) {
            duplicate(at + "/id", wire.id(), "wires");
        }
        if (parts.containsKey(wire.id())) {
            // The answers name parts and wires side by side.
            duplicate(at + "/id", wire.id(), "parts and wires");
        }
        terminal(at + "/from", wire, wire.from());
        terminal(at + "/to", wire, wire.to());
        faults.check(
                !wire.from().equals(wire.to()),
                InputError.Code.CONTRADICTION,
                at + "/to",
                wire.to().toString(),
                "another terminal than from: a wire has two ends");
    }

    private void checkConnectors(List<Connector> connectors) {
        Set<String> seen = new HashSet<>();
        Map<String, String> taken = new HashMap<>();
        for (int i = 0; i < connectors.size(); i++) {
            Connector connector = connectors.get(i);
            String at = "/connectors/" + i;
            if (!seen.add(connector.id())) {
                duplicate(at + "/id", connector.id(), "connectors");
            }
            for (int h = 0; h < 2; h++) {
                String half = connector.halves().get(h);
                String pointer = at + "/halves/" + h;
                faults.check(
                        parts.get(half) instanceof ConnectorHalf,
                        InputError.Code.UNKNOWN_REFERENCE,
                        pointer,
                        half,
                        "the id of a part of kind connector-half");
                if (taken.put(half, connector.id()) != null) {
                    duplicate(pointer, half, "pushed-together halves");
                }
            }
        }
    }

    private void checkMeantLive(String at, Consumer consumer) {
        for (int i = 0; i < consumer.meantLiveWhen().size(); i++) {
            String alternative = at + "/meantLiveWhen/" + i + "/switches/";
            consumer.meantLiveWhen()
                    .get(i)
                    .switches()
                    .forEach((id, positions) -> checkPositions(alternative + id, id, positions));
        }
    }

    private void checkPositions(String pointer, String id, List<String> positions) {
        if (!(parts.get(id) instanceof Switch chosen)) {
            faults.check(false, InputError.Code.UNKNOWN_REFERENCE, pointer, id, "the id of a part of kind switch");
            return;
        }
        List<String> known =
                chosen.positions().stream().map(Switch.Position::name).toList();
        for (int i = 0; i < positions.size(); i++) {
            faults.check(
                    known.contains(positions.get(i)),
                    InputError.Code.UNKNOWN_REFERENCE,
                    pointer + "/" + i,
                    positions.get(i),
                    "a position of switch " + id + ": " + String.join(", ", known));
        }
    }

    /** A part that is not there is one fault, however many wires lead to it; so are all earth points if there is none. */
    private void reportMissing() {
        boolean noEarth = parts.values().stream().noneMatch(EarthPoint.class::isInstance);
        List<LooseEnd> atEarth = loose.stream()
                .filter(end -> noEarth && end.at().terminal().equals(EarthPoint.TERMINAL))
                .toList();
        List<String> earths = atEarth.size() < 2
                ? List.of()
                : atEarth.stream().map(end -> end.at().part()).distinct().toList();
        if (!earths.isEmpty()) {
            faults.add(new InputError(
                            InputError.Code.MISSING,
                            "/parts",
                            null,
                            "parts of kind earth with the ids " + String.join(", ", earths) + "; " + named(atEarth)
                                    + " lead there")
                    .at("the earth"));
        }
        Map<String, List<LooseEnd>> byPart = loose.stream()
                .filter(end -> !earths.contains(end.at().part()))
                .collect(Collectors.groupingBy(end -> end.at().part(), LinkedHashMap::new, Collectors.toList()));
        byPart.forEach((id, ends) -> faults.check(
                false,
                InputError.Code.UNKNOWN_REFERENCE,
                ends.get(0).pointer(),
                ends.get(0).at().toString(),
                "a terminal of a part of this plan; there is no part '" + id + "'"
                        + (ends.size() == 1 ? "" : ", to which " + named(ends) + " lead")));
    }

    private static String named(List<LooseEnd> ends) {
        List<String> wires = ends.stream().map(LooseEnd::wire).distinct().toList();
        String named = wires.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
        int more = wires.size() - MOST_NAMED;
        return "wires " + named + (more > 0 ? " and " + more + " more" : "");
    }

    private void terminal(String pointer, Wire wire, TerminalRef ref) {
        Part part = parts.get(ref.part());
        if (part == null) {
            loose.add(new LooseEnd(pointer, wire.id(), ref));
        } else {
            faults.check(
                    part.terminals().contains(ref.terminal()),
                    InputError.Code.UNKNOWN_REFERENCE,
                    pointer,
                    ref.toString(),
                    "a terminal of " + part.id() + " (" + part.kind() + "): " + String.join(", ", part.terminals()));
        }
    }

    private void duplicate(String pointer, String id, String among) {
        faults.check(false, InputError.Code.DUPLICATE, pointer, id, "an id used once among the " + among);
    }
}
