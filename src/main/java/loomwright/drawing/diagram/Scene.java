package loomwright.drawing.diagram;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.operation.PlanReadings.NodeReading;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.WireReading;
import org.jspecify.annotations.Nullable;

/** What is to be drawn: a plan, what it does in a step, and what is to be pointed out. */
final class Scene {
    private final Plan plan;
    private final StepReadings readings;
    private final List<Mark> marks;
    private final Set<String> fed;
    private final Map<String, NodeReading> nodes = new HashMap<>();
    private final Map<String, WireReading> wires = new HashMap<>();
    private final Map<String, PartReading> parts = new HashMap<>();

    /**
     * A scene.
     *
     * @param readings of that plan in one step; without tables where it has no solution
     * @param fed parts and wires on the way of a backfeed
     */
    Scene(Plan plan, StepReadings readings, List<Mark> marks, Set<String> fed) {
        this.plan = plan;
        this.readings = readings;
        this.marks = List.copyOf(marks);
        this.fed = Set.copyOf(fed);
        for (NodeReading node : readings.nodes()) {
            node.terminals().forEach(terminal -> nodes.put(terminal, node));
        }
        readings.wires().forEach(wire -> wires.put(wire.wire(), wire));
        readings.parts().forEach(part -> parts.put(part.part(), part));
    }

    Plan plan() {
        return plan;
    }

    StepReadings readings() {
        return readings;
    }

    List<Mark> marks() {
        return marks;
    }

    List<Mark> marksAt(String id) {
        return marks.stream().filter(mark -> mark.ids().contains(id)).toList();
    }

    /** Why a part, wire or connector stands out. */
    Emphasis emphasis(String id) {
        if (fed.contains(id)) {
            return Emphasis.BACKFEED;
        }
        boolean changed = marksAt(id).stream().anyMatch(mark -> mark.kind().isChange());
        return changed ? Emphasis.CHANGED : Emphasis.NONE;
    }

    /** The parts and wires that are on the way of a backfeed. */
    Set<String> fed() {
        return fed;
    }

    /** What a meter shows at a terminal, in words. */
    String volts(TerminalRef terminal) {
        NodeReading node = nodes.get(terminal.toString());
        if (node == null) {
            return "";
        }
        Double voltageV = node.voltageV();
        return voltageV == null ? "floats" : DiagramNumbers.volts(voltageV);
    }

    @Nullable
    WireReading wire(String id) {
        return wires.get(id);
    }

    @Nullable
    PartReading part(String id) {
        return parts.get(id);
    }
}
