package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import loomwright.comparison.PlanComparison;
import loomwright.comparison.PlanComparison.ItemChange;
import org.jspecify.annotations.Nullable;

/**
 * What changed between two plans, as marks; the same number stands at the same change on both sides.
 *
 * @param before at things of the plan before
 * @param after at things of the plan after
 * @param all each change once, for the legend
 */
record Changes(List<Mark> before, List<Mark> after, List<Mark> all) {

    static Changes of(PlanComparison comparison) {
        List<Mark> before = new ArrayList<>();
        List<Mark> after = new ArrayList<>();
        List<Mark> all = new ArrayList<>();
        for (ItemChange change : comparison.changes()) {
            boolean both = change.before() != null && change.after() != null;
            Mark.Kind kind = both ? Mark.Kind.CHANGED : Mark.Kind.ONLY_HERE;
            int number = all.size() + 1;
            String text = text(change);
            all.add(new Mark(kind, number, List.of(), text));
            add(before, kind, number, change.before(), text);
            add(after, kind, number, change.after(), text);
        }
        return new Changes(List.copyOf(before), List.copyOf(after), List.copyOf(all));
    }

    private static void add(List<Mark> marks, Mark.Kind kind, int number, @Nullable String id, String text) {
        if (id != null) {
            marks.add(new Mark(kind, number, List.of(id), text));
        }
    }

    private static String text(ItemChange change) {
        String was = change.wasText();
        String is = change.isText();
        String what = was == null || is == null || was.equals(is)
                ? (is == null ? String.valueOf(was) : is)
                : was + " → " + is;
        String properties = change.properties().stream()
                .map(p -> p.property() + " " + orNone(p.before()) + " → " + orNone(p.after()))
                .collect(Collectors.joining("; "));
        return change.description() + ": " + what
                + (was != null && was.equals(is) && !properties.isEmpty() ? " (" + properties + ")" : "");
    }

    private static String orNone(@Nullable String value) {
        return value == null ? "none" : value;
    }
}
