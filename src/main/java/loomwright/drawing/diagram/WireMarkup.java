package loomwright.drawing.diagram;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import loomwright.drawing.Svg;
import loomwright.drawing.diagram.Drawing.Arrow;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.State;
import loomwright.operation.Step;

/** Writes wires: what lies under them, themselves, and arrows. */
final class WireMarkup {
    private static final String PALE_INK = "#6b6b6b";
    private static final String LIVE_BAND = "#ffd970";
    private static final String FED_BAND = "#f7a8c9";
    private static final String CHANGED_BAND = "#d3e2ff";

    private final StepLayers layers;
    private final Svg svg;

    WireMarkup(StepLayers layers, Svg svg) {
        this.layers = layers;
        this.svg = svg;
    }

    /**
     * What lies under a wire: yellow where it is live, hatched where it feeds backwards, edged where it is
     * changed.
     */
    void bands(Map<Step, Line> wire) {
        StepLayers.looks(wire, line -> List.of(line.state(), line.emphasis())).forEach((look, steps) -> {
            Line line = wire.getOrDefault(steps.iterator().next(), StepLayers.first(wire));
            if (line.state() != State.LIVE && line.emphasis() == Emphasis.NONE) {
                return;
            }
            String path = StepLayers.path(line.points());
            svg.open("g", layers.at(steps, "", "data-wire", line.said().id()));
            switch (line.emphasis()) {
                case NONE -> {}
                case ADDED -> {
                    svg.path(path, "class", "dg-edge-changed", "stroke", Palette.CHANGED_INK, "stroke-width", 17.0);
                    svg.path(path, "class", "dg-band-changed", "stroke", CHANGED_BAND, "stroke-width", 14.0);
                }
                case CHANGED -> {
                    svg.path(
                            path,
                            "class",
                            "dg-edge-changed",
                            "stroke",
                            Palette.CHANGED_INK,
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
                            Palette.REMOVED_INK,
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
                            Palette.FED_INK,
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

    void wire(Map<Step, Line> wire) {
        Line any = StepLayers.first(wire);
        svg.open(
                "g",
                "class",
                "dg-wire",
                "data-wire",
                any.said().id(),
                "data-from",
                any.said().from(),
                "data-to",
                any.said().to(),
                "data-colours",
                String.join(" ", any.colours()));
        svg.words(layers.drawings().size() > 1 ? any.said().words() : words(any));
        StepLayers.looks(wire, Line::state).forEach((state, steps) -> {
            svg.open("g", layers.at(steps, "", "data-state", state.name().toLowerCase(Locale.ROOT)));
            strokes(any, state);
            svg.close();
        });
        svg.close();
    }

    private static String words(Line wire) {
        return wire.said().does().isEmpty()
                ? wire.said().words()
                : wire.said().words() + ": " + wire.said().does();
    }

    /** A white border parts a wire from those it crosses, a dark one lets white and yellow be seen. */
    private void strokes(Line wire, State state) {
        String path = StepLayers.path(wire.points());
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
                Palette.PAPER,
                "stroke-width",
                width + 4,
                "stroke-opacity",
                dead ? 1.0 : 0.55);
        svg.path(
                path,
                "class",
                dead ? "dg-edge-off" : "dg-edge",
                "stroke",
                dead ? PALE_INK : Palette.INK,
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

    void arrows(Map<Step, Line> wire) {
        Map<Arrow, Set<Step>> looks = new LinkedHashMap<>();
        wire.forEach((step, line) -> {
            if (line.arrow() != null) {
                StepLayers.in(looks, line.arrow(), step);
            }
        });
        looks.forEach((arrow, steps) -> arrow(StepLayers.first(wire).said().id(), arrow, steps));
    }

    /** A full arrow; an empty one with a bar where the wire is meant to feed the other way. */
    private void arrow(String wire, Arrow arrow, Set<Step> steps) {
        double dx = arrow.dx() * 7;
        double dy = arrow.dy() * 7;
        String path = StepLayers.path(List.of(
                        new DiagramPoint(arrow.x() + dx, arrow.y() + dy),
                        new DiagramPoint(arrow.x() - dx - dy * 0.8, arrow.y() - dy + dx * 0.8),
                        new DiagramPoint(arrow.x() - dx + dy * 0.8, arrow.y() - dy - dx * 0.8)))
                + "z";
        boolean reversed = arrow.againstFeed();
        svg.path(
                path,
                layers.at(
                        steps,
                        reversed ? "dg-arrow-reversed" : "dg-arrow",
                        "data-wire",
                        wire,
                        "fill",
                        reversed ? Palette.PAPER : Palette.INK,
                        "stroke",
                        reversed ? Palette.FED_INK : Palette.PAPER,
                        "stroke-width",
                        reversed ? 2.2 : 0.8));
    }
}
