package loomwright.drawing.diagram;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.comparison.ComparisonQuestion;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.ItemChange;

/**
 * Two plans as one, with what differs.
 *
 * @param marks one for each change
 * @param emphasis what was added, removed, changed, by id
 * @param names what a thing that is no more was called, by its id here
 */
record Compared(Overlay overlay, List<Mark> marks, Map<String, Emphasis> emphasis, Map<String, String> names) {

    /** With all changes, numbered in their order. */
    static Compared of(ComparisonQuestion question, PlanComparison comparison) {
        Map<ItemChange, Integer> numbers = new LinkedHashMap<>();
        comparison.changes().forEach(change -> numbers.put(change, numbers.size() + 1));
        return of(question, comparison, numbers);
    }

    /** With those changes that have a number. */
    static Compared of(ComparisonQuestion question, PlanComparison comparison, Map<ItemChange, Integer> numbers) {
        Overlay overlay = Overlay.of(question.before(), question.after(), comparison.changes());
        List<Mark> marks = Changes.of(numbers, overlay);
        Map<String, Emphasis> emphasis = new HashMap<>();
        for (Mark mark : marks) {
            mark.ids().forEach(id -> emphasis.put(id, Emphasis.CHANGED));
        }
        overlay.added().forEach(id -> emphasis.put(id, Emphasis.ADDED));
        overlay.gone().forEach(id -> emphasis.put(id, Emphasis.REMOVED));
        Map<String, String> names = new HashMap<>();
        overlay.gone().forEach(id -> names.put(id, overlay.was().getOrDefault(id, id)));
        return new Compared(overlay, marks, emphasis, names);
    }
}
