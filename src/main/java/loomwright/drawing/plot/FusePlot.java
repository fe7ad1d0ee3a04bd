package loomwright.drawing.plot;

import static loomwright.message.Arg.arg;
import static loomwright.message.Arg.quantities;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import loomwright.drawing.Svg;
import loomwright.drawing.plot.PlotCurve.Look;
import loomwright.drawing.plot.PlotCurve.Point;
import loomwright.message.Arg;
import loomwright.sizing.FuseCurves;

/** How long a fuse takes to open against how long the wire bears the current, over current. */
public final class FusePlot {
    /** An hour and more is not told apart. */
    private static final double LONGEST_S = 10_000;

    private FusePlot() {}

    /** The picture. */
    public static Svg draw(FuseCurves curves) {
        return PlotDrawing.draw("fuse", title(curves), description(curves), List.of(plot(curves)));
    }

    static Plot plot(FuseCurves curves) {
        Axis x = currents(curves);
        Axis y = times(curves);
        List<PlotCurve> drawn = new ArrayList<>(areas(curves, x, y));
        Double loadA = curves.currentA();
        if (loadA != null) {
            drawn.add(PlotCurve.upright(
                    PlotText.FUSE_LOAD.with(arg("currentA", loadA)).text(), Look.GUIDE, y, loadA));
        }
        drawn.add(PlotCurve.upright(
                PlotText.FUSE_AMPACITY
                        .with(arg("ampacityA", curves.ampacityA()))
                        .text(),
                Look.LIMIT,
                y,
                curves.ampacityA()));
        Double shortA = curves.prospectiveA();
        if (shortA != null) {
            drawn.add(PlotCurve.upright(
                    PlotText.FUSE_SHORT.with(arg("currentA", shortA)).text(), Look.FIFTH, y, shortA));
        }
        Arg[] limit = {arg("size", curves.size()), arg("limitC", curves.limitC())};
        Stream.of(
                        curve(
                                PlotText.FUSE_LATEST.text(),
                                Look.MAIN,
                                curves.curves().longest()),
                        curve(
                                PlotText.FUSE_EARLIEST.text(),
                                Look.THIRD,
                                curves.curves().shortest()),
                        curve(
                                PlotText.FUSE_WIRE_WITHOUT_LOSS.with(limit).text(),
                                Look.SECOND,
                                curves.curves().wireAdiabatic()),
                        curve(
                                PlotText.FUSE_WIRE_WITH_LOSS.with(limit).text(),
                                Look.FOURTH,
                                curves.curves().wireWithLoss()))
                .filter(curve -> !curve.points().isEmpty())
                .forEach(drawn::add);
        FuseCurves.Point inrush = curves.inrush();
        if (inrush != null) {
            drawn.add(PlotCurve.mark(
                    PlotText.FUSE_SWITCH_ON
                            .with(arg("currentA", inrush.currentA()), arg("timeS", inrush.timeS()))
                            .text(),
                    inrush.currentA(),
                    inrush.timeS()));
        }
        return new Plot(title(curves), x, y, drawn);
    }

    /** Where the wire is too hot, and where the fuse may open. */
    private static List<PlotCurve> areas(FuseCurves curves, Axis x, Axis y) {
        List<PlotCurve> areas = new ArrayList<>();
        List<FuseCurves.Point> limit = curves.curves().wireWithLoss().isEmpty()
                ? curves.curves().wireAdiabatic()
                : curves.curves().wireWithLoss();
        if (!limit.isEmpty()) {
            List<Point> above = new ArrayList<>();
            above.add(new Point(limit.get(0).currentA(), y.max()));
            limit.forEach(point -> above.add(new Point(point.currentA(), point.timeS())));
            above.add(new Point(x.max(), limit.get(limit.size() - 1).timeS()));
            above.add(new Point(x.max(), y.max()));
            areas.add(new PlotCurve(PlotText.FUSE_WIRE_TOO_HOT.text(), Look.DANGER, above));
        }
        if (!curves.curves().shortest().isEmpty() && !curves.curves().longest().isEmpty()) {
            List<Point> band = new ArrayList<>();
            curves.curves().shortest().forEach(point -> band.add(new Point(point.currentA(), point.timeS())));
            List<FuseCurves.Point> back = new ArrayList<>(curves.curves().longest());
            Collections.reverse(back);
            back.forEach(point -> band.add(new Point(point.currentA(), point.timeS())));
            // Between the two least currents it may open or never open.
            band.add(new Point(curves.curves().longest().get(0).currentA(), y.max()));
            band.add(new Point(curves.curves().shortest().get(0).currentA(), y.max()));
            areas.add(new PlotCurve(PlotText.FUSE_OPENS_WITHIN.text(), Look.BAND, band));
        }
        return areas;
    }

    private static Axis currents(FuseCurves curves) {
        Double asked = curves.currentA();
        double loadA = asked == null ? curves.ratingA() : asked;
        double least = Math.min(Math.min(loadA, curves.ratingA()), curves.ampacityA());
        double most = Math.max(
                Math.max(
                        curves.curves()
                                .longest()
                                .get(curves.curves().longest().size() - 1)
                                .currentA(),
                        loadA),
                curves.inrush() == null ? 0 : curves.inrush().currentA());
        return Axis.logarithmicAround(PlotText.AXIS_CURRENT.text(), least, most);
    }

    private static Axis times(FuseCurves curves) {
        double least = Stream.of(
                        curves.curves().shortest(),
                        curves.curves().wireAdiabatic(),
                        curves.curves().wireWithLoss())
                .flatMap(List::stream)
                .mapToDouble(FuseCurves.Point::timeS)
                .min()
                .orElseThrow();
        double inrushS = curves.inrush() == null ? least : curves.inrush().timeS();
        return Axis.logarithmic(PlotText.AXIS_TIME.text(), Math.min(least, inrushS), LONGEST_S);
    }

    private static PlotCurve curve(String name, Look look, List<FuseCurves.Point> points) {
        return new PlotCurve(
                name,
                look,
                points.stream().map(p -> new Point(p.currentA(), p.timeS())).toList());
    }

    private static String title(FuseCurves curves) {
        return PlotText.FUSE_TITLE
                .with(
                        arg("ratingA", curves.ratingA()),
                        arg("size", curves.size()),
                        arg("chosen", curves.chosen() ? "yes" : "no"))
                .text();
    }

    private static String description(FuseCurves curves) {
        return PlotText.FUSE_DESCRIPTION
                .with(
                        arg("limitC", curves.limitC()),
                        quantities(
                                "loadA",
                                Optional.ofNullable(curves.currentA()).stream().toList()),
                        arg("ampacityA", curves.ampacityA()),
                        quantities(
                                "shortA",
                                Optional.ofNullable(curves.prospectiveA()).stream()
                                        .toList()))
                .text();
    }
}
