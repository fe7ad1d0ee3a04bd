package loomwright.drawing.diagram;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import loomwright.answer.Progress;
import loomwright.circuit.PlanCautions;

/** Two circuits side by side, with one legend. */
final class TwoSheets {
    private static final double MARGIN_PX = 20;
    private static final double BETWEEN_PX = 40;
    private static final double TITLE_PX = 34;
    private static final double HEAD_PX = 62;
    private static final double NARROWEST_PX = 360;

    private TwoSheets() {}

    static Drawing of(Scene before, Scene after, String title, List<Mark> changes, Progress progress) {
        Draft was = Draft.of(before, progress);
        Draft is = Draft.of(after, progress);
        double left = Math.max(was.widthPx(), NARROWEST_PX);
        double right = Math.max(is.widthPx(), NARROWEST_PX);
        double second = MARGIN_PX + left + BETWEEN_PX;
        double width = second + right + MARGIN_PX;
        Composition sheet = new Composition();
        sheet.title(title, MARGIN_PX, width - 2 * MARGIN_PX);
        String first = Sheet.moment(before, Map.of());
        sheet.part("Before: " + before.plan().name(), first, MARGIN_PX, TITLE_PX, left);
        sheet.part("After: " + after.plan().name(), Sheet.moment(after, Map.of()), second, TITLE_PX, right);
        double top = TITLE_PX + HEAD_PX;
        sheet.add(was, MARGIN_PX, top);
        sheet.add(is, second, top);
        double bottom = new Legend(
                        sheet, MARGIN_PX, width - 2 * MARGIN_PX, top + Math.max(was.heightPx(), is.heightPx()) + 8)
                .keys(changes.isEmpty() ? Emphasis.NONE : Emphasis.CHANGED)
                .colours(Stream.concat(before.plan().wires().stream(), after.plan().wires().stream())
                        .toList())
                .marks(changes)
                .cautions(PlanCautions.of(after.plan()))
                .bottom();
        String told = changes.stream().map(c -> c.number() + ". " + c.text()).collect(Collectors.joining(" "));
        return sheet.drawing(
                width,
                bottom + MARGIN_PX,
                title,
                "Two circuit diagrams side by side, before and after a change. " + first + ". Changes: "
                        + (told.isEmpty() ? "none" : told));
    }
}
