package loomwright.operation;

/**
 * Where the two leads of a meter are.
 *
 * @param from the red lead
 * @param to the black lead
 */
public record Probe(Point from, Point to) {
    /** From {@code part.terminal} or {@code earth} each. */
    public static Probe of(String from, String to) {
        return new Probe(Point.parse(from), Point.parse(to));
    }

    public static Probe toEarth(String from) {
        return new Probe(Point.parse(from), Point.EARTH);
    }
}
