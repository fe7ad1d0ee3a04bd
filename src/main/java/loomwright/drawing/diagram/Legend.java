package loomwright.drawing.diagram;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import loomwright.answer.Caution;
import loomwright.circuit.Wire;
import loomwright.drawing.diagram.DiagramOptions.LegendText;
import loomwright.drawing.diagram.Drawing.Arrow;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.LineWords;
import loomwright.drawing.diagram.Drawing.State;
import org.jspecify.annotations.Nullable;

/** What lines, letters and numbers mean, from the top down. */
final class Legend {
    private static final double LINE_PX = 15;
    private static final double SAMPLE_PX = 44;
    private static final double KEY_GAP_PX = 26;
    private static final int MOST_LINES = 4;

    private final Composition sheet;
    private final double x;
    private final double widthPx;
    private double y;
    private double keyX;

    Legend(Composition sheet, double x, double widthPx, double y) {
        this.sheet = sheet;
        this.x = x;
        this.widthPx = widthPx;
        this.y = y;
        this.keyX = x;
    }

    /** Samples of lines, one after the other. */
    Legend keys(Set<Emphasis> emphasis) {
        key(State.LIVE, Emphasis.NONE, DiagramText.KEY_LIVE);
        key(State.RETURN, Emphasis.NONE, DiagramText.KEY_RETURN);
        key(State.DEAD, Emphasis.NONE, DiagramText.KEY_DEAD);
        if (emphasis.contains(Emphasis.BACKFEED)) {
            key(State.LIVE, Emphasis.BACKFEED, DiagramText.KEY_BACKFEED);
        }
        if (emphasis.contains(Emphasis.ADDED)) {
            key(State.LIVE, Emphasis.ADDED, DiagramText.KEY_ADDED);
        }
        if (emphasis.contains(Emphasis.REMOVED)) {
            key(State.DEAD, Emphasis.REMOVED, DiagramText.KEY_REMOVED);
        }
        if (emphasis.contains(Emphasis.CHANGED)) {
            key(State.LIVE, Emphasis.CHANGED, DiagramText.KEY_CHANGED);
        }
        arrowKey(false, DiagramText.KEY_CURRENT);
        arrowKey(true, DiagramText.KEY_REVERSED);
        keyX = x;
        y += LINE_PX + 3;
        return this;
    }

    /** What stands out in a picture of the wiring alone. */
    Legend changes() {
        key(State.RETURN, Emphasis.ADDED, DiagramText.KEY_ADDED);
        key(State.DEAD, Emphasis.REMOVED, DiagramText.KEY_REMOVED);
        key(State.RETURN, Emphasis.CHANGED, DiagramText.KEY_CHANGED);
        keyX = x;
        y += LINE_PX + 3;
        return this;
    }

    private void key(State state, Emphasis emphasis, DiagramText meaning) {
        String words = meaning.text();
        next(words);
        sample(state, emphasis, null, words);
    }

    private void arrowKey(boolean againstFeed, DiagramText meaning) {
        String words = meaning.text();
        next(words);
        sample(State.LIVE, Emphasis.NONE, new Arrow(keyX + SAMPLE_PX / 2, y + 6, 1, 0, againstFeed), words);
    }

    /** Goes to the next line where this one is full. */
    private void next(String words) {
        double needed = SAMPLE_PX + 8 + Text.Role.LEGEND.widthPx(words);
        if (keyX > x && keyX + needed > x + widthPx) {
            keyX = x;
            y += LINE_PX + 4;
        }
    }

    private void sample(State state, Emphasis emphasis, @Nullable Arrow arrow, String words) {
        DiagramPoint from = new DiagramPoint(keyX, y + 6);
        DiagramPoint to = new DiagramPoint(keyX + SAMPLE_PX, y + 6);
        sheet.line(new Line(
                new LineWords("", "", "", words, ""), List.of(from, to), List.of("GY"), state, false, emphasis, arrow));
        sheet.text(Text.Role.LEGEND, to.x() + 8, y + 10, words);
        keyX = to.x() + 8 + Text.Role.LEGEND.widthPx(words) + KEY_GAP_PX;
    }

    Legend colours(List<Wire> wires) {
        Map<String, Insulation> used = wires.stream()
                .flatMap(wire -> Wordings.colours(wire.colour()).stream())
                .distinct()
                .collect(Collectors.toMap(code -> code, Insulation::of));
        if (!used.isEmpty()) {
            String words = new TreeSet<>(used.keySet())
                    .stream()
                            .map(code -> code + " " + Insulation.of(code).text())
                            .collect(Collectors.joining(", "));
            paragraph(DiagramText.KEY_COLOURS.with(arg("colours", words)).text(), x);
        }
        return paragraph(DiagramText.KEY_VOLTS.text(), x);
    }

    /** Each mark with its number: in a few words in one line, or in full. */
    Legend marks(List<Mark> marks, LegendText legend) {
        for (Mark mark : marks) {
            sheet.badge(new Badge("", mark.kind(), mark.number(), x + Badge.RADIUS_PX, y + 8));
            String text = DiagramText.MARK_LINE
                    .with(
                            arg("kind", mark.kind()),
                            arg("text", legend == LegendText.FULL ? mark.text() : mark.shortText()))
                    .text();
            if (legend == LegendText.FULL) {
                paragraph(text, x + 22);
            } else {
                lines(text, x + 22, 1);
            }
            y += 4;
        }
        return this;
    }

    Legend cautions(List<Caution> cautions) {
        y += 4;
        sheet.text(Text.Role.LEGEND_HEAD, x, y + 11, DiagramText.CAUTIONS_HEAD.text());
        y += LINE_PX;
        return paragraph(cautions.stream().map(Caution::text).collect(Collectors.joining(" ")), x);
    }

    private Legend paragraph(String text, double left) {
        return lines(text, left, text.length() > 300 ? 12 : MOST_LINES);
    }

    private Legend lines(String text, double left, int lines) {
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
