package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import loomwright.drawing.Svg;
import loomwright.operation.Step;

/** Writes texts and numbered marks. */
final class TextMarkup {

    private final StepLayers layers;
    private final Svg svg;

    TextMarkup(StepLayers layers, Svg svg) {
        this.layers = layers;
        this.svg = svg;
    }

    void text(Text text, Set<Step> steps) {
        String look = switch (text.role()) {
            case DATA -> "dg-text-data";
            case SUBTITLE -> "dg-text-data dg-title";
            case TITLE -> "dg-text dg-title";
            case SHEET_NUMBER -> "dg-text dg-sheet";
            case LEGEND_HEAD -> "dg-text dg-head";
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
            default -> Palette.INK;
        };
        List<Object> attributes = new ArrayList<>(List.of("fill", fill));
        if (!text.owner().isEmpty()) {
            attributes.addAll(List.of("data-owner", text.owner()));
        }
        if (text.role().bold()) {
            attributes.addAll(List.of("font-weight", "bold"));
        }
        svg.text(
                text.x(),
                text.baseline(),
                text.role().sizePx(),
                text.text(),
                layers.at(steps, look, attributes.toArray()));
    }

    private static String diamond(double x, double y, double r) {
        return StepLayers.path(List.of(
                        new DiagramPoint(x, y - r),
                        new DiagramPoint(x + r, y),
                        new DiagramPoint(x, y + r),
                        new DiagramPoint(x - r, y)))
                + "z";
    }

    /** Eight corners, as a stop sign. */
    private static String eight(double x, double y, double r) {
        double c = r * 0.414;
        return StepLayers.path(List.of(
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
    void badge(Badge badge, Set<Step> steps) {
        String fill = switch (badge.kind()) {
            case DANGER -> "#b00020";
            case WARNING -> "#a84a00";
            case NOTE -> "#4a4a4a";
            case BACKFEED -> Palette.FED_INK;
            case ADDED -> "#00695c";
            case REMOVED -> Palette.REMOVED_INK;
            case CHANGED -> Palette.CHANGED_INK;
        };
        List<Object> attributes = new ArrayList<>(List.of("data-mark", String.valueOf(badge.number())));
        if (!badge.owner().isEmpty()) {
            attributes.addAll(List.of("data-owner", badge.owner()));
        }
        svg.open("g", layers.at(steps, "dg-mark dg-mark-" + badge.kind().code(), attributes.toArray()));
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
                Palette.PAPER,
                "text-anchor",
                "middle",
                "font-weight",
                "bold");
        svg.close();
    }
}
