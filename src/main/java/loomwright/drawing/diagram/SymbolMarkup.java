package loomwright.drawing.diagram;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import loomwright.drawing.Markup;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Drawing.Symbol;
import loomwright.operation.Step;

/** Writes symbols of parts, and what makes one stand out. */
final class SymbolMarkup {
    private static final String LIT = "#ffd75e";

    private final StepLayers layers;
    private final Svg svg;

    SymbolMarkup(StepLayers layers, Svg svg) {
        this.layers = layers;
        this.svg = svg;
    }

    void boxes(Map<Step, Symbol> symbol) {
        Rect box = StepLayers.first(symbol).box();
        StepLayers.looks(symbol, Symbol::emphasis).forEach((emphasis, steps) -> {
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
                    layers.at(
                            steps,
                            "dg-box-" + emphasis.name().toLowerCase(Locale.ROOT),
                            "fill",
                            fed ? "#fdeaf2" : emphasis == Emphasis.REMOVED ? "#f4efe9" : "#edf3ff",
                            "stroke",
                            fed
                                    ? Palette.FED_INK
                                    : emphasis == Emphasis.REMOVED ? Palette.REMOVED_INK : Palette.CHANGED_INK,
                            "stroke-dasharray",
                            dashes,
                            "stroke-width",
                            fed ? 3.0 : 1.2));
        });
    }

    void symbol(Map<Step, Symbol> symbol) {
        Symbol any = StepLayers.first(symbol);
        svg.open(
                "g",
                "class",
                "dg-symbol",
                "data-part",
                String.join(" ", any.ids()),
                "fill",
                "none",
                "stroke",
                Palette.INK,
                "stroke-width",
                1.5,
                "stroke-linecap",
                "round",
                "stroke-linejoin",
                "round",
                "transform",
                "translate(" + Markup.number(any.box().x()) + " "
                        + Markup.number(any.box().y()) + ")");
        Map<List<Object>, Set<Step>> looks =
                StepLayers.looks(symbol, one -> List.of(one.words(), one.shapes(), one.glyphs()));
        looks.forEach((look, steps) -> {
            Symbol one = symbol.getOrDefault(steps.iterator().next(), any);
            if (looks.size() > 1) {
                svg.open("g", layers.at(steps, ""));
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
                    Palette.PAPER,
                    "stroke",
                    Palette.INK,
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
            case SOLID -> svg.path(shape.path(), "class", "dg-solid", "fill", Palette.INK);
            case BODY -> svg.path(shape.path(), "class", "dg-body", "fill", Palette.PAPER);
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
                Palette.INK,
                "stroke",
                "none",
                "font-weight",
                "bold");
    }
}
