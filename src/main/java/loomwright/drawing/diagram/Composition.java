package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.Symbol;
import loomwright.operation.PlanReadings.NodeReading;

/** A drawing while it is put together. */
final class Composition {
    private static final double NUMBER_GAP_PX = 8;

    private final List<Symbol> symbols = new ArrayList<>();
    private final List<Line> wires = new ArrayList<>();
    private final List<Text> texts = new ArrayList<>();
    private final List<Badge> badges = new ArrayList<>();

    void add(Draft draft, double dx, double dy) {
        draft.symbols().forEach(symbol -> symbols.add(symbol.moved(dx, dy)));
        draft.wires().forEach(wire -> wires.add(wire.moved(dx, dy)));
        draft.texts().forEach(text -> texts.add(text.moved(dx, dy)));
        draft.badges().forEach(badge -> badges.add(badge.moved(dx, dy)));
    }

    /** The title of the sheet, in one line. */
    void title(String title, double x, double widthPx) {
        line(Text.Role.TITLE, x, 26, title, widthPx);
    }

    /** The number of a sheet, large, and its name in one line. */
    void head(CircuitSheet sheet, double x, double baseline, double widthPx) {
        String number = String.valueOf(sheet.number());
        text(Text.Role.SHEET_NUMBER, x, baseline, number);
        double wide = Text.Role.SHEET_NUMBER.widthPx(number) + NUMBER_GAP_PX;
        line(Text.Role.LEGEND_HEAD, x + wide, baseline, sheet.title(), widthPx - wide);
    }

    /** One line of text; none where it is blank. */
    private void line(Text.Role role, double x, double baseline, String text, double widthPx) {
        TextLines.wrapped(text, role, widthPx, 1).forEach(line -> texts.add(new Text("", role, x, baseline, line)));
    }

    /** What moment it is, in up to two lines. */
    void moment(String moment, double x, double firstBaseline, double widthPx) {
        double baseline = firstBaseline;
        for (String line : TextLines.wrapped(moment, Text.Role.SUBTITLE, widthPx, 2)) {
            texts.add(new Text("", Text.Role.SUBTITLE, x, baseline, line));
            baseline += 15;
        }
    }

    void text(Text.Role role, double x, double baseline, String text) {
        texts.add(new Text("", role, x, baseline, text));
    }

    void line(Line line) {
        wires.add(line);
    }

    void badge(Badge badge) {
        badges.add(badge);
    }

    /** One that shows no step of a circuit. */
    Drawing drawing(
            double widthPx, double heightPx, String title, String moment, String description, List<Integer> marks) {
        return drawing(widthPx, heightPx, title, moment, description, marks, List.of());
    }

    Drawing drawing(
            double widthPx,
            double heightPx,
            String title,
            String moment,
            String description,
            List<Integer> marks,
            List<NodeReading> nodes) {
        return new Drawing(
                widthPx,
                heightPx,
                new Drawing.Captions(title, moment, description),
                marks,
                nodes,
                symbols,
                wires,
                texts,
                badges);
    }
}
