package loomwright.drawing.plot;

import java.util.ArrayList;
import java.util.List;
import loomwright.drawing.Markup;
import loomwright.drawing.Svg;
import loomwright.drawing.TextWidth;

/** Draws plots, one below the other: title, curves over a grid, and the legend under the axis, where nothing is hidden. */
public final class PlotDrawing {
    private static final double WIDTH_PX = 720;
    private static final double AREA_HEIGHT_PX = 300;
    private static final double MARGIN_PX = 16;
    private static final double TITLE_PX = 17;
    private static final double LABEL_PX = 13;
    private static final double TICK_PX = 12;
    private static final double LEGEND_ROW_PX = 20;
    private static final double SAMPLE_PX = 40;
    private static final double RING_PX = 5;
    private static final double GAP_PX = 6;
    private static final String GRID = "#d8d8d8";
    private static final String FINE_GRID = "#ececec";
    private static final String INK = "#222222";

    private final Svg svg;
    private final Plot plot;
    private final double leftPx;
    private final double topPx;
    private final double widthPx;
    private final String clip;

    private PlotDrawing(Svg svg, Plot plot, double fromPx, int number) {
        this.svg = svg;
        this.plot = plot;
        double labels = plot.y().ticks().stream()
                .mapToDouble(tick -> TextWidth.of(Axis.text(tick), TICK_PX))
                .max()
                .orElse(0);
        this.leftPx = MARGIN_PX + LABEL_PX + 2 * GAP_PX + labels + GAP_PX;
        this.topPx = fromPx + TITLE_PX + 3 * GAP_PX;
        double lastNumberPx = TextWidth.of(Axis.text(plot.x().max()), TICK_PX);
        this.widthPx = WIDTH_PX - leftPx - MARGIN_PX - lastNumberPx / 2;
        this.clip = svg.id("area" + number);
    }

    /**
     * Draws plots as one picture.
     *
     * @param id begins every id in it
     * @param title of the whole
     * @param description the curves in words and figures, for a reader who does not see them
     */
    public static Svg draw(String id, String title, String description, List<Plot> plots) {
        double heightPx =
                MARGIN_PX + plots.stream().mapToDouble(PlotDrawing::heightPx).sum();
        Svg svg = new Svg(id, WIDTH_PX, heightPx, title, description);
        double fromPx = MARGIN_PX;
        for (int i = 0; i < plots.size(); i++) {
            new PlotDrawing(svg, plots.get(i), fromPx, i).draw();
            fromPx += heightPx(plots.get(i));
        }
        return svg;
    }

    private static double heightPx(Plot plot) {
        return TITLE_PX
                + 3 * GAP_PX
                + AREA_HEIGHT_PX
                + axisPx()
                + legendRows(plot).size() * LEGEND_ROW_PX
                + MARGIN_PX;
    }

    /** Numbers and words under the x axis. */
    private static double axisPx() {
        return GAP_PX + TICK_PX + GAP_PX + LABEL_PX + 2 * GAP_PX;
    }

    private void draw() {
        svg.text(
                leftPx,
                topPx - 2 * GAP_PX,
                TITLE_PX,
                TextWidth.shortened(plot.title(), TITLE_PX, widthPx),
                "fill",
                INK);
        grid();
        axisLabels();
        svg.open("clipPath", "id", clip)
                .rect(leftPx, topPx, widthPx, AREA_HEIGHT_PX)
                .close();
        svg.open("g", "clip-path", "url(#" + clip + ")");
        plot.curves().forEach(this::curve);
        svg.close();
        svg.rect(leftPx, topPx, widthPx, AREA_HEIGHT_PX, "fill", "none", "stroke", INK, "stroke-width", 1.0);
        legend();
    }

    private void grid() {
        double bottomPx = topPx + AREA_HEIGHT_PX;
        double rightPx = leftPx + widthPx;
        plot.x().between().forEach(v -> svg.line(x(v), topPx, x(v), bottomPx, "stroke", FINE_GRID));
        plot.y().between().forEach(v -> svg.line(leftPx, y(v), rightPx, y(v), "stroke", FINE_GRID));
        for (double tick : plot.x().ticks()) {
            svg.line(x(tick), topPx, x(tick), bottomPx, "stroke", GRID);
            number(x(tick), bottomPx + GAP_PX + TICK_PX, tick, "middle");
        }
        for (double tick : plot.y().ticks()) {
            svg.line(leftPx, y(tick), rightPx, y(tick), "stroke", GRID);
            // A figure is about 0.7 of its size high: a third of it below puts its middle on the line.
            number(leftPx - GAP_PX, y(tick) + 0.35 * TICK_PX, tick, "end");
        }
    }

