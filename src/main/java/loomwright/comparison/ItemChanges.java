package loomwright.comparison;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import loomwright.circuit.Condition;
import loomwright.circuit.Connector;
import loomwright.circuit.FusibleLink;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PlanComparison.Change;
import loomwright.comparison.PlanComparison.Item;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PlanComparison.PropertyChange;

/** What was added, removed, renamed, moved, resized or changed in a property. */
final class ItemChanges {
    /** The properties that make the size of a wire or link. */
    static final Set<String> SIZE = Set.of("size", "lengthM", "lengthFt", "resistanceOhm");

    private static final Set<String> ENDS = Set.of("from", "to");

    private final Matching matching;
    private final Map<TerminalRef, Set<TerminalRef>> wasJoined;
    private final Map<TerminalRef, Set<TerminalRef>> isJoined;

    private ItemChanges(Matching matching) {
        this.matching = matching;
        this.wasJoined = new HashMap<>();
        Matching.neighbours(matching.before())
                .forEach((terminal, far) -> wasJoined.put(
                        matching.translated(terminal),
                        far.stream().map(matching::translated).collect(Collectors.toSet())));
        this.isJoined = Matching.neighbours(matching.after());
    }

    static List<ItemChange> of(Matching matching) {
        ItemChanges changes = new ItemChanges(matching);
        Plan before = matching.before();
        Plan after = matching.after();
        List<ItemChange> all = new ArrayList<>();
        all.addAll(changes.of(Item.PART, before.parts(), after.parts(), Part::id, matching.parts(), changes::part));
        all.addAll(changes.of(Item.WIRE, before.wires(), after.wires(), Wire::id, matching.wires(), changes::wire));
        all.addAll(changes.of(
                Item.CONNECTOR,
                before.connectors(),
                after.connectors(),
                Connector::id,
                matching.connectors(),
                changes::connector));
        return all;
    }

    /** What changed in the system and the supplies. */
    static List<PropertyChange> settings(Plan before, Plan after) {
        List<PropertyChange> changes = new ArrayList<>();
        PropertyChange.list(before.system(), after.system(), Set.of())
                .forEach(c -> changes.add(new PropertyChange("system." + c.property(), c.before(), c.after())));
        for (Condition condition : Condition.values()) {
            String name = "conditions." + PropertyValue.word(condition) + ".";
            PropertyChange.list(before.supply(condition), after.supply(condition), Set.of())
                    .forEach(c -> changes.add(new PropertyChange(name + c.property(), c.before(), c.after())));
        }
        return changes;
    }

    /** How one thing that is in both plans changed. */
    private interface Comparer<T> {
        void compare(T before, T after, Set<Change> changes, List<PropertyChange> properties);
    }

    private <T> List<ItemChange> of(
            Item item,
            List<T> before,
            List<T> after,
            Function<T, String> id,
            Map<String, String> pairs,
            Comparer<T> comparer) {
        Map<String, T> was = new LinkedHashMap<>();
        before.forEach(t -> was.put(id.apply(t), t));
        Map<String, T> is = new LinkedHashMap<>();
        after.forEach(t -> is.put(id.apply(t), t));
        List<ItemChange> changes = new ArrayList<>();
        was.forEach((wasId, thing) -> {
            T partner = is.get(pairs.getOrDefault(wasId, ""));
            if (partner == null) {
                changes.add(new ItemChange(
                        item, wasId, null, Descriptions.of(thing), null, List.of(Change.REMOVED), List.of()));
                return;
            }
            String isId = id.apply(partner);
            Set<Change> kinds = EnumSet.noneOf(Change.class);
            List<PropertyChange> properties = new ArrayList<>();
            if (!isId.equals(wasId)) {
                kinds.add(Change.RENAMED);
            }
            comparer.compare(thing, partner, kinds, properties);
            if (!kinds.isEmpty()) {
                changes.add(new ItemChange(
                        item,
                        wasId,
                        isId,
                        Descriptions.of(thing),
                        Descriptions.of(partner),
                        List.copyOf(kinds),
                        properties));
            }
        });
        is.forEach((isId, thing) -> {
            if (!pairs.containsValue(isId)) {
                changes.add(new ItemChange(
                        item, null, isId, null, Descriptions.of(thing), List.of(Change.ADDED), List.of()));
            }
        });
        return changes;
    }

    private void part(Part before, Part after, Set<Change> changes, List<PropertyChange> properties) {
        if (!before.kind().equals(after.kind())) {
            properties.add(PropertyChange.of("kind", before.kind(), after.kind()));
        }
        properties.addAll(PropertyChange.list((Record) before, (Record) after, Set.of("id")));
        if (isMoved(before, after)) {
            changes.add(Change.MOVED);
        }
        boolean sized = before instanceof FusibleLink && after instanceof FusibleLink;
        sort(properties, sized ? SIZE : Set.of(), changes);
    }

    /** Whether every terminal that was wired and still is leads to other places altogether. */
    private boolean isMoved(Part before, Part after) {
        boolean moved = false;
        for (String terminal : before.terminals()) {
            Set<TerminalRef> was = wasJoined.getOrDefault(after.terminal(terminal), Set.of());
            Set<TerminalRef> is = isJoined.getOrDefault(after.terminal(terminal), Set.of());
            if (!was.isEmpty() && !is.isEmpty()) {
                if (!Collections.disjoint(was, is)) {
                    return false;
                }
                moved = true;
            }
        }
        return moved;
    }

    private void wire(Wire before, Wire after, Set<Change> changes, List<PropertyChange> properties) {
        Wire renamed = before.withEnds(matching.translated(before.from()), matching.translated(before.to()));
        properties.addAll(PropertyChange.list(renamed, after, Set.of("id")));
        if (!ends(renamed).equals(ends(after))) {
            changes.add(Change.MOVED);
        } else if (properties.stream().anyMatch(p -> ENDS.contains(p.property()))) {
            changes.add(Change.CHANGED);
        }
        sort(properties, SIZE, changes);
    }

    private static Set<TerminalRef> ends(Wire wire) {
        return new HashSet<>(List.of(wire.from(), wire.to()));
    }

    private void connector(Connector before, Connector after, Set<Change> changes, List<PropertyChange> properties) {
        properties.addAll(PropertyChange.list(before, after, Set.of("id", "halves")));
        Set<String> was = before.halves().stream().map(matching::translated).collect(Collectors.toSet());
        if (!was.equals(Set.copyOf(after.halves()))) {
            properties.add(PropertyChange.of("halves", before.halves(), after.halves()));
            changes.add(Change.MOVED);
        }
        sort(properties.stream().filter(p -> !p.property().equals("halves")).toList(), Set.of(), changes);
    }

    private static void sort(List<PropertyChange> properties, Set<String> size, Set<Change> changes) {
        for (PropertyChange property : properties) {
            if (size.contains(property.property())) {
                changes.add(Change.RESIZED);
            } else if (!ENDS.contains(property.property())) {
                changes.add(Change.CHANGED);
            }
        }
    }
}
