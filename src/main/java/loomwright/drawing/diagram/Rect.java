package loomwright.drawing.diagram;

/** A rectangle, from its upper left corner. */
public record Rect(double x, double y, double width, double height) {

    public double right() {
        return x + width;
    }

    public double bottom() {
        return y + height;
    }

    /** Whether the two share more than an edge. */
    public boolean overlaps(Rect other) {
        return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
    }

    Rect moved(double dx, double dy) {
        return new Rect(x + dx, y + dy, width, height);
    }
}
