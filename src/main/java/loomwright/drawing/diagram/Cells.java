package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.circuit.EarthPoint;
import loomwright.circuit.Joint;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.circuit.TerminalRef;
import loomwright.circuit.Wire;
import loomwright.drawing.diagram.Cell.End;
import org.jspecify.annotations.Nullable;

/**
 * The cells of a drawing: one for each part, one for two connector halves that are together, one for each wire's end at
 * an earth.
 */
final class Cells {
    private final Scene scene;
    private final Plan plan;
    private final Flow flow;
    private final Map<End, Double> placed;
    private final Map<String, Part> parts;
    private final Map<TerminalRef, List<String>> wiresAt = new HashMap<>();
    private final List<Cell> cells = new ArrayList<>();

    private Cells(Scene scene, Flow flow, Map<End, Double> placed) {
        this.scene = scene;
        this.plan = scene.plan();
        this.flow = flow;
        this.placed = placed;
        this.parts = plan.partsById();
    }

    /**
     * Lists the cells.
     *
     * @param placed columns of the ends of wires in an earlier layout, from which the order of terminals is taken; empty
     *     for none
     */
    static List<Cell> list(Scene scene, Flow flow, Map<End, Double> placed) {
        Cells cells = new Cells(scene, flow, placed);
        cells.addWires();
        cells.addParts();
        return List.copyOf(cells.cells);
    }

    private void addWires() {
        for (Wire wire : plan.wires()) {
            boolean fromEarth = parts.get(wire.from().part()) instanceof EarthPoint;
            boolean toEarth = parts.get(wire.to().part()) instanceof EarthPoint;
            if (fromEarth != toEarth) {
                TerminalRef end = fromEarth ? wire.from() : wire.to();
                TerminalRef other = fromEarth ? wire.to() : wire.from();
                addEarth(wire, end);
                wiresAt.computeIfAbsent(other, t -> new ArrayList<>()).add(wire.id());
            } else {
                wiresAt.computeIfAbsent(wire.from(), t -> new ArrayList<>()).add(wire.id());
                wiresAt.computeIfAbsent(wire.to(), t -> new ArrayList<>()).add(wire.id());
            }
        }
        Map<End, TerminalRef> otherEnds = new HashMap<>();
        for (Wire wire : plan.wires()) {
            otherEnds.put(new End(wire.id(), wire.from()), wire.to());
            otherEnds.put(new End(wire.id(), wire.to()), wire.from());
        }
        wiresAt.forEach((terminal, wires) -> {
            if (wires.size() > 1) {
                wires.sort(Comparator.comparingDouble(wire -> column(wire, otherEnds.get(new End(wire, terminal)))));
            }
        });
    }

    private double column(String wire, @Nullable TerminalRef end) {
        Double column = end == null ? null : placed.get(new End(wire, end));
        return column == null ? 0 : column;
    }

    private void addEarth(Wire wire, TerminalRef end) {
        Part earth = parts.get(end.part());
        if (earth == null) {
            throw new IllegalStateException(end + " is not of this plan");
        }
        Setting setting = new Setting(earth, flow, Map.of(end.terminal(), List.of(wire.id())), Map.of(), null);
        cells.add(new CellBuilder(scene, wire.id() + " at " + earth.id(), Flow.BOTTOM, Symbols.of(setting))
                .single(earth, setting)
                .emphasis(scene.emphasis(earth.id()) == Emphasis.NONE ? Emphasis.NONE : scene.emphasis(wire.id()))
                .build());
    }

    private void addParts() {
        Map<String, Connector> connectorOf = new HashMap<>();
        plan.connectors().forEach(c -> c.halves().forEach(half -> connectorOf.put(half, c)));
        Set<String> done = new HashSet<>();
        Set<String> earthed = new HashSet<>();
        cells.forEach(cell -> earthed.addAll(cell.named().ids()));
        for (Part part : plan.parts()) {
            Connector connector = connectorOf.get(part.id());
            if (connector != null) {
                if (done.add(connector.id())) {
                    addConnector(connector);
                }
            } else if (!(part instanceof EarthPoint) || !earthed.contains(part.id()) || hasWire(part)) {
                addPart(part);
            }
        }
    }

    private boolean hasWire(Part part) {
        return part.terminals().stream().anyMatch(t -> wiresAt.containsKey(part.terminal(t)));
    }

    private void addPart(Part part) {
        Setting setting = setting(part);
        boolean free = part instanceof Joint || part instanceof Switch || part instanceof ConnectorHalf;
        cells.add(new CellBuilder(scene, part.id(), flow.depth(part.id()), Symbols.of(setting))
                .single(part, setting)
                .emphasis(scene.emphasis(part.id()))
                .free(free)
                .build());
    }

    private void addConnector(Connector connector) {
        ConnectorHalf one = half(connector, 0);
        ConnectorHalf other = half(connector, 1);
        boolean turned = flow.isTurned(one, other);
        ConnectorHalf upper = turned ? other : one;
        ConnectorHalf lower = turned ? one : other;
        Setting above = setting(upper);
        Setting below = setting(lower);
        cells.add(new CellBuilder(
                        scene,
                        connector.id(),
                        flow.depth(upper.id()),
                        JunctionSymbols.mated(upper, above, lower, below))
                .mated(connector, above, below)
                .emphasis(scene.emphasis(connector.id()))
                .free(true)
                .build());
    }

    private ConnectorHalf half(Connector connector, int which) {
        // The plan's own check has made sure that both are there.
        return (ConnectorHalf) plan.findPart(connector.halves().get(which)).orElseThrow();
    }

    private Setting setting(Part part) {
        Map<String, List<String>> wires = new HashMap<>();
        Map<String, Double> order = new HashMap<>();
        for (String terminal : part.terminals()) {
            List<String> here = wiresAt.getOrDefault(part.terminal(terminal), List.of());
            wires.put(terminal, here);
            here.stream()
                    .mapToDouble(wire -> placed.getOrDefault(new End(wire, part.terminal(terminal)), Double.NaN))
                    .filter(Double::isFinite)
                    .average()
                    .ifPresent(x -> order.put(terminal, x));
        }
        return new Setting(part, flow, wires, order, scene.part(part.id()));
    }
}
