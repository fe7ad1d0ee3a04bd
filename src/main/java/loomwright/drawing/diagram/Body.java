package loomwright.drawing.diagram;

import java.util.List;

/**
 * A symbol without its texts.
 *
 * @param widthPx from its left edge
 * @param heightPx from the upper to the lower terminals
 * @param pins where its terminals are
 * @param shapes what to draw
 * @param glyphs letters within it
 */
record Body(double widthPx, double heightPx, List<Pin> pins, List<Shape> shapes, List<Glyph> glyphs) {
    Body {
        pins = List.copyOf(pins);
        shapes = List.copyOf(shapes);
        glyphs = List.copyOf(glyphs);
    }

    /** A terminal: the column it is in. */
    record Pin(String terminal, Side side, double x) {}

    /** A letter of a symbol, centred. */
    record Glyph(String text, double x, double baseline, double sizePx) {}
}
