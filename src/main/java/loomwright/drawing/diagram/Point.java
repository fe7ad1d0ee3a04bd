package loomwright.drawing.diagram;

/** A point of the drawing. */
public record Point(double x, double y) {
    Point moved(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }
}
