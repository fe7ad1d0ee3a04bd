package loomwright.drawing.diagram;

import java.util.List;
import loomwright.operation.PlanReadings.NodeReading;
import loomwright.operation.Step;

/**
 * A diagram for a page that lets its reader turn the key.
 *
 * @param title above the picture
 * @param step the one shown at first
 * @param svg the picture with all steps in it, as text of SVG; {@code data-step} of its root says which is shown, and
 *     the style sheet for diagrams obeys it
 * @param steps what each step says in words
 * @param marks what is pointed out by number
 * @param sheets that the plan can be drawn on one by one; empty where it fits on one
 * @param held parts that moves have left in another state than key and switches alone would
 */
public record DiagramReport(
        String title,
        Step step,
        double widthPx,
        double heightPx,
        String svg,
        List<StepText> steps,
        List<Mark> marks,
        List<CircuitSheet> sheets,
        List<String> held) {
    public DiagramReport {
        steps = List.copyOf(steps);
        marks = List.copyOf(marks);
        sheets = List.copyOf(sheets);
        held = List.copyOf(held);
    }

    /**
     * One step.
     *
     * @param moment the line under the title
     * @param description what there is to see, for a reader who does not
     * @param marks numbers of the marks that it shows
     * @param nodes the voltages that it shows
     */
    public record StepText(Step step, String moment, String description, List<Integer> marks, List<NodeReading> nodes) {
        public StepText {
            nodes = List.copyOf(nodes);
            marks = List.copyOf(marks);
        }
    }
}
