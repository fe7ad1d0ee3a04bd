package loomwright.drawing.diagram;

import java.util.List;
import java.util.Locale;
import loomwright.drawing.Markup;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Drawing.Arrow;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.State;
import loomwright.drawing.diagram.Drawing.Symbol;

/** Writes a drawing as a picture. */
public final class DrawingSvg {
    private static final String INK = "#1c1c1c";
    private static final String PALE_INK = "#6b6b6b";
    private static final String LIVE_BAND = "#ffd970";
    private static final String LIT = "#ffd75e";
    private static final String FED_BAND = "#f7a8c9";
    private static final String CHANGED_BAND = "#d3e2ff";
    private static final String CHANGED_INK = "#283593";
    private static final String FED_INK = "#8c0048";

    private final Drawing drawing;
    private final Svg svg;

    private DrawingSvg(Drawing drawing, String id) {
        this.drawing = drawing;
        this.svg = new Svg(id, drawing.widthPx(), drawing.heightPx(), drawing.title(), drawing.description());
    }

    /**
     * Writes.
     *
     * @param id begins every id within the picture; different for each picture of a page
     */
    public static Svg of(Drawing drawing, String id) {
        return new DrawingSvg(drawing, id).write();
    }

    private Svg write() {
        svg.open("g", "fill", "none", "stroke-linejoin", "round");
        drawing.wires().forEach(this::bands);
        drawing.symbols().stream().forEach(this::box);
        drawing.wires().forEach(this::wire);
        svg.close();
        drawing.symbols().forEach(this::symbol);
        drawing.wires().forEach(this::arrow);
        drawing.texts().forEach(this::text);
        drawing.badges().forEach(this::badge);
        return svg;
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

    /**
     * What lies under a wire: yellow where it is live, hatched where it feeds backwards, edged where it is
     * changed.
     */
    private void bands(Line wire) {
        String path = path(wire.points());
        switch (wire.emphasis()) {
            case NONE -> {}
            case CHANGED -> {
                svg.path(path, "stroke", CHANGED_INK, "stroke-width", 17.0);
                svg.path(path, "stroke", CHANGED_BAND, "stroke-width", 15.0);
            }
            case BACKFEED -> {
                svg.path(path, "stroke", FED_BAND, "stroke-width", 16.0);
                svg.path(path, "stroke", FED_INK, "stroke-width", 16.0, "stroke-dasharray", "1.5 6");
            }
        }
        if (wire.state() == State.LIVE) {
            svg.path(path, "stroke", LIVE_BAND, "stroke-width", 10.0);
        }
    }

    private void box(Symbol symbol) {
        if (symbol.emphasis() == Emphasis.NONE) {
            return;
        }
        boolean fed = symbol.emphasis() == Emphasis.BACKFEED;
        Rect box = symbol.box();
        svg.rect(
                box.x() - 3,
                box.y() - 1,
                box.width() + 6,
                box.height() + 2,
                "fill",
                fed ? "#fdeaf2" : "#edf3ff",
                "stroke",
                fed ? FED_INK : CHANGED_INK,
                "stroke-dasharray",
                fed ? "1.5 4" : "none",
                "stroke-width",
                fed ? 3.0 : 1.2);
    }

    /** A white border parts a wire from those it crosses, a dark one lets white and yellow be seen. */
    private void wire(Line wire) {
        svg.open("g", "data-wire", wire.id());
        svg.words(wire.words());
        String path = path(wire.points());
        Insulation body =
                Insulation.of(wire.colours().isEmpty() ? "NONE" : wire.colours().get(0));
        boolean dead = wire.state() == State.DEAD;
        double width = (wire.heavy() ? 5 : 3.4) - (dead ? 1.4 : 0);
        String dashes = dead ? "8 5" : "none";
        svg.path(path, "stroke", "#ffffff", "stroke-width", width + 4, "stroke-opacity", dead ? 1.0 : 0.55);
        svg.path(path, "stroke", dead ? PALE_INK : INK, "stroke-width", width + 1.4, "stroke-dasharray", dashes);
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
        svg.close();
    }

    private void symbol(Symbol symbol) {
        svg.open(
                "g",
                "data-part",
                String.join(" ", symbol.ids()),
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
                "translate(" + Markup.number(symbol.box().x()) + " "
                        + Markup.number(symbol.box().y()) + ")");
        svg.words(symbol.words());
        for (Shape shape : symbol.shapes()) {
            switch (shape.paint()) {
                case LINE -> svg.path(shape.path());
                case THICK -> svg.path(shape.path(), "stroke-width", 2.4);
                case LINKAGE -> svg.path(shape.path(), "stroke-dasharray", "3 3", "stroke-width", 1.1);
                case CASE -> svg.path(shape.path(), "stroke-dasharray", "5 3", "stroke-width", 1.1);
                case SOLID -> svg.path(shape.path(), "fill", INK);
                case BODY -> svg.path(shape.path(), "fill", "#ffffff");
                case LIT -> svg.path(shape.path(), "fill", LIT);
            }
        }
        for (Body.Glyph glyph : symbol.glyphs()) {
            svg.text(
                    glyph.x(),
                    glyph.baseline(),
                    glyph.sizePx(),
                    glyph.text(),
                    "text-anchor",
                    "middle",
                    "fill",
                    INK,
                    "stroke",
                    "none",
                    "font-weight",
                    "bold");
        }
        svg.close();
        for (DiagramPoint pin : symbol.pins()) {
            svg.circle(pin.x(), pin.y(), 2.4, "fill", "#ffffff", "stroke", INK, "stroke-width", 1.1);
        }
    }

    /** A full arrow; an empty one with a bar where the wire is meant to feed the other way. */
    private void arrow(Line wire) {
        Arrow arrow = wire.arrow();
        if (arrow == null) {
            return;
        }
        double dx = arrow.dx() * 7;
        double dy = arrow.dy() * 7;
        String path = path(List.of(
                        new DiagramPoint(arrow.x() + dx, arrow.y() + dy),
                        new DiagramPoint(arrow.x() - dx - dy * 0.8, arrow.y() - dy + dx * 0.8),
                        new DiagramPoint(arrow.x() - dx + dy * 0.8, arrow.y() - dy - dx * 0.8)))
                + "z";
        String fill = arrow.againstFeed() ? "#ffffff" : INK;
        String stroke = arrow.againstFeed() ? FED_INK : "#ffffff";
        svg.path(path, "fill", fill, "stroke", stroke, "stroke-width", arrow.againstFeed() ? 2.2 : 0.8);
    }

    private void text(Text text) {
        String fill = switch (text.role()) {
            case DATA, SUBTITLE -> "#4a4a4a";
            case TERMINAL -> "#3a3a3a";
            case VOLTS, READING -> "#0b3d91";
            default -> INK;
        };
        svg.text(
                text.x(),
                text.baseline(),
                text.role().sizePx(),
                text.text(),
                "fill",
                fill,
                "font-weight",
                text.role().bold() ? "bold" : "normal");
    }

    /** A disc for what is wrong, a square for what is changed. */
    private void badge(Badge badge) {
        String fill = switch (badge.kind()) {
            case DANGER -> "#b00020";
            case WARNING -> "#c75a00";
            case NOTE -> "#4a4a4a";
            case BACKFEED -> FED_INK;
            case ONLY_HERE -> "#00695c";
            case CHANGED -> CHANGED_INK;
        };
        svg.open("g", "data-mark", String.valueOf(badge.number()));
        svg.words(badge.kind().words());
        boolean square = badge.kind() == Mark.Kind.ONLY_HERE || badge.kind() == Mark.Kind.CHANGED;
        double r = Badge.RADIUS_PX;
        if (square) {
            svg.rect(badge.x() - r, badge.y() - r, 2 * r, 2 * r, "fill", fill);
        } else {
            svg.circle(badge.x(), badge.y(), r, "fill", fill);
        }
        svg.text(
                badge.x(),
                badge.y() + 3.3,
                badge.number() > 99 ? 7.0 : 9.0,
                String.format(Locale.ROOT, "%d", badge.number()),
                "fill",
                "#ffffff",
                "text-anchor",
                "middle",
                "font-weight",
                "bold");
        svg.close();
    }
}
