package loomwright.drawing.diagram;

import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loomwright.answer.Caution;
import loomwright.circuit.Wire;
import loomwright.drawing.diagram.Drawing.Arrow;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.State;
import org.jspecify.annotations.Nullable;

/** What lines, letters and numbers mean, from the top down. */
final class Legend {
    private static final double LINE_PX = 15;
    private static final double SAMPLE_PX = 44;
    private static final int MOST_LINES = 4;

    private final Composition sheet;
    private final double x;
    private final double widthPx;
    private double y;

    Legend(Composition sheet, double x, double widthPx, double y) {
        this.sheet = sheet;
        this.x = x;
        this.widthPx = widthPx;
        this.y = y;
    }

    Legend keys(Emphasis emphasis) {
        key(0, State.LIVE, Emphasis.NONE, null, "live: a test lamp lights");
        key(1, State.RETURN, Emphasis.NONE, null, "carries current at the volts of earth");
        key(2, State.DEAD, Emphasis.NONE, null, "dead");
        y += LINE_PX + 3;
        key(0, State.LIVE, Emphasis.NONE, arrow(0, false), "current flows this way");
        key(1, State.LIVE, Emphasis.NONE, arrow(1, true), "the same, against the wire's feed");
        if (emphasis != Emphasis.NONE) {
            String words = emphasis == Emphasis.BACKFEED ? "way of a backfeed" : "changed";
            key(2, State.LIVE, emphasis, null, words);
        }
        y += LINE_PX + 3;
        return this;
    }

    private double column(int column) {
        return x + column * Math.min(widthPx / 3, 340);
    }

    private Arrow arrow(int column, boolean againstFeed) {
        return new Arrow(column(column) + SAMPLE_PX / 2 + 5, y + 6, 1, 0, againstFeed);
    }

    private void key(int column, State state, Emphasis emphasis, @Nullable Arrow arrow, String words) {
        double left = column(column);
        sheet.line(new Line(
                "",
                words,
                List.of(new Point(left, y + 6), new Point(left + SAMPLE_PX, y + 6)),
                List.of("RD", "WH"),
                state,
                false,
                emphasis,
                arrow));
        sheet.text(Text.Role.LEGEND, left + SAMPLE_PX + 8, y + 10, words);
    }

    Legend colours(List<Wire> wires) {
        Map<String, Insulation> used = wires.stream()
                .flatMap(wire -> Wordings.colours(wire.colour()).stream())
                .distinct()
                .collect(Collectors.toMap(code -> code, Insulation::of));
        if (used.isEmpty()) {
            return this;
        }
        String words = new TreeSet<>(used.keySet())
                .stream().map(code -> code + " " + Insulation.of(code).words()).collect(Collectors.joining(", "));
        return paragraph(
                "Colours (IEC 60757, body first, then tracer): " + words + ". V at a terminal: volts to earth.", x);
    }

    Legend marks(List<Mark> marks) {
        for (Mark mark : marks) {
            sheet.badge(new Badge("", mark.kind(), mark.number(), x + Badge.RADIUS_PX, y + 8));
            paragraph(mark.text(), x + 22);
            y += 3;
        }
        return this;
    }

    Legend cautions(List<Caution> cautions) {
        y += 4;
        sheet.text(Text.Role.LEGEND_HEAD, x, y + 11, "Before you touch anything");
        y += LINE_PX;
        return paragraph(cautions.stream().map(Caution::text).collect(Collectors.joining(" ")), x);
    }

    private Legend paragraph(String text, double left) {
        int lines = text.length() > 300 ? 12 : MOST_LINES;
        for (String line : TextLines.wrapped(text, Text.Role.LEGEND, widthPx - (left - x), lines)) {
            sheet.text(Text.Role.LEGEND, left, y + 11, line);
            y += LINE_PX;
        }
        return this;
    }

    double bottom() {
        return y;
    }
}
