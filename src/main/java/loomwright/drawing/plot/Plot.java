package loomwright.drawing.plot;

import java.util.List;

/**
 * Curves over one pair of axes.
 *
 * @param title what it shows
 * @param curves in the order of the legend; later ones are drawn over earlier ones
 */
public record Plot(String title, Axis x, Axis y, List<PlotCurve> curves) {
    public Plot {
        curves = List.copyOf(curves);
    }
}
