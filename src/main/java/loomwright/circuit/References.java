package loomwright.circuit;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.list;
import static loomwright.message.Arg.texts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.message.Arg;
import loomwright.message.Argument;

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
                duplicate("/parts/" + i + "/id", part.id(), AcceptedPlan.Among.PARTS);
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
            duplicate(at + "/id", wire.id(), AcceptedPlan.Among.WIRES);
        }
        if (parts.containsKey(wire.id())) {
            // The answers name parts and wires side by side.
            duplicate(at + "/id", wire.id(), AcceptedPlan.Among.PARTS_AND_WIRES);
        }
        terminal(at + "/from", wire, wire.from());
        terminal(at + "/to", wire, wire.to());
        faults.check(
                !wire.from().equals(wire.to()),
                InputError.Code.CONTRADICTION,
                at + "/to",
                wire.to().toString(),
                AcceptedPlan.OTHER_END);
    }

    private void checkConnectors(List<Connector> connectors) {
        Set<String> seen = new HashSet<>();
        Map<String, String> taken = new HashMap<>();
        for (int i = 0; i < connectors.size(); i++) {
            Connector connector = connectors.get(i);
            String at = "/connectors/" + i;
            if (!seen.add(connector.id())) {
                duplicate(at + "/id", connector.id(), AcceptedPlan.Among.CONNECTORS);
            }
            for (int h = 0; h < 2; h++) {
                String half = connector.halves().get(h);
                String pointer = at + "/halves/" + h;
                faults.check(
                        parts.get(half) instanceof ConnectorHalf,
                        InputError.Code.UNKNOWN_REFERENCE,
                        pointer,
                        half,
                        AcceptedPlan.PART_OF_KIND,
                        arg("kind", "connector-half"));
                if (taken.put(half, connector.id()) != null) {
                    duplicate(pointer, half, AcceptedPlan.Among.HALVES);
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
            faults.check(
                    false,
                    InputError.Code.UNKNOWN_REFERENCE,
                    pointer,
                    id,
                    AcceptedPlan.PART_OF_KIND,
                    arg("kind", "switch"));
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
                    AcceptedPlan.POSITION_OF,
                    arg("switch", id),
                    texts("positions", known));
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
                            AcceptedPlan.EARTH_POINTS.with(texts("ids", earths), named(atEarth)))
                    .at(PlanPlace.EARTH.text()));
        }
        Map<String, List<LooseEnd>> byPart = loose.stream()
                .filter(end -> !earths.contains(end.at().part()))
                .collect(Collectors.groupingBy(end -> end.at().part(), LinkedHashMap::new, Collectors.toList()));
        byPart.forEach((id, ends) -> faults.check(
                false,
                InputError.Code.UNKNOWN_REFERENCE,
                ends.get(0).pointer(),
                ends.get(0).at().toString(),
                AcceptedPlan.EXISTING_TERMINAL,
                arg("part", id),
                named(ends)));
    }

    /** The wires, of many the first and how many more. */
    private static Arg named(List<LooseEnd> ends) {
        List<String> wires = ends.stream().map(LooseEnd::wire).distinct().toList();
        Stream<Argument> first = wires.stream().limit(MOST_NAMED).map(Argument.Verbatim::new);
        int more = wires.size() - MOST_NAMED;
        Stream<Argument> rest = Stream.of(new Argument.Nested(AcceptedPlan.MORE_WIRES.with(arg("more", more))));
        return list("wires", (more > 0 ? Stream.concat(first, rest) : first).toList());
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
                    AcceptedPlan.TERMINAL_OF,
                    arg("part", part.id()),
                    arg("kind", part.kind()),
                    texts("terminals", part.terminals()));
        }
    }

    private void duplicate(String pointer, String id, AcceptedPlan.Among among) {
        faults.check(false, InputError.Code.DUPLICATE, pointer, id, AcceptedPlan.UNUSED_ID, arg("among", among));
    }
}
