package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import loomwright.drawing.Markup;
import loomwright.operation.Step;

/** Several steps in one picture: what looks alike in them is there once, the rest once for each look, hidden but for one. */
record StepLayers(Map<Step, Drawing> drawings, Step shown) {
    static <T> void in(Map<T, Set<Step>> steps, T item, Step step) {
        steps.computeIfAbsent(item, one -> EnumSet.noneOf(Step.class)).add(step);
    }

    /** What the drawings have of one thing: by step. */
    <T> List<Map<Step, T>> alike(Function<Drawing, List<T>> items, Function<T, String> key) {
        Map<String, Map<Step, T>> alike = new LinkedHashMap<>();
        drawings.forEach((step, drawing) -> items.apply(drawing)
                .forEach(item -> alike.computeIfAbsent(key.apply(item), one -> new LinkedHashMap<>())
                        .put(step, item)));
        return List.copyOf(alike.values());
    }

    /** The looks that one thing has, each with the steps in which it has it. */
    static <T, V> Map<V, Set<Step>> looks(Map<Step, T> item, Function<T, V> look) {
        Map<V, Set<Step>> looks = new LinkedHashMap<>();
        item.forEach((step, one) -> in(looks, look.apply(one), step));
        return looks;
    }

    /** Attributes of what is there in some steps only. */
    Object[] at(Set<Step> steps, String classes, Object... more) {
        List<Object> attributes = new ArrayList<>();
        boolean always = steps.size() == drawings.size();
        String all = always
                ? classes
                : classes + (classes.isEmpty() ? "" : " ") + "dg-at "
                        + steps.stream().map(step -> "dg-at-" + word(step)).collect(Collectors.joining(" "));
        if (!all.isEmpty()) {
            attributes.addAll(List.of("class", all));
        }
        if (!always && !steps.contains(shown)) {
            attributes.addAll(List.of("display", "none"));
        }
        attributes.addAll(Arrays.asList(more));
        return attributes.toArray();
    }

    /** A line through points, as SVG writes it. */
    static String path(List<DiagramPoint> points) {
        StringBuilder path = new StringBuilder();
        for (DiagramPoint point : points) {
            path.append(path.isEmpty() ? "M" : "L")
                    .append(Markup.number(point.x()))
                    .append(' ')
                    .append(Markup.number(point.y()));
        }
        return path.toString();
    }

    static <T> T first(Map<Step, T> item) {
        return item.values().iterator().next();
    }

    static String word(Step step) {
        return step.code();
    }
}
