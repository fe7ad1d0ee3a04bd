package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import loomwright.drawing.Markup;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Drawing.Arrow;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.State;
import loomwright.drawing.diagram.Drawing.Symbol;
import loomwright.operation.Step;

/**
 * Writes drawings as one picture. What differs between steps is there once for each; the attribute {@code display} hides
 * all but the step that was asked for, and a style sheet may show another.
 */
public final class DrawingSvg {
    private static final String INK = "#1c1c1c";
    private static final String PAPER = "#ffffff";
    private static final String PALE_INK = "#6b6b6b";
    private static final String LIVE_BAND = "#ffd970";
    private static final String LIT = "#ffd75e";
    private static final String FED_BAND = "#f7a8c9";
    private static final String CHANGED_BAND = "#d3e2ff";
    private static final String CHANGED_INK = "#283593";
    private static final String REMOVED_INK = "#7a3b00";
    private static final String FED_INK = "#8c0048";

    private final Map<Step, Drawing> drawings;
    private final Step shown;
    private final Drawing any;
    private final Svg svg;

    private DrawingSvg(StepDrawings steps, String id, double scale) {
        this.drawings = steps.drawings();
        this.shown = steps.shown();
        this.any = steps.drawing();
        this.svg = new Svg(
                id,
                any.widthPx(),
                any.heightPx(),
                scale,
                any.title(),
                any.description(),
                "class",
                "dg",
                "data-step",
                word(shown),
                "data-steps",
                drawings.keySet().stream().map(DrawingSvg::word).collect(Collectors.joining(" ")));
    }

    /**
     * Writes.
     *
     * @param id begins every id within the picture; different for each picture of a page
     */
    public static Svg of(StepDrawings steps, String id) {
        return of(steps, id, 1);
    }

    /**
     * Writes larger or smaller.
     *
     * @param scale 2 shows it twice as large
     */
    static Svg of(StepDrawings steps, String id, double scale) {
        return new DrawingSvg(steps, id, scale).write();
    }

    private static String word(Step step) {
        return step.code();
    }

    private Svg write() {
        svg.open("g", "fill", "none", "stroke-linejoin", "round");
        alike(Drawing::wires, line -> line.id() + line.points()).forEach(this::bands);
        alike(Drawing::symbols, symbol -> String.join(" ", symbol.ids()) + symbol.box())
                .forEach(this::boxes);
        alike(Drawing::wires, line -> line.id() + line.points()).forEach(this::wire);
        svg.close();
        alike(Drawing::symbols, symbol -> String.join(" ", symbol.ids()) + symbol.box())
                .forEach(this::symbol);
        alike(Drawing::wires, line -> line.id() + line.points()).forEach(this::arrows);
        Map<Text, Set<Step>> texts = new LinkedHashMap<>();
        Map<Badge, Set<Step>> badges = new LinkedHashMap<>();
        drawings.forEach((step, drawing) -> {
            drawing.texts().forEach(text -> in(texts, text, step));
            drawing.badges().forEach(badge -> in(badges, badge, step));
        });
        texts.forEach(this::text);
        badges.forEach(this::badge);
        return svg;
    }

    private static <T> void in(Map<T, Set<Step>> steps, T item, Step step) {
        steps.computeIfAbsent(item, one -> EnumSet.noneOf(Step.class)).add(step);
    }

    /** What the drawings have of one thing: by step. */
    private <T> List<Map<Step, T>> alike(Function<Drawing, List<T>> items, Function<T, String> key) {
        Map<String, Map<Step, T>> alike = new LinkedHashMap<>();
        drawings.forEach((step, drawing) -> items.apply(drawing)
                .forEach(item -> alike.computeIfAbsent(key.apply(item), one -> new LinkedHashMap<>())
                        .put(step, item)));
        return List.copyOf(alike.values());
    }

    /** The looks that one thing has, each with the steps in which it has it. */
    private static <T, V> Map<V, Set<Step>> looks(Map<Step, T> item, Function<T, V> look) {
        Map<V, Set<Step>> looks = new LinkedHashMap<>();
        item.forEach((step, one) -> in(looks, look.apply(one), step));
        return looks;
    }

