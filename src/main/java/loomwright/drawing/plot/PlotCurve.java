package loomwright.drawing.plot;

import java.util.List;

/**
 * A line through points, or a mark at one.
 *
 * @param name for the legend, with unit and value where it is a single value
 * @param look how it is distinguished from the others
 * @param points in drawing order; what lies outside the axes is cut off
 */
public record PlotCurve(String name, Look look, List<Point> points) {
    public PlotCurve {
        points = List.copyOf(points);
    }

    /** A place in the units of the axes. */
    public record Point(double x, double y) {}

    /**
     * Told apart by the pattern of the line first, so that a grey print can be read, and by colour: those of Okabe and
     * Ito, which colour-blind people can tell apart.
     */
    public enum Look {
        MAIN("#0072b2", 2.6, ""),
        SECOND("#d55e00", 2.2, "9 4"),
        THIRD("#007a5a", 2.2, "2 3.5"),
        FOURTH("#8a4a78", 2.2, "12 4 2 4"),
        FIFTH("#555555", 1.6, "5 3"),
        LIMIT("#000000", 1.4, "16 5"),
        GUIDE("#000000", 1.1, "1.5 4"),
        /** A ring at one point. */
        MARK("#000000", 1.8, ""),
        /** The area between points, within which something lies. */
        BAND("#0072b2", 0.14),
        /** The same of what is required. */
        SECOND_BAND("#d55e00", 0.18),
        /** The area where something fails. */
        DANGER("#c4261b", 0.12);

        private final String colour;
        private final double widthPx;
        private final String dashes;
        private final double opacity;

        Look(String colour, double widthPx, String dashes) {
            this.colour = colour;
            this.widthPx = widthPx;
            this.dashes = dashes;
            this.opacity = 0;
        }

        Look(String colour, double opacity) {
            this.colour = colour;
            this.widthPx = 0;
            this.dashes = "";
            this.opacity = opacity;
        }

        /** Whether it is an area rather than a line. */
        boolean isArea() {
            return opacity > 0;
        }

        Object[] attributes() {
            if (isArea()) {
                return new Object[] {"fill", colour, "fill-opacity", opacity, "stroke", "none"};
            }
            return dashes.isEmpty()
                    ? new Object[] {"stroke", colour, "stroke-width", widthPx, "fill", "none"}
                    : new Object[] {
                        "stroke", colour, "stroke-width", widthPx, "stroke-dasharray", dashes, "fill", "none"
                    };
        }
    }

    /** What lies between two levels, from one side of the other axis to the other. */
    static PlotCurve between(String name, Look look, Axis x, double low, double high) {
        return new PlotCurve(
                name,
                look,
                List.of(
                        new Point(x.min(), low),
                        new Point(x.max(), low),
                        new Point(x.max(), high),
                        new Point(x.min(), high)));
    }

    /** A value that does not depend on the other axis, from one side of it to the other. */
    static PlotCurve level(String name, Look look, Axis x, double y) {
        return new PlotCurve(name, look, List.of(new Point(x.min(), y), new Point(x.max(), y)));
    }

    /** The same upright. */
    static PlotCurve upright(String name, Look look, Axis y, double x) {
        return new PlotCurve(name, look, List.of(new Point(x, y.min()), new Point(x, y.max())));
    }

    static PlotCurve mark(String name, double x, double y) {
        return new PlotCurve(name, Look.MARK, List.of(new Point(x, y)));
    }
}
