package loomwright.drawing.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import loomwright.drawing.Svg;
import loomwright.drawing.plot.PlotCurve.Look;
import loomwright.drawing.plot.PlotCurve.Point;
import loomwright.ignition.WorkingNumber;
import loomwright.ignition.spark.Boundary;
import loomwright.ignition.spark.SparkCurves;
import loomwright.ignition.spark.SparkPoint;

/** The current of a coil over one cycle, and the kilovolts it has and needs over speed and over supply. */
public final class SparkPlots {
    private static final double PER_MILLI = 1e3;
    private static final double PER_KILO = 1e-3;

    private SparkPlots() {}

    /** The picture. */
    public static Svg draw(SparkCurves curves) {
        SparkPoint at = curves.at();
        List<Plot> plots = List.of(current(curves), overSpeed(curves), overSupply(curves));
        return PlotDrawing.draw(
                "spark",
                "Coil and spark at " + WorkingNumber.of(at.speedRpm()) + " rpm and " + WorkingNumber.of(at.supplyV())
                        + " V",
                description(curves),
                plots);
    }

    static Plot current(SparkCurves curves) {
        SparkPoint at = curves.at();
        double cycleMs = at.cycleS() * PER_MILLI;
        Axis x = Axis.linear("time since the primary closed, ms", 0, cycleMs);
        Axis y = Axis.fromZero("current of one coil, A", at.peakA());
        double dwellMs = at.dwellS() * PER_MILLI;
        List<Point> points = Stream.concat(
                        curves.charging().stream().map(i -> new Point(i.timeS() * PER_MILLI, i.currentA())),
                        Stream.of(new Point(dwellMs, 0), new Point(cycleMs, 0)))
                .toList();
        return new Plot(
                "Primary current over one cycle at " + WorkingNumber.of(at.speedRpm()) + " rpm, "
                        + WorkingNumber.of(at.supplyV()) + " V",
                x,
                y,
                List.of(
                        new PlotCurve(
                                "primary current, closed again after " + WorkingNumber.of(cycleMs) + " ms",
                                Look.MAIN,
                                points),
                        PlotCurve.mark(
                                "break: " + WorkingNumber.of(at.peakA()) + " A after " + WorkingNumber.of(dwellMs)
                                        + " ms",
                                dwellMs,
                                at.peakA())));
    }

    static Plot overSpeed(SparkCurves curves) {
        List<SparkPoint> points = curves.overSpeed();
        Axis x = Axis.linear(
                "speed of the crankshaft, rpm",
                points.get(0).speedRpm(),
                points.get(points.size() - 1).speedRpm());
        Boundary ends = curves.marginEndsRpm();
        List<PlotCurve> more = ends.kind() == Boundary.Kind.AT && ends.value() <= x.max()
                ? List.of(PlotCurve.upright(
                        "no spark from " + WorkingNumber.of(ends.value()) + " rpm on",
                        Look.GUIDE,
                        kilovolts(curves, points),
                        ends.value()))
                : List.of();
        return overWhat(
                "Kilovolts over speed at " + WorkingNumber.of(curves.at().supplyV()) + " V",
                x,
                points,
                SparkPoint::speedRpm,
                more,
                curves);
    }

    static Plot overSupply(SparkCurves curves) {
        List<SparkPoint> points = curves.overSupply();
        Axis x = Axis.linear(
                "supply, V",
                points.get(0).supplyV(),
                points.get(points.size() - 1).supplyV());
        Boundary starts = curves.startsAboveV();
        List<PlotCurve> more =
                starts.kind() == Boundary.Kind.AT && starts.value() >= x.min() && starts.value() <= x.max()
                        ? List.of(PlotCurve.upright(
                                "starts above " + WorkingNumber.of(starts.value()) + " V (cranking)",
                                Look.GUIDE,
                                kilovolts(curves, points),
                                starts.value()))
                        : List.of();
        return overWhat(
                "Kilovolts over supply at " + WorkingNumber.of(curves.at().speedRpm()) + " rpm",
                x,
                points,
                SparkPoint::supplyV,
                more,
                curves);
    }

    private static Plot overWhat(
            String title,
            Axis x,
            List<SparkPoint> points,
            ToDoubleFunction<SparkPoint> place,
            List<PlotCurve> more,
            SparkCurves around) {
        SparkPoint at = around.at();
        List<PlotCurve> curves = new ArrayList<>();
        double lowKv = around.requiredLowestV() * PER_KILO;
        double highKv = around.requiredHighestV() * PER_KILO;
        if (highKv > lowKv) {
            curves.add(PlotCurve.between(
                    "required by published formulas, " + WorkingNumber.of(lowKv) + " to " + WorkingNumber.of(highKv)
                            + " kV",
                    Look.SECOND_BAND,
                    x,
                    lowKv,
                    highKv));
        }
        curves.addAll(more);
        curves.add(new PlotCurve(
                "with reserve, " + WorkingNumber.of(around.reserveRatio() * at.requiredV() * PER_KILO) + " kV",
                Look.LIMIT,
                line(points, place, point -> around.reserveRatio() * point.requiredV())));
        curves.add(new PlotCurve("available", Look.MAIN, line(points, place, SparkPoint::availableV)));
        curves.add(new PlotCurve(
                "required, " + WorkingNumber.of(at.requiredV() * PER_KILO) + " kV",
                Look.SECOND,
                line(points, place, SparkPoint::requiredV)));
        double placeOfAsked = place.applyAsDouble(at);
        if (placeOfAsked >= x.min() && placeOfAsked <= x.max()) {
            curves.add(PlotCurve.mark(
                    "asked about: " + WorkingNumber.of(at.availableV() * PER_KILO) + " kV available",
                    placeOfAsked,
                    at.availableV() * PER_KILO));
        }
        return new Plot(title, x, kilovolts(around, points), curves);
    }

    private static List<Point> line(
            List<SparkPoint> points, ToDoubleFunction<SparkPoint> place, ToDoubleFunction<SparkPoint> volts) {
        return points.stream()
                .map(p -> new Point(place.applyAsDouble(p), volts.applyAsDouble(p) * PER_KILO))
                .toList();
    }

    private static Axis kilovolts(SparkCurves curves, List<SparkPoint> points) {
        double mostV = points.stream()
                .mapToDouble(p -> Math.max(p.availableV(), curves.reserveRatio() * p.requiredV()))
                .max()
                .orElseThrow();
        return Axis.fromZero("secondary voltage, kV", mostV * PER_KILO);
    }

    private static String description(SparkCurves curves) {
        SparkPoint at = curves.at();
        Boundary ends = curves.marginEndsRpm();
        String speeds = switch (ends.kind()) {
            case AT -> "fall below them at " + WorkingNumber.of(ends.value()) + " rpm";
            case NOT_REACHED -> "stay above them up to " + WorkingNumber.of(ends.value()) + " rpm";
            case NEVER_THERE -> "are below them already at " + WorkingNumber.of(ends.value()) + " rpm";
        };
        return "The primary current rises from " + WorkingNumber.of(at.residualA()) + " A to "
                + WorkingNumber.of(at.peakA()) + " A in "
                + WorkingNumber.milli(at.dwellS()) + " ms. Of kilovolts " + WorkingNumber.kilo(at.availableV())
                + " are available and " + WorkingNumber.kilo(at.requiredV()) + " required; over speed those available "
                + speeds + ".";
    }
}
