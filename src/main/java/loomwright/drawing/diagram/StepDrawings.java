package loomwright.drawing.diagram;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import loomwright.drawing.Svg;
import loomwright.operation.PlanReadings;
import loomwright.operation.Step;

/**
 * A circuit drawn in one step or in all, everything in the same places.
 *
 * @param shown the step that was asked for
 * @param drawings of it, and of the other steps if they were asked for, in the order in which the steps happen
 * @param marks of all steps
 * @param sheets that the plan can be drawn on, one by one; empty where one does
 * @param readings of each step, whether it is drawn or not: what the drawings show
 * @param held parts that moves have left in another state than key and switches alone would
 */
public record StepDrawings(
        Step shown,
        Map<Step, Drawing> drawings,
        List<Mark> marks,
        List<CircuitSheet> sheets,
        PlanReadings readings,
        List<String> held) {
    public StepDrawings {
        drawings = new TreeMap<>(drawings);
        marks = List.copyOf(marks);
        sheets = List.copyOf(sheets);
        held = List.copyOf(held);
        if (!drawings.containsKey(shown)) {
            throw new IllegalArgumentException("no drawing of " + shown);
        }
    }

    /** The drawing of the step that was asked for. */
    public Drawing drawing() {
        return of(shown);
    }

    private Drawing of(Step step) {
        Drawing drawing = drawings.get(step);
        if (drawing == null) {
            throw new IllegalArgumentException("no drawing of " + step);
        }
        return drawing;
    }

    /** The picture with all that a page needs to work with it. */
    public DiagramReport report(String id) {
        Svg svg = DrawingSvg.of(this, id);
        List<DiagramReport.StepText> steps = drawings.keySet().stream()
                .map(step -> new DiagramReport.StepText(
                        step,
                        of(step).captions().moment(),
                        of(step).captions().description(),
                        of(step).marks(),
                        of(step).nodes()))
                .toList();
        return new DiagramReport(
                drawing().captions().title(),
                shown,
                svg.widthPx(),
                svg.heightPx(),
                svg.markup().toString(),
                steps,
                marks,
                sheets,
                held);
    }
}
