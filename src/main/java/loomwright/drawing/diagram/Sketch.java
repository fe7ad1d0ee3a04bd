package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.drawing.Markup;

/** Collects the strokes of a symbol. */
final class Sketch {
    private final List<Body.Pin> pins = new ArrayList<>();
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Body.Glyph> glyphs = new ArrayList<>();

    Sketch pin(String terminal, Side side, double x) {
        pins.add(new Body.Pin(terminal, side, x));
        return this;
    }

    /** Straight strokes through points, x and y by turns. */
    Sketch line(double... xy) {
        return line(Shape.Paint.LINE, xy);
    }

    Sketch line(Shape.Paint paint, double... xy) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < xy.length; i += 2) {
            path.append(i == 0 ? "M" : "L")
                    .append(Markup.number(xy[i]))
                    .append(' ')
                    .append(Markup.number(xy[i + 1]));
        }
        return path(paint, path.toString());
    }

    Sketch path(Shape.Paint paint, String path) {
        shapes.add(new Shape(path, paint));
        return this;
    }

    Sketch rect(Shape.Paint paint, double x, double y, double width, double height) {
        String h = Markup.number(width);
        String v = Markup.number(height);
        return path(paint, "M" + Markup.number(x) + " " + Markup.number(y) + "h" + h + "v" + v + "h-" + h + "z");
    }

    Sketch circle(Shape.Paint paint, double x, double y, double radius) {
        String r = Markup.number(radius);
        String d = Markup.number(2 * radius);
        return path(
                paint,
                "M" + Markup.number(x - radius) + " " + Markup.number(y) + "a" + r + " " + r + " 0 1 0 " + d + " 0a" + r
                        + " " + r + " 0 1 0 -" + d + " 0z");
    }

    Sketch glyph(String text, double x, double baseline, double sizePx) {
        glyphs.add(new Body.Glyph(text, x, baseline, sizePx));
        return this;
    }

    /** A contact between two points one above the other: straight when closed, slanted when open. */
    Sketch contact(double x, double fromY, double toY, boolean closed) {
        circle(Shape.Paint.SOLID, x, fromY, 1.8);
        circle(Shape.Paint.BODY, x, toY, 2.2);
        return closed ? line(Shape.Paint.THICK, x, fromY, x, toY) : line(Shape.Paint.THICK, x, fromY, x - 11, toY - 3);
    }

    Body body(double widthPx, double heightPx) {
        return new Body(widthPx, heightPx, pins, shapes, glyphs);
    }
}
