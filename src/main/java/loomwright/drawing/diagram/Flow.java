package loomwright.drawing.diagram;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import loomwright.circuit.Alternator;
import loomwright.circuit.Battery;
import loomwright.circuit.Connector;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Which way is down: how many parts lie between each part and the supply. Breadth-first over wires and connectors;
 * earth points lead nowhere, since each wire to one is drawn with an earth sign of its own.
 */
final class Flow {
    /** Deeper than any part: an earth, or what nothing joins to the supply. */
    static final int BOTTOM = Integer.MAX_VALUE / 2;

    private final Map<String, Integer> depth = new HashMap<>();
    private final Map<TerminalRef, List<TerminalRef>> others = new HashMap<>();

    private Flow() {}

    static Flow of(Plan plan) {
        Flow flow = new Flow();
        Map<String, List<String>> neighbours = new HashMap<>();
        Map<String, Part> parts = plan.partsById();
        for (Wire wire : plan.wires()) {
            flow.others.computeIfAbsent(wire.from(), t -> new ArrayList<>()).add(wire.to());
            flow.others.computeIfAbsent(wire.to(), t -> new ArrayList<>()).add(wire.from());
            join(neighbours, parts, wire.from().part(), wire.to().part());
        }
        for (Connector connector : plan.connectors()) {
            join(
                    neighbours,
                    parts,
                    connector.halves().get(0),
                    connector.halves().get(1));
        }
        List<String> roots =
                plan.listParts(Battery.class).stream().map(Part::id).toList();
        if (roots.isEmpty()) {
            roots = plan.listParts(Alternator.class).stream().map(Part::id).toList();
        }
        flow.spread(roots, neighbours);
        return flow;
    }

    private static void join(Map<String, List<String>> neighbours, Map<String, Part> parts, String one, String other) {
        if (!(parts.get(one) instanceof EarthPoint) && !(parts.get(other) instanceof EarthPoint)) {
            neighbours.computeIfAbsent(one, p -> new ArrayList<>()).add(other);
            neighbours.computeIfAbsent(other, p -> new ArrayList<>()).add(one);
        }
    }

    private void spread(List<String> roots, Map<String, List<String>> neighbours) {
        Deque<String> queue = new ArrayDeque<>(roots);
        roots.forEach(root -> depth.put(root, 0));
        while (!queue.isEmpty()) {
            String part = queue.remove();
            for (String next : neighbours.getOrDefault(part, List.of())) {
                if (depth.putIfAbsent(next, depth(part) + 1) == null) {
                    queue.add(next);
                }
            }
        }
    }

    int depth(String part) {
        return depth.getOrDefault(part, BOTTOM);
    }

    /** The depth of the nearest part that a terminal's wires lead to; {@link #BOTTOM} if they lead to earth or nowhere. */
    int depthBehind(TerminalRef terminal) {
        return others.getOrDefault(terminal, List.of()).stream()
                .mapToInt(other -> depth(other.part()))
                .min()
                .orElse(BOTTOM);
    }

    /** Whether a terminal is fed from above. */
    boolean fromAbove(TerminalRef terminal) {
        return depthBehind(terminal) < depth(terminal.part());
    }
}