    private void number(double xPx, double yPx, double tick, String anchor) {
        svg.text(xPx, yPx, TICK_PX, Axis.text(tick), "text-anchor", anchor, "fill", INK);
    }

    private void axisLabels() {
        double middlePx = topPx + AREA_HEIGHT_PX / 2;
        double belowPx = topPx + AREA_HEIGHT_PX + GAP_PX + TICK_PX + GAP_PX + LABEL_PX;
        svg.text(leftPx + widthPx / 2, belowPx, LABEL_PX, plot.x().label(), "text-anchor", "middle", "fill", INK);
        double xPx = MARGIN_PX + LABEL_PX;
        svg.text(
                xPx,
                middlePx,
                LABEL_PX,
                plot.y().label(),
                "text-anchor",
                "middle",
                "fill",
                INK,
                "transform",
                "rotate(-90 " + Markup.number(xPx) + " " + Markup.number(middlePx) + ")");
    }

    private void curve(PlotCurve curve) {
        if (curve.look() == PlotCurve.Look.MARK) {
            curve.points().forEach(p -> ring(x(p.x()), y(p.y())));
            return;
        }
        StringBuilder path = new StringBuilder();
        for (PlotCurve.Point point : curve.points()) {
            path.append(path.length() == 0 ? "M" : "L")
                    .append(Markup.number(x(point.x())))
                    .append(' ')
                    .append(Markup.number(y(point.y())));
        }
        svg.path(
                curve.look().isArea() ? path + "Z" : path.toString(),
                curve.look().attributes());
    }

    private void ring(double xPx, double yPx) {
        svg.circle(xPx, yPx, RING_PX, "stroke", "#000000", "stroke-width", 1.8, "fill", "#ffffff");
    }

    private void legend() {
        double yPx = topPx + AREA_HEIGHT_PX + axisPx();
        for (List<PlotCurve> row : legendRows(plot)) {
            yPx += LEGEND_ROW_PX;
            double xPx = MARGIN_PX;
            for (PlotCurve curve : row) {
                double lineY = yPx - 0.35 * TICK_PX;
                if (curve.look() == PlotCurve.Look.MARK) {
                    ring(xPx + RING_PX, lineY);
                } else if (curve.look().isArea()) {
                    svg.rect(
                            xPx,
                            lineY - RING_PX,
                            samplePx(curve),
                            2 * RING_PX,
                            curve.look().attributes());
                } else {
                    svg.line(
                            xPx,
                            lineY,
                            xPx + samplePx(curve),
                            lineY,
                            curve.look().attributes());
                }
                svg.text(xPx + samplePx(curve) + GAP_PX, yPx, TICK_PX, legendText(curve), "fill", INK);
                xPx += legendPx(curve);
            }
        }
    }

    /** As many names in a row as its width takes. */
    private static List<List<PlotCurve>> legendRows(Plot plot) {
        List<List<PlotCurve>> rows = new ArrayList<>();
        double usedPx = Double.POSITIVE_INFINITY;
        for (PlotCurve curve : plot.curves()) {
            if (usedPx + legendPx(curve) > WIDTH_PX - MARGIN_PX) {
                rows.add(new ArrayList<>());
                usedPx = MARGIN_PX;
            }
            rows.get(rows.size() - 1).add(curve);
            usedPx += legendPx(curve);
        }
        return rows;
    }

    private static double legendPx(PlotCurve curve) {
        return samplePx(curve) + GAP_PX + TextWidth.of(legendText(curve), TICK_PX) + 4 * GAP_PX;
    }

    private static double samplePx(PlotCurve curve) {
        return curve.look() == PlotCurve.Look.MARK ? 2 * RING_PX : SAMPLE_PX;
    }

    private static String legendText(PlotCurve curve) {
        return TextWidth.shortened(curve.name(), TICK_PX, WIDTH_PX - 2 * MARGIN_PX - SAMPLE_PX - 5 * GAP_PX);
    }

    private double x(double value) {
        return leftPx + widthPx * plot.x().fraction(value);
    }

    private double y(double value) {
        return topPx + AREA_HEIGHT_PX * (1 - plot.y().fraction(value));
    }
}
