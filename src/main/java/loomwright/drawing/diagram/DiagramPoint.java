package loomwright.drawing.diagram;

/** A point of the drawing. */
public record DiagramPoint(double x, double y) {
    DiagramPoint moved(double dx, double dy) {
        return new DiagramPoint(x + dx, y + dy);
    }
}
