package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Connector;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PlanComparison.Item;
import loomwright.comparison.PlanComparison.ItemChange;
import org.jspecify.annotations.Nullable;

/**
 * Two plans laid on each other: what is in both stands once, so that it has the same place in pictures of both, and only
 * what changes differs. For drawing alone: nobody solves it.
 *
 * @param all everything that is in either plan; what is in both is as it is after
 * @param gone ids of what is in the plan before only; a wire that was moved is there twice, its old run under an id of
 *     its own
 * @param added ids of what is in the plan after only
 * @param was the id before of what has another id here, by its id here
 */
record Overlay(Plan all, Set<String> gone, Set<String> added, Map<String, String> was) {

    static Overlay of(Plan before, Plan after, List<ItemChange> changes) {
        Map<String, String> partNow = new HashMap<>();
        Map<String, String> wireNow = new HashMap<>();
        Map<String, String> was = new HashMap<>();
        Set<String> added = new HashSet<>();
        for (ItemChange change : changes) {
            String id = change.before();
            String now = change.after();
            if (id != null && now != null && !id.equals(now)) {
                (change.item() == Item.WIRE ? wireNow : partNow).put(id, now);
                was.put(now, id);
            } else if (id == null && now != null) {
                added.add(now);
            }
        }
        Map<String, Part> parts = new LinkedHashMap<>(after.partsById());
        Set<String> gone = new HashSet<>();
        for (Part part : before.parts()) {
            String now = partNow.getOrDefault(part.id(), part.id());
            if (!parts.containsKey(now)) {
                parts.put(now, Section.drawn(part));
                gone.add(now);
            }
        }
        List<Wire> wires = new ArrayList<>(after.wires());
        for (Wire wire : before.wires()) {
            TerminalRef from = now(wire.from(), partNow);
            TerminalRef to = now(wire.to(), partNow);
            Wire same =
                    after.findWire(wireNow.getOrDefault(wire.id(), wire.id())).orElse(null);
            if (!joins(same, from, to) && has(parts, from) && has(parts, to)) {
                Plan all = after.with(List.copyOf(parts.values()), wires);
                String id = same == null && all.findWire(wire.id()).isEmpty()
                        ? wire.id()
                        : all.freeId(wire.id(), "-before");
                wires.add(renamed(wire, id, from, to));
                gone.add(id);
                was.put(id, wire.id());
            }
        }
        return new Overlay(
                new Plan(
                        after.schema(),
                        after.name(),
                        after.system(),
                        after.conditions(),
                        List.copyOf(parts.values()),
                        wires,
                        connectors(before, after, gone),
                        after.notes()),
                gone,
                added,
                was);
    }

    /** Whether a wire is on two terminals, whichever way round. */
    private static boolean joins(@Nullable Wire wire, TerminalRef one, TerminalRef other) {
        return wire != null
                && ((wire.from().equals(one) && wire.to().equals(other))
                        || (wire.from().equals(other) && wire.to().equals(one)));
    }

    /** A part may have lost a terminal, and with it the place where the old run of a wire could be drawn. */
    private static boolean has(Map<String, Part> parts, TerminalRef end) {
        Part part = parts.get(end.part());
        return part != null && part.terminals().contains(end.terminal());
    }

    private static TerminalRef now(TerminalRef end, Map<String, String> partNow) {
        return new TerminalRef(partNow.getOrDefault(end.part(), end.part()), end.terminal());
    }

    private static Wire renamed(Wire wire, String id, TerminalRef from, TerminalRef to) {
        return new Wire(id, from, to, wire.conductor(), wire.colour(), wire.laid(), wire.joints(), wire.directed());
    }

    private static List<Connector> connectors(Plan before, Plan after, Set<String> gone) {
        List<Connector> connectors = new ArrayList<>(after.connectors());
        for (Connector connector : before.connectors()) {
            boolean free = connector.halves().stream().allMatch(gone::contains)
                    && connectors.stream().noneMatch(other -> other.id().equals(connector.id()));
            if (free) {
                connectors.add(connector);
                gone.add(connector.id());
            }
        }
        return connectors;
    }
}
