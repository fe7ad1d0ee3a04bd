package loomwright.drawing.diagram;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finished drawing as plain data; {@link DrawingSvg} writes it.
 *
 * @param title what it shows
 * @param description what there is to see, for a reader who does not
 * @param symbols the parts
 * @param wires in the order of the plan
 * @param texts all but the letters within symbols
 */
public record Drawing(
        double widthPx,
        double heightPx,
        String title,
        String description,
        List<Symbol> symbols,
        List<Line> wires,
        List<Text> texts,
        List<Badge> badges) {
    public Drawing {
        symbols = List.copyOf(symbols);
        wires = List.copyOf(wires);
        texts = List.copyOf(texts);
        badges = List.copyOf(badges);
    }

    /**
     * A part, or two connector halves together.
     *
     * @param ids the parts it stands for
     * @param words for a reader who does not see it
     * @param box the room its strokes take
     * @param shapes from the corner of the box
     * @param pins where its wires end
     * @param emphasis why it stands out
     */
    public record Symbol(
            List<String> ids,
            String words,
            Rect box,
            List<Shape> shapes,
            List<Body.Glyph> glyphs,
            List<DiagramPoint> pins,
            Emphasis emphasis) {
        public Symbol {
            ids = List.copyOf(ids);
            shapes = List.copyOf(shapes);
            glyphs = List.copyOf(glyphs);
            pins = List.copyOf(pins);
        }

        Symbol moved(double dx, double dy) {
            List<DiagramPoint> there = pins.stream().map(p -> p.moved(dx, dy)).toList();
            return new Symbol(ids, words, box.moved(dx, dy), shapes, glyphs, there, emphasis);
        }
    }

    /**
     * A wire.
     *
     * @param words for a reader who does not see it
     * @param points from its {@code from} to its {@code to}
     * @param colours letters of its insulation, body first; empty if not stated
     * @param heavy whether it is a thick cable
     * @param emphasis why it stands out
     * @param arrow absent if no current flows
     */
    public record Line(
            String id,
            String words,
            List<DiagramPoint> points,
            List<String> colours,
            State state,
            boolean heavy,
            Emphasis emphasis,
            @Nullable Arrow arrow) {
        public Line {
            points = List.copyOf(points);
            colours = List.copyOf(colours);
        }

        Line moved(double dx, double dy) {
            List<DiagramPoint> there = points.stream().map(p -> p.moved(dx, dy)).toList();
            return new Line(
                    id, words, there, colours, state, heavy, emphasis, arrow == null ? null : arrow.moved(dx, dy));
        }
    }

    /** What a wire does. */
    public enum State {
        /** A test lamp would show it. */
        LIVE,
        /** It carries current, at the volts of the earth or near it. */
        RETURN,
        DEAD
    }

    /**
     * Which way the current flows.
     *
     * @param dx and dy: a step of length 1 in that direction
     * @param againstFeed whether the wire is meant to feed the other way
     */
    public record Arrow(double x, double y, double dx, double dy, boolean againstFeed) {
        Arrow moved(double byX, double byY) {
            return new Arrow(x + byX, y + byY, dx, dy, againstFeed);
        }
    }
}
