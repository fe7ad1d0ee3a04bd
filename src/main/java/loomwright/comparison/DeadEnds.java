package loomwright.comparison;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import loomwright.circuit.Battery;
import loomwright.circuit.Connector;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.comparison.PlanComparison.Item;
import loomwright.comparison.PlanComparison.Leftover.Kind;
import org.jspecify.annotations.Nullable;

/**
 * What no current can flow through in any position of any contact, because it leads nowhere.
 *
 * <p>Wires, connector ways and the ways through parts are the edges of a graph; an edge with nothing else at one of its
 * ends is taken off, again and again. What goes is a dead end. Cost: in proportion to the edges. A loop that hangs by a
 * single wire, with no source in it, is not found this way.
 */
final class DeadEnds {
    /** A dead end; the terminal is where a loose wire end is. */
    record DeadEnd(Kind kind, String id, @Nullable String terminal) {}

    private record Edge(Item owner, String id, TerminalRef a, TerminalRef b) {}

    private static final String CHASSIS = "";

    private final Plan plan;
    private final Map<String, Part> parts;
    private final List<Edge> edges = new ArrayList<>();
    private final Map<String, Set<Edge>> edgesAt = new LinkedHashMap<>();
    private final Set<Edge> taken = new LinkedHashSet<>();
    /** Nodes where something other than a connector way was taken off: an end there is not loose. */
    private final Set<String> hadMore = new HashSet<>();
    /** The chassis and the poles of batteries: never a dead end, whatever hangs there. */
    private final Set<String> sources = new HashSet<>(Set.of(CHASSIS));

    private final List<DeadEnd> found = new ArrayList<>();

    private DeadEnds(Plan plan) {
        this.plan = plan;
        this.parts = plan.partsById();
    }

    static List<DeadEnd> of(Plan plan) {
        DeadEnds deadEnds = new DeadEnds(plan);
        deadEnds.build();
        deadEnds.prune();
        deadEnds.parts();
        return deadEnds.found;
    }

    private void build() {
        plan.wires().forEach(w -> add(Item.WIRE, w.id(), w.from(), w.to()));
        for (Connector connector : plan.connectors()) {
            Part one = part(connector.halves().get(0));
            Part other = part(connector.halves().get(1));
            for (String way : one.terminals()) {
                if (other.terminals().contains(way)) {
                    add(Item.CONNECTOR, connector.id(), one.terminal(way), other.terminal(way));
                }
            }
        }
        for (Battery battery : plan.listParts(Battery.class)) {
            battery.terminals().forEach(t -> sources.add(node(battery.terminal(t))));
        }
        for (Part part : plan.parts()) {
            for (List<String> way : PartWays.of(part, plan.system())) {
                add(Item.PART, part.id(), part.terminal(way.get(0)), part.terminal(way.get(1)));
            }
        }
    }

    private void add(Item owner, String id, TerminalRef a, TerminalRef b) {
        if (!node(a).equals(node(b))) {
            Edge edge = new Edge(owner, id, a, b);
            edges.add(edge);
            edgesAt.computeIfAbsent(node(a), n -> new LinkedHashSet<>()).add(edge);
            edgesAt.computeIfAbsent(node(b), n -> new LinkedHashSet<>()).add(edge);
        }
    }

    private Part part(String id) {
        return Objects.requireNonNull(parts.get(id), "a plan's connector has halves of the plan");
    }

    private String node(TerminalRef terminal) {
        Part part = parts.get(terminal.part());
        if (part instanceof Joint) {
            return part.id();
        }
        return part instanceof EarthPoint ? CHASSIS : terminal.toString();
    }

    private void prune() {
        Deque<String> ends = new ArrayDeque<>(edgesAt.keySet());
        while (!ends.isEmpty()) {
            String node = ends.poll();
            Set<Edge> here = edgesAt.getOrDefault(node, Set.of());
            if (here.size() != 1 || sources.contains(node)) {
                continue;
            }
            Edge edge = here.iterator().next();
            boolean endsAtA = node(edge.a()).equals(node);
            TerminalRef end = endsAtA ? edge.a() : edge.b();
            TerminalRef far = endsAtA ? edge.b() : edge.a();
            take(edge, node, end);
            ends.add(node(far));
            if (edge.owner() != Item.CONNECTOR) {
                hadMore.add(node(far));
            }
        }
    }

    private void take(Edge edge, String node, TerminalRef end) {
        taken.add(edge);
        edgesAt.getOrDefault(node(edge.a()), new HashSet<>()).remove(edge);
        edgesAt.getOrDefault(node(edge.b()), new HashSet<>()).remove(edge);
        if (edge.owner() == Item.WIRE) {
            found.add(
                    hadMore.contains(node)
                            ? new DeadEnd(Kind.IDLE_WIRE, edge.id(), null)
                            : new DeadEnd(Kind.LOOSE_END, edge.id(), end.toString()));
        }
    }

    /** A part has nothing behind it if all its contacts, or all its ways, lead nowhere. */
    private void parts() {
        Set<TerminalRef> wired = new HashSet<>();
        for (Wire wire : plan.wires()) {
            wired.add(wire.from());
            wired.add(wire.to());
        }
        for (Part part : plan.parts()) {
            List<List<String>> ways = PartWays.work(part, plan.system());
            boolean idle = ways.isEmpty()
                    ? part.terminals().stream().map(part::terminal).noneMatch(wired::contains)
                    : ways.stream().allMatch(w -> isTaken(part, w));
            if (idle) {
                found.add(new DeadEnd(Kind.IDLE_PART, part.id(), null));
            }
        }
    }

    private boolean isTaken(Part part, List<String> way) {
        return taken.contains(new Edge(Item.PART, part.id(), part.terminal(way.get(0)), part.terminal(way.get(1))));
    }
}
