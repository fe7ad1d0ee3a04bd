package loomwright.drawing.plot;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import loomwright.drawing.Svg;
import loomwright.drawing.plot.PlotCurve.Look;
import loomwright.drawing.plot.PlotCurve.Point;
import loomwright.ignition.WorkingNumber;
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
            drawn.add(PlotCurve.upright("load, " + WorkingNumber.of(loadA) + " A", Look.GUIDE, y, loadA));
        }
        drawn.add(PlotCurve.upright(
                "ampacity, " + WorkingNumber.of(curves.ampacityA()) + " A", Look.LIMIT, y, curves.ampacityA()));
        if (curves.prospectiveA() != null) {
            drawn.add(PlotCurve.upright(
                    "short circuit, " + WorkingNumber.of(curves.prospectiveA()) + " A",
                    Look.FIFTH,
                    y,
                    curves.prospectiveA()));
        }
        String limit = curves.size() + " reaches " + WorkingNumber.of(curves.limitC()) + " °C";
        Stream.of(
                        curve("fuse opens at the latest", Look.MAIN, curves.longest()),
                        curve("fuse opens at the earliest", Look.THIRD, curves.shortest()),
                        curve(limit + ", no heat lost", Look.SECOND, curves.wireAdiabatic()),
                        curve(limit + ", heat lost", Look.FOURTH, curves.wireWithLoss()))
                .filter(curve -> !curve.points().isEmpty())
                .forEach(drawn::add);
        FuseCurves.Point inrush = curves.inrush();
        if (inrush != null) {
            drawn.add(PlotCurve.mark(
                    "switch-on: " + WorkingNumber.of(inrush.currentA()) + " A for " + WorkingNumber.of(inrush.timeS())
                            + " s",
                    inrush.currentA(),
                    inrush.timeS()));
        }
        return new Plot(title(curves), x, y, drawn);
    }

    /** Where the wire is too hot, and where the fuse may open. */
    private static List<PlotCurve> areas(FuseCurves curves, Axis x, Axis y) {
        List<PlotCurve> areas = new ArrayList<>();
        List<FuseCurves.Point> limit = curves.wireWithLoss().isEmpty() ? curves.wireAdiabatic() : curves.wireWithLoss();
        if (!limit.isEmpty()) {
            List<Point> above = new ArrayList<>();
            above.add(new Point(limit.get(0).currentA(), y.max()));
            limit.forEach(point -> above.add(new Point(point.currentA(), point.timeS())));
            above.add(new Point(x.max(), limit.get(limit.size() - 1).timeS()));
            above.add(new Point(x.max(), y.max()));
            areas.add(new PlotCurve("wire too hot: the fuse must open below this", Look.DANGER, above));
        }
        if (!curves.shortest().isEmpty() && !curves.longest().isEmpty()) {
            List<Point> band = new ArrayList<>();
            curves.shortest().forEach(point -> band.add(new Point(point.currentA(), point.timeS())));
            List<FuseCurves.Point> back = new ArrayList<>(curves.longest());
            Collections.reverse(back);
            back.forEach(point -> band.add(new Point(point.currentA(), point.timeS())));
            // Between the two least currents it may open or never open.
            band.add(new Point(curves.longest().get(0).currentA(), y.max()));
            band.add(new Point(curves.shortest().get(0).currentA(), y.max()));
            areas.add(new PlotCurve("fuse opens within this", Look.BAND, band));
        }
        return areas;
    }

    private static Axis currents(FuseCurves curves) {
        Double asked = curves.currentA();
        double loadA = asked == null ? curves.ratingA() : asked;
        double least = Math.min(Math.min(loadA, curves.ratingA()), curves.ampacityA());
        double most = Math.max(
                Math.max(curves.longest().get(curves.longest().size() - 1).currentA(), loadA),
                curves.inrush() == null ? 0 : curves.inrush().currentA());
        return Axis.logarithmicAround("current, A", least, most);
    }

    private static Axis times(FuseCurves curves) {
        double least = Stream.of(curves.shortest(), curves.wireAdiabatic(), curves.wireWithLoss())
                .flatMap(List::stream)
                .mapToDouble(FuseCurves.Point::timeS)
                .min()
                .orElseThrow();
        double inrushS = curves.inrush() == null ? least : curves.inrush().timeS();
        return Axis.logarithmic("time, s", Math.min(least, inrushS), LONGEST_S);
    }

    private static PlotCurve curve(String name, Look look, List<FuseCurves.Point> points) {
        return new PlotCurve(
                name,
                look,
                points.stream().map(p -> new Point(p.currentA(), p.timeS())).toList());
    }

    private static String title(FuseCurves curves) {
        return "Fuse of " + WorkingNumber.of(curves.ratingA()) + " A against " + curves.size()
                + (curves.chosen() ? "" : " (none suits)");
    }

    private static String description(FuseCurves curves) {
        return "Opening time of the fuse and time until the wire reaches " + WorkingNumber.of(curves.limitC())
                + " °C, over current, both axes logarithmic. The fuse protects the wire wherever its latest opening lies"
                + " below the curve of the wire."
                + (curves.currentA() == null ? "" : " Load " + WorkingNumber.of(curves.currentA()) + " A.")
                + " Ampacity " + WorkingNumber.of(curves.ampacityA()) + " A"
                + (curves.prospectiveA() == null
                        ? ""
                        : ", short circuit " + WorkingNumber.of(curves.prospectiveA()) + " A")
                + ".";
    }
}
