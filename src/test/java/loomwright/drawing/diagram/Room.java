package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.List;
import loomwright.drawing.diagram.Drawing.Line;
import loomwright.drawing.diagram.Drawing.Symbol;

/** Looks for things of a drawing that are in each other's way. */
final class Room {
    /** What a wire without its band takes on either side. */
    private static final double HALF_WIRE = 2.5;
    /** Strokes may end on the border of a symbol. */
    private static final double BORDER = 1;

    private record Thing(String what, Rect rect) {}

    private final Drawing drawing;
    private final List<String> found = new ArrayList<>();

    private Room(Drawing drawing) {
        this.drawing = drawing;
    }

    /** Everything that overlaps, in words; empty for a clean drawing. */
    static List<String> overlaps(Drawing drawing) {
        Room room = new Room(drawing);
        List<Thing> labels = new ArrayList<>();
        drawing.texts()
                .forEach(text -> labels.add(new Thing("text " + text.text() + " of " + text.owner(), text.rect())));
        drawing.badges().forEach(badge -> labels.add(new Thing("badge " + badge.number(), badge.rect())));
        List<Thing> symbols = new ArrayList<>();
        for (Symbol symbol : drawing.symbols()) {
            symbols.add(new Thing("symbol " + symbol.ids(), shrunk(symbol.box())));
        }
        List<Thing> wires = room.segments();
        room.among(labels);
        room.among(symbols);
        room.between(labels, symbols);
        room.between(wires, labels);
        room.between(wires, symbols);
        room.inside(labels);
        room.inside(symbols);
        room.inside(wires);
        room.wiresOnEachOther();
        return room.found;
    }

    private static Rect shrunk(Rect rect) {
        return new Rect(
                rect.x() + BORDER,
                rect.y() + BORDER + HALF_WIRE,
                rect.width() - 2 * BORDER,
                rect.height() - 2 * (BORDER + HALF_WIRE));
    }

    private List<Thing> segments() {
        List<Thing> segments = new ArrayList<>();
        for (Line wire : drawing.wires()) {
            for (int i = 1; i < wire.points().size(); i++) {
                DiagramPoint a = wire.points().get(i - 1);
                DiagramPoint b = wire.points().get(i);
                segments.add(new Thing(
                        "wire " + wire.said().id(),
                        new Rect(
                                Math.min(a.x(), b.x()) - HALF_WIRE,
                                Math.min(a.y(), b.y()) - HALF_WIRE,
                                Math.abs(a.x() - b.x()) + 2 * HALF_WIRE,
                                Math.abs(a.y() - b.y()) + 2 * HALF_WIRE)));
            }
        }
        return segments;
    }

    private void among(List<Thing> things) {
        for (int i = 0; i < things.size(); i++) {
            for (int k = i + 1; k < things.size(); k++) {
                check(things.get(i), things.get(k));
            }
        }
    }

    private void between(List<Thing> some, List<Thing> others) {
        some.forEach(one -> others.forEach(other -> check(one, other)));
    }

    private void check(Thing one, Thing other) {
        if (one.rect().overlaps(other.rect())) {
            found.add(one.what() + " on " + other.what());
        }
    }

    private void inside(List<Thing> things) {
        for (Thing thing : things) {
            Rect r = thing.rect();
            if (r.x() < 0 || r.y() < 0 || r.right() > drawing.widthPx() || r.bottom() > drawing.heightPx()) {
                found.add(thing.what() + " outside of the sheet");
            }
        }
    }

    /** Two wires may cross, but not run on each other. */
    private void wiresOnEachOther() {
        List<Thing> segments = segments();
        for (int i = 0; i < segments.size(); i++) {
            for (int k = i + 1; k < segments.size(); k++) {
                Thing one = segments.get(i);
                Thing other = segments.get(k);
                double wide = Math.min(one.rect().right(), other.rect().right())
                        - Math.max(one.rect().x(), other.rect().x());
                double high = Math.min(one.rect().bottom(), other.rect().bottom())
                        - Math.max(one.rect().y(), other.rect().y());
                boolean crossing = wide <= 2 * HALF_WIRE + 0.1 && high <= 2 * HALF_WIRE + 0.1;
                if (wide > 0 && high > 0 && !crossing && !one.what().equals(other.what())) {
                    found.add(one.what() + " along " + other.what());
                }
            }
        }
    }
}
