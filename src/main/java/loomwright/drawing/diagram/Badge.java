package loomwright.drawing.diagram;

/**
 * The number of a mark beside what it is about.
 *
 * @param owner id of the part or wire
 */
public record Badge(String owner, Mark.Kind kind, int number, double x, double y) {
    static final double RADIUS_PX = 7.5;
    /** Room from one badge to the next. */
    static final double PITCH_PX = 18;

    public Rect rect() {
        return new Rect(x - RADIUS_PX, y - RADIUS_PX, 2 * RADIUS_PX, 2 * RADIUS_PX);
    }

    Badge moved(double dx, double dy) {
        return new Badge(owner, kind, number, x + dx, y + dy);
    }
}
