package loomwright.comparison;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Which part, wire and connector of one plan is which of the other.
 *
 * <p>The same id is the same thing. What is left is the same if it is of the same kind between the same places, and the
 * only one of its plan that is: a part by the terminals that its wires lead to, then a wire by its two ends, a connector
 * by its halves. Cost: in proportion to parts and wires.
 */
final class Matching {
    private final Plan before;
    private final Plan after;
    private final Map<String, String> parts;
    private final Map<String, String> wires;
    private final Map<String, String> connectors;

    private Matching(Plan before, Plan after) {
        this.before = before;
        this.after = after;
        this.parts = byId(ids(before.parts(), Part::id), ids(after.parts(), Part::id));
        Set<String> common = Set.copyOf(parts.keySet());
        Map<String, String> was = unmatched(before.parts(), Part::id, common, p -> surroundings(p, before, common));
        Map<String, String> is = unmatched(after.parts(), Part::id, common, p -> surroundings(p, after, common));
        pair(was, is, parts);
        this.wires = byId(ids(before.wires(), Wire::id), ids(after.wires(), Wire::id));
        Set<String> commonWires = Set.copyOf(wires.keySet());
        pair(
                unmatched(before.wires(), Wire::id, commonWires, w -> ends(w, this::translated)),
                unmatched(after.wires(), Wire::id, commonWires, w -> ends(w, Function.identity())),
                wires);
        this.connectors = byId(ids(before.connectors(), Connector::id), ids(after.connectors(), Connector::id));
        Set<String> commonConnectors = Set.copyOf(connectors.keySet());
        pair(
                unmatched(before.connectors(), Connector::id, commonConnectors, c -> halves(c, this::translated)),
                unmatched(after.connectors(), Connector::id, commonConnectors, c -> halves(c, Function.identity())),
                connectors);
    }

    static Matching of(Plan before, Plan after) {
        return new Matching(before, after);
    }

    Plan before() {
        return before;
    }

    Plan after() {
        return after;
    }

    /** Parts that are in both, id before to id after. */
    Map<String, String> parts() {
        return parts;
    }

    Map<String, String> wires() {
        return wires;
    }

    Map<String, String> connectors() {
        return connectors;
    }

    /** The id after, of a part, wire or connector of the plan before; the same if it is not in both. */
    String translated(String id) {
        return parts.getOrDefault(id, wires.getOrDefault(id, connectors.getOrDefault(id, id)));
    }

    /** The name after, of a terminal of the plan before. */
    TerminalRef translated(TerminalRef terminal) {
        return new TerminalRef(parts.getOrDefault(terminal.part(), terminal.part()), terminal.terminal());
    }

    private static <T> List<String> ids(List<T> list, Function<T, String> id) {
        return list.stream().map(id).toList();
    }

    private static Map<String, String> byId(List<String> before, List<String> after) {
        Set<String> known = new HashSet<>(after);
        Map<String, String> common = new LinkedHashMap<>();
        before.stream().filter(known::contains).forEach(id -> common.put(id, id));
        return common;
    }

    /** Signature to id of the things without a partner, those alone with their signature. */
    private static <T> Map<String, String> unmatched(
            List<T> list, Function<T, String> id, Set<String> matched, Function<T, Optional<String>> signature) {
        Map<String, String> found = new LinkedHashMap<>();
        Set<String> twice = new HashSet<>();
        for (T thing : list) {
            if (matched.contains(id.apply(thing))) {
                continue;
            }
            signature.apply(thing).ifPresent(s -> {
                if (found.putIfAbsent(s, id.apply(thing)) != null) {
                    twice.add(s);
                }
            });
        }
        found.keySet().removeAll(twice);
        return found;
    }

    private static void pair(Map<String, String> before, Map<String, String> after, Map<String, String> pairs) {
        before.forEach((signature, id) -> {
            String partner = after.get(signature);
            if (partner != null) {
                pairs.put(id, partner);
            }
        });
    }

    private static Optional<String> surroundings(Part part, Plan plan, Set<String> common) {
        Set<String> wired = new TreeSet<>();
        for (Wire wire : plan.wires()) {
            surrounding(part, wire.from(), wire.to(), common).ifPresent(wired::add);
            surrounding(part, wire.to(), wire.from(), common).ifPresent(wired::add);
        }
        return wired.isEmpty() ? Optional.empty() : Optional.of(part.kind() + " " + wired);
    }

    private static Optional<String> surrounding(Part part, TerminalRef own, TerminalRef far, Set<String> common) {
        if (!own.part().equals(part.id())) {
            return Optional.empty();
        }
        return Optional.of(own.terminal() + ">" + (common.contains(far.part()) ? far : "?"));
    }

    private static Optional<String> ends(Wire wire, Function<TerminalRef, TerminalRef> name) {
        return Optional.of(new TreeSet<>(List.of(
                        name.apply(wire.from()).toString(),
                        name.apply(wire.to()).toString()))
                .toString());
    }

    private static Optional<String> halves(Connector connector, Function<String, String> name) {
        return Optional.of(new TreeSet<>(connector.halves().stream().map(name).toList()).toString());
    }

    /** For each terminal of a plan the terminals at the far ends of its wires. */
    static Map<TerminalRef, Set<TerminalRef>> neighbours(Plan plan) {
        Map<TerminalRef, Set<TerminalRef>> neighbours = new HashMap<>();
        for (Wire wire : plan.wires()) {
            neighbours.computeIfAbsent(wire.from(), t -> new HashSet<>()).add(wire.to());
            neighbours.computeIfAbsent(wire.to(), t -> new HashSet<>()).add(wire.from());
        }
        return neighbours;
    }

    /** The pairs of parts of both plans, in the order of the plan before. */
    List<PartPair> partPairs() {
        Map<String, Part> was = before.partsById();
        Map<String, Part> is = after.partsById();
        List<PartPair> pairs = new ArrayList<>();
        parts.forEach((b, a) -> {
            Part beforePart = was.get(b);
            Part afterPart = is.get(a);
            if (beforePart != null && afterPart != null) {
                pairs.add(new PartPair(beforePart, afterPart));
            }
        });
        return pairs;
    }

    /** The same part in both plans. */
    record PartPair(Part before, Part after) {}
}
