package loomwright.drawing.diagram;

import java.util.List;
import loomwright.operation.PlanReadings.NodeReading;
import org.jspecify.annotations.Nullable;

/**
 * A finished drawing as plain data; {@link DrawingSvg} writes it.
 *
 * @param marks numbers of what is pointed out
 * @param nodes the voltages that it shows
 * @param symbols the parts
 * @param wires in the order of the plan
 * @param texts all but the letters within symbols
 */
public record Drawing(
        double widthPx,
        double heightPx,
        Captions captions,
        List<Integer> marks,
        List<NodeReading> nodes,
        List<Symbol> symbols,
        List<Line> wires,
        List<Text> texts,
        List<Badge> badges) {
    public Drawing {
        marks = List.copyOf(marks);
        nodes = List.copyOf(nodes);
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
     * @param pins its terminals
     * @param emphasis why it stands out
     */
    public record Symbol(
            List<String> ids,
            String words,
            Rect box,
            List<Shape> shapes,
            List<Body.Glyph> glyphs,
            List<Pin> pins,
            Emphasis emphasis) {
        public Symbol {
            ids = List.copyOf(ids);
            shapes = List.copyOf(shapes);
            glyphs = List.copyOf(glyphs);
            pins = List.copyOf(pins);
        }

        Symbol moved(double dx, double dy) {
            List<Pin> there = pins.stream().map(pin -> pin.moved(dx, dy)).toList();
            return new Symbol(ids, words, box.moved(dx, dy), shapes, glyphs, there, emphasis);
        }
    }

    /**
     * A terminal of a symbol.
     *
     * @param terminal {@code part.terminal}
     * @param at where its wires end
     */
    public record Pin(String terminal, DiagramPoint at) {
        Pin moved(double dx, double dy) {
            return new Pin(terminal, at.moved(dx, dy));
        }
    }

    /**
     * A wire.
     *
     * @param points from its {@code from} to its {@code to}
     * @param colours letters of its insulation, body first; empty if not stated
     * @param heavy whether it is a thick cable
     * @param emphasis why it stands out
     * @param arrow absent if no current flows
     */
    public record Line(
            LineWords said,
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
            return new Line(said, there, colours, state, heavy, emphasis, arrow == null ? null : arrow.moved(dx, dy));
        }
    }

    /**
     * What it stands for, in words.
     *
     * @param from {@code part.terminal}; empty for a sample in the legend, and so {@code to}
     * @param words what it is, for a reader who does not see it
     * @param does what it does in this step, for the same; empty if nothing can be said
     */
    public record LineWords(String id, String from, String to, String words, String does) {}

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

    /**
     * What it says about itself.
     *
     * @param title what it shows
     * @param moment which step it is, and where everything stands
     * @param description what there is to see, for a reader who does not
     */
    public record Captions(String title, String moment, String description) {}
}