    /** Attributes of what is there in some steps only. */
    private Object[] at(Set<Step> steps, String classes, Object... more) {
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

    private static String path(List<DiagramPoint> points) {
        StringBuilder path = new StringBuilder();
        for (DiagramPoint point : points) {
            path.append(path.isEmpty() ? "M" : "L")
                    .append(Markup.number(point.x()))
                    .append(' ')
                    .append(Markup.number(point.y()));
        }
        return path.toString();
    }

    private static <T> T first(Map<Step, T> item) {
        return item.values().iterator().next();
    }

    /**
     * What lies under a wire: yellow where it is live, hatched where it feeds backwards, edged where it is
     * changed.
     */
    private void bands(Map<Step, Line> wire) {
        looks(wire, line -> List.of(line.state(), line.emphasis())).forEach((look, steps) -> {
            Line line = wire.getOrDefault(steps.iterator().next(), first(wire));
            if (line.state() != State.LIVE && line.emphasis() == Emphasis.NONE) {
                return;
            }
            String path = path(line.points());
            svg.open("g", at(steps, "", "data-wire", line.id()));
            switch (line.emphasis()) {
                case NONE -> {}
                case ADDED -> {
                    svg.path(path, "class", "dg-edge-changed", "stroke", CHANGED_INK, "stroke-width", 17.0);
                    svg.path(path, "class", "dg-band-changed", "stroke", CHANGED_BAND, "stroke-width", 14.0);
                }
                case CHANGED -> {
                    svg.path(
                            path,
                            "class",
                            "dg-edge-changed",
                            "stroke",
                            CHANGED_INK,
                            "stroke-width",
                            17.0,
                            "stroke-dasharray",
                            "9 6");
                    svg.path(path, "class", "dg-band-changed", "stroke", CHANGED_BAND, "stroke-width", 14.0);
                }
                // Crosses along the wire: short strokes across it under a thin one.
                case REMOVED ->
                    svg.path(
                            path,
                            "class",
                            "dg-cross-removed",
                            "stroke",
                            REMOVED_INK,
                            "stroke-width",
                            14.0,
                            "stroke-dasharray",
                            "2 12");
                case BACKFEED -> {
                    svg.path(path, "class", "dg-band-backfeed", "stroke", FED_BAND, "stroke-width", 16.0);
                    svg.path(
                            path,
                            "class",
                            "dg-hatch-backfeed",
                            "stroke",
                            FED_INK,
                            "stroke-width",
                            16.0,
                            "stroke-dasharray",
                            "1.5 6");
                }
            }
            if (line.state() == State.LIVE) {
                svg.path(path, "class", "dg-band-live", "stroke", LIVE_BAND, "stroke-width", 10.0);
            }
            svg.close();
        });
    }

    private void boxes(Map<Step, Symbol> symbol) {
        Rect box = first(symbol).box();
        looks(symbol, Symbol::emphasis).forEach((emphasis, steps) -> {
            if (emphasis == Emphasis.NONE) {
                return;
            }
            boolean fed = emphasis == Emphasis.BACKFEED;
            String dashes = switch (emphasis) {
                case BACKFEED -> "1.5 4";
                case CHANGED -> "9 6";
                case REMOVED -> "2 4";
                default -> "none";
            };
            svg.rect(
                    box.x() - 3,
                    box.y() - 1,
                    box.width() + 6,
                    box.height() + 2,
                    at(
                            steps,
                            "dg-box-" + emphasis.name().toLowerCase(Locale.ROOT),
                            "fill",
                            fed ? "#fdeaf2" : emphasis == Emphasis.REMOVED ? "#f4efe9" : "#edf3ff",
                            "stroke",
                            fed ? FED_INK : emphasis == Emphasis.REMOVED ? REMOVED_INK : CHANGED_INK,
                            "stroke-dasharray",
                            dashes,
                            "stroke-width",
                            fed ? 3.0 : 1.2));
        });
    }

    private void wire(Map<Step, Line> wire) {
        Line any = first(wire);
        svg.open(
                "g",
                "class",
                "dg-wire",
                "data-wire",
                any.id(),
                "data-from",
                any.from(),
                "data-to",
                any.to(),
                "data-colours",
                String.join(" ", any.colours()));
        svg.words(drawings.size() > 1 ? any.words() : words(any));
        looks(wire, Line::state).forEach((state, steps) -> {
            svg.open("g", at(steps, "", "data-state", state.name().toLowerCase(Locale.ROOT)));
            strokes(any, state);
            svg.close();
        });
        svg.close();
    }

    private static String words(Line wire) {
        return wire.does().isEmpty() ? wire.words() : wire.words() + ": " + wire.does();
    }

    /** A white border parts a wire from those it crosses, a dark one lets white and yellow be seen. */
    private void strokes(Line wire, State state) {
        String path = path(wire.points());
        Insulation body =
                Insulation.of(wire.colours().isEmpty() ? "NONE" : wire.colours().get(0));
        boolean dead = state == State.DEAD;
        double width = (wire.heavy() ? 5 : 3.4) - (dead ? 1.4 : 0);
        String dashes = dead ? "8 5" : "none";
        svg.path(
                path,
                "class",
                "dg-halo",
                "stroke",
                PAPER,
                "stroke-width",
                width + 4,
                "stroke-opacity",
                dead ? 1.0 : 0.55);
        svg.path(
                path,
                "class",
                dead ? "dg-edge-off" : "dg-edge",
                "stroke",
                dead ? PALE_INK : INK,
                "stroke-width",
                width + 1.4,
                "stroke-dasharray",
                dashes);
        svg.path(path, "stroke", body.drawn(), "stroke-width", width, "stroke-dasharray", dashes);
        for (int i = 1; i < wire.colours().size(); i++) {
            svg.path(
                    path,
                    "stroke",
                    Insulation.of(wire.colours().get(i)).drawn(),
                    "stroke-width",
                    width * 0.5,
                    "stroke-dasharray",
                    dead ? "4 9" : "7 7",
                    "stroke-dashoffset",
                    dead ? -2.0 : -7.0 * (i - 1));
        }
    }

    private void symbol(Map<Step, Symbol> symbol) {
        Symbol any = first(symbol);
        svg.open(
                "g",
                "class",
                "dg-symbol",
                "data-part",
                String.join(" ", any.ids()),
                "fill",
                "none",
                "stroke",
                INK,
                "stroke-width",
                1.5,
                "stroke-linecap",
                "round",
                "stroke-linejoin",
                "round",
                "transform",
                "translate(" + Markup.number(any.box().x()) + " "
                        + Markup.number(any.box().y()) + ")");
        Map<List<Object>, Set<Step>> looks = looks(symbol, one -> List.of(one.words(), one.shapes(), one.glyphs()));
        looks.forEach((look, steps) -> {
            Symbol one = symbol.getOrDefault(steps.iterator().next(), any);
            if (looks.size() > 1) {
                svg.open("g", at(steps, ""));
            }
            svg.words(one.words());
            one.shapes().forEach(this::shape);
            one.glyphs().forEach(this::glyph);
            if (looks.size() > 1) {
                svg.close();
            }
        });
        svg.close();
        for (Drawing.Pin pin : any.pins()) {
            svg.circle(
                    pin.at().x(),
                    pin.at().y(),
                    2.4,
                    "class",
                    "dg-terminal",
                    "data-terminal",
                    pin.terminal(),
                    "fill",
                    PAPER,
                    "stroke",
                    INK,
                    "stroke-width",
                    1.1);
        }
    }

    private void shape(Shape shape) {
        switch (shape.paint()) {
            case LINE -> svg.path(shape.path());
            case THICK -> svg.path(shape.path(), "stroke-width", 2.4);
            case LINKAGE -> svg.path(shape.path(), "stroke-dasharray", "3 3", "stroke-width", 1.1);
            case CASE -> svg.path(shape.path(), "stroke-dasharray", "5 3", "stroke-width", 1.1);
            case SOLID -> svg.path(shape.path(), "class", "dg-solid", "fill", INK);
            case BODY -> svg.path(shape.path(), "class", "dg-body", "fill", PAPER);
            case LIT -> svg.path(shape.path(), "class", "dg-lit", "fill", LIT);
        }
    }

    private void glyph(Body.Glyph glyph) {
        svg.text(
                glyph.x(),
                glyph.baseline(),
                glyph.sizePx(),
                glyph.text(),
                "class",
                "dg-text",
                "text-anchor",
                "middle",
                "fill",
                INK,
                "stroke",
                "none",
                "font-weight",
                "bold");
    }

    private void arrows(Map<Step, Line> wire) {
        Map<Arrow, Set<Step>> looks = new LinkedHashMap<>();
        wire.forEach((step, line) -> {
            if (line.arrow() != null) {
                in(looks, line.arrow(), step);
            }
        });
        looks.forEach((arrow, steps) -> arrow(first(wire).id(), arrow, steps));
    }

    /** A full arrow; an empty one with a bar where the wire is meant to feed the other way. */
    private void arrow(String wire, Arrow arrow, Set<Step> steps) {
        double dx = arrow.dx() * 7;
        double dy = arrow.dy() * 7;
        String path = path(List.of(
                        new DiagramPoint(arrow.x() + dx, arrow.y() + dy),
                        new DiagramPoint(arrow.x() - dx - dy * 0.8, arrow.y() - dy + dx * 0.8),
                        new DiagramPoint(arrow.x() - dx + dy * 0.8, arrow.y() - dy - dx * 0.8)))
                + "z";
        boolean reversed = arrow.againstFeed();
        svg.path(
                path,
                at(
                        steps,
                        reversed ? "dg-arrow-reversed" : "dg-arrow",
                        "data-wire",
                        wire,
                        "fill",
                        reversed ? PAPER : INK,
                        "stroke",
                        reversed ? FED_INK : PAPER,
                        "stroke-width",
                        reversed ? 2.2 : 0.8));
    }

    private void text(Text text, Set<Step> steps) {
        String look = switch (text.role()) {
            case DATA, SUBTITLE -> "dg-text-data";
            case TERMINAL -> "dg-text-terminal";
            case VOLTS -> "dg-text-volts";
            case READING -> "dg-text-volts dg-reading";
            case NAME -> "dg-text dg-name";
            case WIRE -> "dg-text dg-wire-name";
            case AMPS -> "dg-text dg-amps";
            default -> "dg-text";
        };
        String fill = switch (text.role()) {
            case DATA, SUBTITLE -> "#4a4a4a";
            case TERMINAL -> "#3a3a3a";
            case VOLTS, READING -> "#0b3d91";
            default -> INK;
        };
        List<Object> attributes = new ArrayList<>(List.of("fill", fill));
        if (!text.owner().isEmpty()) {
            attributes.addAll(List.of("data-owner", text.owner()));
        }
        if (text.role().bold()) {
            attributes.addAll(List.of("font-weight", "bold"));
        }
        svg.text(text.x(), text.baseline(), text.role().sizePx(), text.text(), at(steps, look, attributes.toArray()));
    }

    private static String diamond(double x, double y, double r) {
        return path(List.of(
                        new DiagramPoint(x, y - r),
                        new DiagramPoint(x + r, y),
                        new DiagramPoint(x, y + r),
                        new DiagramPoint(x - r, y)))
                + "z";
    }

    /** Eight corners, as a stop sign. */
    private static String eight(double x, double y, double r) {
        double c = r * 0.414;
        return path(List.of(
                        new DiagramPoint(x - c, y - r),
                        new DiagramPoint(x + c, y - r),
                        new DiagramPoint(x + r, y - c),
                        new DiagramPoint(x + r, y + c),
                        new DiagramPoint(x + c, y + r),
                        new DiagramPoint(x - c, y + r),
                        new DiagramPoint(x - r, y + c),
                        new DiagramPoint(x - r, y - c)))
                + "z";
    }

    /** A disc for what is wrong, a square for what is new, a diamond for what changed, eight corners for what goes. */
    private void badge(Badge badge, Set<Step> steps) {
        String fill = switch (badge.kind()) {
            case DANGER -> "#b00020";
            case WARNING -> "#a84a00";
            case NOTE -> "#4a4a4a";
            case BACKFEED -> FED_INK;
            case ADDED -> "#00695c";
            case REMOVED -> REMOVED_INK;
            case CHANGED -> CHANGED_INK;
        };
        List<Object> attributes = new ArrayList<>(List.of("data-mark", String.valueOf(badge.number())));
        if (!badge.owner().isEmpty()) {
            attributes.addAll(List.of("data-owner", badge.owner()));
        }
        svg.open("g", at(steps, "dg-mark dg-mark-" + badge.kind().code(), attributes.toArray()));
        svg.words(badge.kind().text());
        double r = Badge.RADIUS_PX;
        switch (badge.kind()) {
            case ADDED -> svg.rect(badge.x() - r, badge.y() - r, 2 * r, 2 * r, "fill", fill);
            case CHANGED -> svg.path(diamond(badge.x(), badge.y(), 1.25 * r), "fill", fill);
            case REMOVED -> svg.path(eight(badge.x(), badge.y(), r), "fill", fill);
            default -> svg.circle(badge.x(), badge.y(), r, "fill", fill);
        }
        svg.text(
                badge.x(),
                badge.y() + 3.3,
                badge.number() > 99 ? 7.0 : 9.5,
                String.format(Locale.ROOT, "%d", badge.number()),
                "fill",
                PAPER,
                "text-anchor",
                "middle",
                "font-weight",
                "bold");
        svg.close();
    }
}
