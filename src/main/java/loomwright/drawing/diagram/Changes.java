package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loomwright.comparison.PlanComparison.ItemChange;
import loomwright.comparison.PropertyWording;

/** What changed between two plans, as marks. */
final class Changes {
    private Changes() {}

    /** One mark for each change that has a number, at what it is about in the plan before and in that after. */
    static List<Mark> of(Map<ItemChange, Integer> numbers, Overlay overlay) {
        List<Mark> marks = new ArrayList<>();
        numbers.forEach((change, number) -> {
            String before = change.before();
            String after = change.after();
            Mark.Kind kind = before == null ? Mark.Kind.ADDED : after == null ? Mark.Kind.REMOVED : Mark.Kind.CHANGED;
            Set<String> ids = new TreeSet<>();
            if (after != null) {
                ids.add(after);
            }
            if (before != null) {
                overlay.gone().stream()
                        .filter(id -> overlay.was().getOrDefault(id, id).equals(before))
                        .forEach(ids::add);
            }
            String code = change.changes().get(0).name().toLowerCase(Locale.ROOT);
            String text = text(change);
            marks.add(new Mark(kind, number, code, List.copyOf(ids), text, text));
        });
        return marks;
    }

    private static String text(ItemChange change) {
        String was = change.wasText();
        String is = change.isText();
        String what = was == null || is == null || was.equals(is)
                ? (is == null ? String.valueOf(was) : is)
                : was + " → " + is;
        String properties =
                change.properties().stream().map(p -> PropertyWording.change(p)).collect(Collectors.joining("; "));
        return what + (was != null && was.equals(is) && !properties.isEmpty() ? " (" + properties + ")" : "");
    }
}
