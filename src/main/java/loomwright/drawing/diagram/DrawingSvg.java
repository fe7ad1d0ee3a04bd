package loomwright.drawing.diagram;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.Symbol;
import loomwright.operation.Step;

/**
 * Writes drawings as one picture. What differs between steps is there once for each; the attribute {@code display} hides
 * all but the step that was asked for, and a style sheet may show another.
 */
public final class DrawingSvg {

    private DrawingSvg() {}

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
        Drawing any = steps.drawing();
        Map<Step, Drawing> drawings = steps.drawings();
        StepLayers layers = new StepLayers(drawings, steps.shown());
        Svg svg = new Svg(
                id,
                any.widthPx(),
                any.heightPx(),
                scale,
                any.captions().title(),
                any.captions().description(),
                List.of(
                        "class",
                        "dg",
                        "data-step",
                        StepLayers.word(steps.shown()),
                        "data-steps",
                        drawings.keySet().stream().map(StepLayers::word).collect(Collectors.joining(" "))));
        write(layers, svg);
        return svg;
    }

    private static void write(StepLayers layers, Svg svg) {
        List<Map<Step, Line>> lines =
                layers.alike(Drawing::wires, line -> line.said().id() + line.points());
        List<Map<Step, Symbol>> parts =
                layers.alike(Drawing::symbols, symbol -> String.join(" ", symbol.ids()) + symbol.box());
        WireMarkup wires = new WireMarkup(layers, svg);
        SymbolMarkup symbols = new SymbolMarkup(layers, svg);
        TextMarkup texts = new TextMarkup(layers, svg);
        svg.open("g", "fill", "none", "stroke-linejoin", "round");
        lines.forEach(wires::bands);
        parts.forEach(symbols::boxes);
        lines.forEach(wires::wire);
        svg.close();
        parts.forEach(symbols::symbol);
        lines.forEach(wires::arrows);
        Map<Text, Set<Step>> said = new LinkedHashMap<>();
        Map<Badge, Set<Step>> badges = new LinkedHashMap<>();
        layers.drawings().forEach((step, drawing) -> {
            drawing.texts().forEach(text -> StepLayers.in(said, text, step));
            drawing.badges().forEach(badge -> StepLayers.in(badges, badge, step));
        });
        said.forEach(texts::text);
        badges.forEach(texts::badge);
    }
}
