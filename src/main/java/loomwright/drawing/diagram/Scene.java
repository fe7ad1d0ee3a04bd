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
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/** What is to be drawn: a plan, what it does in a step, and what is to be pointed out. */
final class Scene {
    private final Plan plan;
    private final StepReadings readings;
    private final List<Mark> marks;
    private final Set<Mark> absent;
    private final Map<String, Emphasis> emphasis;
    private final Map<String, String> names;
    private final Map<String, NodeReading> nodes = new HashMap<>();
    private final Map<String, WireReading> wires = new HashMap<>();
    private final Map<String, PartReading> parts = new HashMap<>();
    private final boolean figures;

    /**
     * A scene.
     *
     * @param readings of that plan in one step; without tables where it has no solution
     * @param marks of this and of all other scenes of the circuit, which leave room for each other's
     * @param absent those of them that this scene does not show
     * @param emphasis parts, wires and connectors that stand out
     * @param names what a wire or part is called in the readings and for a person, if not by its id
     */
    Scene(
            Plan plan,
            StepReadings readings,
            List<Mark> marks,
            Set<Mark> absent,
            Map<String, Emphasis> emphasis,
            Map<String, String> names) {
        this(plan, readings, marks, absent, emphasis, names, true);
    }

    private Scene(
            Plan plan,
            StepReadings readings,
            List<Mark> marks,
            Set<Mark> absent,
            Map<String, Emphasis> emphasis,
            Map<String, String> names,
            boolean figures) {
        this.figures = figures;
        this.plan = plan;
        this.readings = readings;
        this.marks = List.copyOf(marks);
        this.absent = Set.copyOf(absent);
        this.emphasis = Map.copyOf(emphasis);
        this.names = Map.copyOf(names);
        for (NodeReading node : readings.nodes()) {
            node.terminals().forEach(terminal -> nodes.put(terminal, node));
        }
        readings.wires().forEach(wire -> wires.put(wire.wire(), wire));
        readings.parts().forEach(part -> parts.put(part.part(), part));
    }

    /** The wiring alone: no step, no figures, colours in words. For somebody who has the wires in hand. */
    static Scene ofWiring(Plan plan, List<Mark> marks, Map<String, Emphasis> emphasis, Map<String, String> names) {
        StepReadings none = new StepReadings(
                Step.OFF, "", true, List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), null, null);
        return new Scene(plan, none, marks, Set.of(), emphasis, names, false);
    }

    Plan plan() {
        return plan;
    }

    /** Whether it says what everything does in its step. */
    boolean figures() {
        return figures;
    }

    StepReadings readings() {
        return readings;
    }

    /** What a wire or part is called. */
    String name(String id) {
        return names.getOrDefault(id, id);
    }

    /** The marks that it and the scenes placed together with it show. */
    List<Mark> allMarks() {
        return marks;
    }

    /** The marks that it shows. */
    List<Mark> marks() {
        return marks.stream().filter(this::shows).toList();
    }

    boolean shows(Mark mark) {
        return !absent.contains(mark);
    }

    /** The marks that there is room for at a part or wire, shown or not. */
    List<Mark> marksAt(String id) {
        return marks.stream().filter(mark -> mark.ids().contains(id)).toList();
    }

    /** Why a part, wire or connector stands out. */
    Emphasis emphasis(String id) {
        return emphasis.getOrDefault(id, Emphasis.NONE);
    }

    /** What a meter shows at a terminal, in words. */
    String volts(TerminalRef terminal) {
        NodeReading node = nodes.get(name(terminal.part()) + "." + terminal.terminal());
        if (node == null) {
            return "";
        }
        Double voltageV = node.voltageV();
        return voltageV == null ? DiagramText.TERMINAL_FLOATING.text() : DiagramNumbers.volts(voltageV);
    }

    /** What a wire does; nothing if it is not there any more. */
    @Nullable
    WireReading wire(String id) {
        return emphasis(id) == Emphasis.REMOVED ? null : wires.get(name(id));
    }

    @Nullable
    PartReading part(String id) {
        return parts.get(name(id));
    }
}
