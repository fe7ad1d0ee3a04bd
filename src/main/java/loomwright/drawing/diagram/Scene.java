package loomwright.drawing.diagram;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import loomwright.operation.PlanReadings.NodeReading;
import loomwright.operation.PlanReadings.PartReading;
import loomwright.operation.PlanReadings.Residuals;
import loomwright.operation.PlanReadings.StepReadings;
import loomwright.operation.PlanReadings.Transients;
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
    private final Manner manner;

    /**
     * How it is reported.
     *
     * @param figures whether it says what everything does in its step
     * @param colourWords whether colours are words rather than letters
     * @param references the other sheets that a part is on
     * @param whole the plan that this is a sheet of; absent where it is all of it
     */
    private record Manner(
            boolean figures,
            boolean colourWords,
            Map<String, List<Integer>> references,
            @Nullable Plan whole) {}

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
        this(plan, readings, marks, absent, emphasis, names, new Manner(true, false, Map.of(), null));
    }

    private Scene(
            Plan plan,
            StepReadings readings,
            List<Mark> marks,
            Set<Mark> absent,
            Map<String, Emphasis> emphasis,
            Map<String, String> names,
            Manner manner) {
        this.manner = manner;
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
                Step.OFF,
                "",
                true,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                new Transients(List.of(), List.of()),
                List.of(),
                new Residuals(null, null));
        return new Scene(plan, none, marks, Set.of(), emphasis, names, new Manner(false, true, Map.of(), null));
    }

    /** The same with the plan as moves have left it, and what it does then. */
    Scene with(Plan moved, StepReadings then) {
        return new Scene(moved, then, marks, absent, emphasis, names, manner);
    }

    /** What of it is on one sheet, with the figures of the whole and references to the other sheets. */
    Scene on(CircuitSheet sheet, List<CircuitSheet> all) {
        Set<String> ids = sheet.ids();
        Map<String, List<Integer>> others = new HashMap<>();
        sheet.parts().forEach(part -> others.put(part, sheet.others(part, all)));
        return new Scene(
                Section.of(plan, ids),
                readings,
                marks.stream()
                        .filter(mark -> mark.ids().stream().anyMatch(ids::contains))
                        .toList(),
                absent,
                emphasis,
                names,
                new Manner(manner.figures(), manner.colourWords(), Map.copyOf(others), plan));
    }

    /** The other sheets that a part is on. */
    List<Integer> references(String part) {
        return manner.references().getOrDefault(part, List.of());
    }

    /** Which way is down, by the whole plan: a sheet need not have the battery on it. */
    Flow flow() {
        return Flow.of(manner.whole() == null ? plan : manner.whole());
    }

    Plan plan() {
        return plan;
    }

    /** Whether it says what everything does in its step. */
    boolean figures() {
        return manner.figures();
    }

    /** Whether colours of wires are words rather than letters. */
    boolean colourWords() {
        return manner.colourWords();
    }

    /** The same with the colours of wires in words. */
    Scene withColourWords() {
        return new Scene(
                plan,
                readings,
                marks,
                absent,
                emphasis,
                names,
                new Manner(manner.figures(), true, manner.references(), manner.whole()));
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
