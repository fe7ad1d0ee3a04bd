package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import loomwright.circuit.Battery;
import loomwright.circuit.Connector;
import loomwright.circuit.Consumer;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Electromagnet;
import loomwright.circuit.Generator;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;

/**
 * Which way is down: how far each terminal is from the supply, and on which side of its part it is fed.
 *
 * <p>A wire that is directed says it itself. For others the shortest way from the supply decides (Dijkstra): a wire is a
 * step, one against its feed direction many, a way through a consumer some. Earth points lead nowhere, since each wire to
 * one is drawn with an earth sign of its own.
 */
public final class Flow {
    /** Deeper than any part: an earth, or what nothing joins to the supply. */
    public static final int BOTTOM = Integer.MAX_VALUE / 2;

    private static final int STEP = 1;
    private static final int CONSUMER = 10;
    private static final int BACKWARDS = 50;

    private final Map<TerminalRef, Integer> depth = new HashMap<>();
    private final Map<TerminalRef, List<Way>> ways = new HashMap<>();
    /** Wires that feed the terminal less those that it feeds, of the directed ones. */
    private final Map<TerminalRef, Integer> fedBy = new HashMap<>();

    private final Map<String, Integer> depthOfPart = new HashMap<>();
    private final Map<TerminalRef, Boolean> fromOutside = new HashMap<>();

    private record Way(TerminalRef to, int length, boolean outside) {}

    private record Reached(TerminalRef terminal, int depth, boolean fromOutside) {}

    private Flow() {}

    /** Of a plan, wherever its switches stand. */
    public static Flow of(Plan plan) {
        Flow flow = new Flow();
        Map<String, Part> parts = plan.partsById();
        for (Wire wire : plan.wires()) {
            boolean earthed = parts.get(wire.from().part()) instanceof EarthPoint
                    || parts.get(wire.to().part()) instanceof EarthPoint;
            if (!earthed) {
                flow.join(wire.from(), wire.to(), STEP, true);
                flow.join(wire.to(), wire.from(), wire.directed() ? BACKWARDS : STEP, true);
            }
            if (wire.directed()) {
                flow.fedBy.merge(wire.to(), 1, Integer::sum);
                flow.fedBy.merge(wire.from(), -1, Integer::sum);
            }
        }
        for (Connector connector : plan.connectors()) {
            flow.joinHalves(parts, connector);
        }
        plan.parts().forEach(flow::joinWithin);
        List<Part> roots = new ArrayList<>(plan.listParts(Battery.class));
        if (roots.isEmpty()) {
            roots.addAll(plan.listParts(Generator.class));
        }
        flow.spread(roots);
        return flow;
    }

    private void join(TerminalRef from, TerminalRef to, int length, boolean outside) {
        ways.computeIfAbsent(from, t -> new ArrayList<>()).add(new Way(to, length, outside));
    }

    private void joinHalves(Map<String, Part> parts, Connector connector) {
        Part one = parts.get(connector.halves().get(0));
        Part other = parts.get(connector.halves().get(1));
        if (one != null && other != null) {
            for (String way : one.terminals()) {
                if (other.terminals().contains(way)) {
                    join(one.terminal(way), other.terminal(way), STEP, false);
                    join(other.terminal(way), one.terminal(way), STEP, false);
                }
            }
        }
    }

    /** The ways through a part, whatever its state. A winding is no way to the contacts that it moves. */
    private void joinWithin(Part part) {
        if (part instanceof EarthPoint) {
            return;
        } else if (part instanceof Electromagnet) {
            Consumer magnet = (Consumer) part;
            List<String> winding = List.of(magnet.feedTerminal(), magnet.returnTerminal());
            joinAll(part, winding, CONSUMER);
            joinAll(
                    part,
                    part.terminals().stream().filter(t -> !winding.contains(t)).toList(),
                    STEP);
        } else {
            joinAll(part, part.terminals(), part instanceof Consumer ? CONSUMER : STEP);
        }
    }

    private void joinAll(Part part, List<String> terminals, int length) {
        for (String from : terminals) {
            for (String to : terminals) {
                if (!from.equals(to)) {
                    join(part.terminal(from), part.terminal(to), length, false);
                }
            }
        }
    }

    private void spread(List<Part> roots) {
        PriorityQueue<Reached> queue = new PriorityQueue<>(Comparator.comparingInt(Reached::depth)
                .thenComparing(r -> r.terminal().toString()));
        for (Part root : roots) {
            root.terminals().forEach(t -> queue.add(new Reached(root.terminal(t), 0, false)));
        }
        while (!queue.isEmpty()) {
            Reached reached = queue.remove();
            TerminalRef terminal = reached.terminal();
            if (depth.putIfAbsent(terminal, reached.depth()) != null) {
                continue;
            }
            depthOfPart.merge(terminal.part(), reached.depth(), Math::min);
            fromOutside.put(terminal, reached.fromOutside());
            for (Way way : ways.getOrDefault(terminal, List.of())) {
                queue.add(new Reached(way.to(), reached.depth() + way.length(), way.outside()));
            }
        }
    }

    /** How far a part is from the supply. */
    public int depth(String part) {
        return depthOfPart.getOrDefault(part, BOTTOM);
    }

    private int depth(TerminalRef terminal) {
        return depth.getOrDefault(terminal, BOTTOM);
    }

    /** Whether a terminal is fed from above. */
    boolean fromAbove(TerminalRef terminal) {
        int directed = fedBy.getOrDefault(terminal, 0);
        return directed == 0 ? fromOutside.getOrDefault(terminal, false) : directed > 0;
    }

    /** Whether the first of two ends that are alike is fed from below rather than the second. */
    boolean isTurned(TerminalRef one, TerminalRef other) {
        int directed = fedBy.getOrDefault(one, 0) - fedBy.getOrDefault(other, 0);
        return directed == 0 ? depth(other) < depth(one) : directed < 0;
    }

    /** Whether the first of two connector halves is fed from the second. */
    boolean isTurned(Part one, Part other) {
        int directed = fedBy(one) - fedBy(other);
        return directed == 0 ? depth(other.id()) < depth(one.id()) : directed < 0;
    }

    private int fedBy(Part part) {
        return part.terminals().stream()
                .mapToInt(t -> fedBy.getOrDefault(part.terminal(t), 0))
                .sum();
    }
}
