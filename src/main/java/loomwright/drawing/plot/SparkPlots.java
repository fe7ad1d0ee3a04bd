package loomwright.drawing.plot;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import loomwright.drawing.Svg;
import loomwright.drawing.plot.PlotCurve.Look;
import loomwright.drawing.plot.PlotCurve.Point;
import loomwright.ignition.spark.Boundary;
import loomwright.ignition.spark.SparkCurves;
import loomwright.ignition.spark.SparkPoint;
import loomwright.message.Argument.Quantity;

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
                PlotText.SPARK_TITLE
                        .with(arg("speedRpm", at.speedRpm()), arg("supplyV", at.supplyV()))
                        .text(),
                description(curves),
                plots);
    }

    static Plot current(SparkCurves curves) {
        SparkPoint at = curves.at();
        double cycleMs = at.cycleS() * PER_MILLI;
        Axis x = Axis.linear(PlotText.AXIS_PRIMARY_TIME.text(), 0, cycleMs);
        Axis y = Axis.fromZero(PlotText.AXIS_COIL_CURRENT.text(), at.peakA());
        double dwellMs = at.dwellS() * PER_MILLI;
        List<Point> points = Stream.concat(
                        curves.charging().stream().map(i -> new Point(i.timeS() * PER_MILLI, i.currentA())),
                        Stream.of(new Point(dwellMs, 0), new Point(cycleMs, 0)))
                .toList();
        return new Plot(
                PlotText.PRIMARY_TITLE
                        .with(arg("speedRpm", at.speedRpm()), arg("supplyV", at.supplyV()))
                        .text(),
                x,
                y,
                List.of(
                        new PlotCurve(
                                PlotText.PRIMARY_CURVE
                                        .with(arg("cycleS", at.cycleS()))
                                        .text(),
                                Look.MAIN,
                                points),
                        PlotCurve.mark(
                                PlotText.PRIMARY_BREAK
                                        .with(arg("peakA", at.peakA()), arg("dwellS", at.dwellS()))
                                        .text(),
                                dwellMs,
                                at.peakA())));
    }

    static Plot overSpeed(SparkCurves curves) {
        List<SparkPoint> points = curves.overSpeed();
        Axis x = Axis.linear(
                PlotText.AXIS_SPEED.text(),
                points.get(0).speedRpm(),
                points.get(points.size() - 1).speedRpm());
        Boundary ends = curves.marginEndsRpm();
        List<PlotCurve> more = ends.kind() == Boundary.Kind.AT && ends.value() <= x.max()
                ? List.of(PlotCurve.upright(
                        PlotText.SPEED_NO_SPARK
                                .with(arg("speedRpm", ends.value()))
                                .text(),
                        Look.GUIDE,
                        kilovolts(curves, points),
                        ends.value()))
                : List.of();
        return overWhat(
                PlotText.SPEED_TITLE.with(arg("supplyV", curves.at().supplyV())).text(),
                x,
                points,
                SparkPoint::speedRpm,
                more,
                curves);
    }

    static Plot overSupply(SparkCurves curves) {
        List<SparkPoint> points = curves.overSupply();
        Axis x = Axis.linear(
                PlotText.AXIS_SUPPLY.text(),
                points.get(0).supplyV(),
                points.get(points.size() - 1).supplyV());
        Boundary starts = curves.startsAboveV();
        List<PlotCurve> more =
                starts.kind() == Boundary.Kind.AT && starts.value() >= x.min() && starts.value() <= x.max()
                        ? List.of(PlotCurve.upright(
                                PlotText.SUPPLY_STARTS
                                        .with(arg("supplyV", starts.value()))
                                        .text(),
                                Look.GUIDE,
                                kilovolts(curves, points),
                                starts.value()))
                        : List.of();
        return overWhat(
                PlotText.SUPPLY_TITLE
                        .with(arg("speedRpm", curves.at().speedRpm()))
                        .text(),
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
                    PlotText.REQUIRED_BAND
                            .with(arg("lowest", kilovolts(lowKv)), arg("highest", kilovolts(highKv)))
                            .text(),
                    Look.SECOND_BAND,
                    x,
                    lowKv,
                    highKv));
        }
        curves.addAll(more);
        curves.add(new PlotCurve(
                PlotText.WITH_RESERVE
                        .with(arg("reserve", kilovolts(around.reserveRatio() * at.requiredV() * PER_KILO)))
                        .text(),
                Look.LIMIT,
                line(points, place, point -> around.reserveRatio() * point.requiredV())));
        curves.add(new PlotCurve(PlotText.AVAILABLE.text(), Look.MAIN, line(points, place, SparkPoint::availableV)));
        curves.add(new PlotCurve(
                PlotText.REQUIRED
                        .with(arg("required", kilovolts(at.requiredV() * PER_KILO)))
                        .text(),
                Look.SECOND,
                line(points, place, SparkPoint::requiredV)));
        double placeOfAsked = place.applyAsDouble(at);
        if (placeOfAsked >= x.min() && placeOfAsked <= x.max()) {
            curves.add(PlotCurve.mark(
                    PlotText.ASKED_ABOUT
                            .with(arg("available", kilovolts(at.availableV() * PER_KILO)))
                            .text(),
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
        return Axis.fromZero(PlotText.AXIS_SECONDARY.text(), mostV * PER_KILO);
    }

    private static String description(SparkCurves curves) {
        SparkPoint at = curves.at();
        Boundary ends = curves.marginEndsRpm();
        return PlotText.SPARK_DESCRIPTION
                .with(
                        arg("residualA", at.residualA()),
                        arg("peakA", at.peakA()),
                        arg("dwellS", at.dwellS()),
                        arg("available", kilovolts(at.availableV() * PER_KILO)),
                        arg("required", kilovolts(at.requiredV() * PER_KILO)),
                        arg("ends", ends.kind()),
                        arg("speedRpm", ends.value()))
                .text();
    }

    private static Quantity kilovolts(double kilovolts) {
        return new Quantity(kilovolts, "kV");
    }
}
