package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.Symbol;

/** A drawing while it is put together. */
final class Composition {
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

    /** Title in one line, what moment it is in up to two. */
    void head(String title, String moment, double x, double widthPx) {
        texts.add(new Text(
                "",
                Text.Role.TITLE,
                x,
                26,
                TextLines.wrapped(title, Text.Role.TITLE, widthPx, 1).get(0)));
        double baseline = 43;
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

    Drawing drawing(double widthPx, double heightPx, String title, String description) {
        return new Drawing(widthPx, heightPx, title, description, symbols, wires, texts, badges);
    }
}
