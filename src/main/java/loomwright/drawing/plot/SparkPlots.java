package loomwright.drawing.plot;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import loomwright.drawing.Svg;
import loomwright.drawing.plot.PlotCurve.Look;
import loomwright.drawing.plot.PlotCurve.Point;
import loomwright.ignition.spark.Boundary;
import loomwright.ignition.spark.SparkCurves;
import loomwright.ignition.spark.SparkPoint;
import loomwright.message.Argument.Quantity;
import loomwright.message.Message;
import org.jspecify.annotations.Nullable;

/**
 * The current of a coil over one cycle, and the kilovolts it has and needs over speed and over supply; of one ignition, or
 * of one before and after a change over the same axes.
 */
public final class SparkPlots {
    private static final double PER_MILLI = 1e3;
    private static final double PER_KILO = 1e-3;

    private SparkPlots() {}

    /**
     * One ignition in the plots.
     *
     * @param side before or after a change; absent where there is none
     */
    private record Ignition(@Nullable PlotText side, SparkCurves curves, Look available, Look required, Look end) {
        SparkPoint at() {
            return curves.at();
        }

        /** Named for no side, because both have the same. */
        Ignition ofBothSides() {
            return new Ignition(null, curves, available, required, end);
        }

        String name(Message curve) {
            return side == null ? curve.text() : side.with(arg("line", curve)).text();
        }
    }

    /** The picture. */
    public static Svg draw(SparkCurves curves) {
        SparkPoint at = curves.at();
        return PlotDrawing.draw(
                "spark",
                PlotText.SPARK_TITLE
                        .with(arg("speedRpm", at.speedRpm()), arg("supplyV", at.supplyV()))
                        .text(),
                description(curves).text(),
                plots(curves));
    }

    /**
     * The picture of a change.
     *
     * @param curves before and after, over the same speeds and supplies
     */
    public static Svg drawChange(List<SparkCurves> curves) {
        Message before = description(curves.get(0));
        Message after = description(curves.get(1));
        return PlotDrawing.draw(
                "change",
                PlotText.CHANGE_TITLE.text(),
                PlotText.BEFORE.with(arg("line", before)).text()
                        + " "
                        + PlotText.AFTER.with(arg("line", after)).text(),
                plotsOfChange(curves));
    }

    static List<Plot> plots(SparkCurves curves) {
        return plotted(List.of(new Ignition(null, curves, Look.MAIN, Look.SECOND, Look.GUIDE)));
    }

    static List<Plot> plotsOfChange(List<SparkCurves> curves) {
        return plotted(List.of(
                new Ignition(PlotText.BEFORE, curves.get(0), Look.THIRD, Look.FOURTH, Look.FIFTH),
                new Ignition(PlotText.AFTER, curves.get(1), Look.MAIN, Look.SECOND, Look.GUIDE)));
    }

    private static List<Plot> plotted(List<Ignition> ignitions) {
        return List.of(current(ignitions), overSpeed(ignitions), overSupply(ignitions));
    }

    private static Plot current(List<Ignition> ignitions) {
        SparkPoint last = last(ignitions).at();
        Axis x = Axis.linear(
                PlotText.AXIS_PRIMARY_TIME.text(),
                0,
                most(ignitions, s -> s.timing().cycleS()) * PER_MILLI);
        Axis y = Axis.fromZero(
                PlotText.AXIS_COIL_CURRENT.text(),
                most(ignitions, s -> s.build().peakA()));
        List<PlotCurve> curves = new ArrayList<>();
        for (Ignition ignition : ignitions) {
            SparkPoint at = ignition.at();
            double dwellMs = at.timing().dwellS() * PER_MILLI;
            curves.add(new PlotCurve(
                    ignition.name(PlotText.PRIMARY_CURVE.with(
                            arg("cycleS", at.timing().cycleS()))),
                    ignition.available(),
                    Stream.concat(
                                    ignition.curves().charging().stream()
                                            .map(i -> new Point(i.timeS() * PER_MILLI, i.currentA())),
                                    Stream.of(
                                            new Point(dwellMs, 0),
                                            new Point(at.timing().cycleS() * PER_MILLI, 0)))
                            .toList()));
        }
        for (Ignition ignition : ignitions) {
            SparkPoint at = ignition.at();
            curves.add(PlotCurve.mark(
                    ignition.name(PlotText.PRIMARY_BREAK.with(
                            arg("peakA", at.build().peakA()),
                            arg("dwellS", at.timing().dwellS()))),
                    at.timing().dwellS() * PER_MILLI,
                    at.build().peakA()));
        }
        return new Plot(
                PlotText.PRIMARY_TITLE
                        .with(arg("speedRpm", last.speedRpm()), arg("supplyV", last.supplyV()))
                        .text(),
                x,
                y,
                curves);
    }

    private static Ignition last(List<Ignition> ignitions) {
        return ignitions.get(ignitions.size() - 1);
    }

    private static double most(List<Ignition> ignitions, ToDoubleFunction<SparkPoint> figure) {
        return ignitions.stream().map(Ignition::at).mapToDouble(figure).max().orElseThrow();
    }

    private static Plot overSpeed(List<Ignition> ignitions) {
        return overWhat(
                PlotText.SPEED_TITLE
                        .with(arg("supplyV", last(ignitions).at().supplyV()))
                        .text(),
                PlotText.AXIS_SPEED,
                SparkCurves::overSpeed,
                SparkPoint::speedRpm,
                SparkCurves::marginEndsRpm,
                rpm -> PlotText.SPEED_NO_SPARK.with(arg("speedRpm", rpm)),
                ignitions);
    }

    private static Plot overSupply(List<Ignition> ignitions) {
        return overWhat(
                PlotText.SUPPLY_TITLE
                        .with(arg("speedRpm", last(ignitions).at().speedRpm()))
                        .text(),
                PlotText.AXIS_SUPPLY,
                SparkCurves::overSupply,
                SparkPoint::supplyV,
                SparkCurves::startsAboveV,
                volts -> PlotText.SUPPLY_STARTS.with(arg("supplyV", volts)),
                ignitions);
    }

    /**
     * @param sweep the points of a curve, over the same places for all ignitions
     * @param place of a point on the axis
     * @param end where the spark begins or ends
     */
    private static Plot overWhat(
            String title,
            PlotText axis,
            Function<SparkCurves, List<SparkPoint>> sweep,
            ToDoubleFunction<SparkPoint> place,
            Function<SparkCurves, Boundary> end,
            DoubleFunction<Message> endText,
            List<Ignition> ignitions) {
        List<SparkPoint> places = sweep.apply(last(ignitions).curves());
        Axis x = Axis.linear(
                axis.text(), place.applyAsDouble(places.get(0)), place.applyAsDouble(places.get(places.size() - 1)));
        Axis y = Axis.fromZero(
                PlotText.AXIS_SECONDARY.text(),
                ignitions.stream()
                        .flatMap(ignition -> sweep.apply(ignition.curves()).stream()
                                .map(p -> Math.max(
                                        p.margin().availableV(),
                                        ignition.curves().reserveRatio()
                                                * p.margin().requiredV())))
                        .mapToDouble(volts -> volts * PER_KILO)
                        .max()
                        .orElseThrow());
        boolean sameDemand = ignitions.stream()
                        .map(ignition -> ignition.at().margin().requiredV())
                        .distinct()
                        .count()
                == 1;
        List<PlotCurve> areas = new ArrayList<>();
        List<PlotCurve> curves = new ArrayList<>();
        List<PlotCurve> marks = new ArrayList<>();
        for (Ignition ignition : ignitions) {
            SparkCurves around = ignition.curves();
            SparkPoint at = ignition.at();
            Boundary boundary = end.apply(around);
            if (boundary.kind() == Boundary.Kind.AT && x.contains(boundary.value())) {
                curves.add(PlotCurve.upright(
                        ignition.name(endText.apply(boundary.value())), ignition.end(), y, boundary.value()));
            }
            curves.add(new PlotCurve(
                    ignition.name(PlotText.AVAILABLE.with()),
                    ignition.available(),
                    line(sweep.apply(around), place, s -> s.margin().availableV())));
            boolean last = ignition.equals(last(ignitions));
            if (last || !sameDemand) {
                Ignition named = sameDemand ? ignition.ofBothSides() : ignition;
                curves.add(new PlotCurve(
                        named.name(PlotText.REQUIRED.with(
                                arg("required", kilovolts(at.margin().requiredV() * PER_KILO)))),
                        ignition.required(),
                        line(sweep.apply(around), place, s -> s.margin().requiredV())));
                if (last) {
                    curves.add(new PlotCurve(
                            named.name(PlotText.WITH_RESERVE.with(arg(
                                    "reserve",
                                    kilovolts(
                                            around.reserveRatio() * at.margin().requiredV() * PER_KILO)))),
                            Look.LIMIT,
                            line(
                                    sweep.apply(around),
                                    place,
                                    p -> around.reserveRatio() * p.margin().requiredV())));
                    areas.addAll(required(named, x));
                }
            }
            if (x.contains(place.applyAsDouble(at))) {
                marks.add(PlotCurve.mark(
                        ignition.name(PlotText.ASKED_ABOUT.with(
                                arg("available", kilovolts(at.margin().availableV() * PER_KILO)))),
                        place.applyAsDouble(at),
                        at.margin().availableV() * PER_KILO));
            }
        }
        areas.addAll(curves);
        areas.addAll(marks);
        return new Plot(title, x, y, areas);
    }

    /** What the published formulas ask for, as a band. */
    private static List<PlotCurve> required(Ignition ignition, Axis x) {
        double lowKv = ignition.curves().requiredLowestV() * PER_KILO;
        double highKv = ignition.curves().requiredHighestV() * PER_KILO;
        return highKv > lowKv
                ? List.of(PlotCurve.between(
                        ignition.name(PlotText.REQUIRED_BAND.with(
                                arg("lowest", kilovolts(lowKv)), arg("highest", kilovolts(highKv)))),
                        Look.SECOND_BAND,
                        x,
                        lowKv,
                        highKv))
                : List.of();
    }

    private static List<Point> line(
            List<SparkPoint> points, ToDoubleFunction<SparkPoint> place, ToDoubleFunction<SparkPoint> volts) {
        return points.stream()
                .map(p -> new Point(place.applyAsDouble(p), volts.applyAsDouble(p) * PER_KILO))
                .toList();
    }

    private static Message description(SparkCurves curves) {
        SparkPoint at = curves.at();
        Boundary ends = curves.marginEndsRpm();
        return PlotText.SPARK_DESCRIPTION.with(
                arg("residualA", at.build().residualA()),
                arg("peakA", at.build().peakA()),
                arg("dwellS", at.timing().dwellS()),
                arg("available", kilovolts(at.margin().availableV() * PER_KILO)),
                arg("required", kilovolts(at.margin().requiredV() * PER_KILO)),
                arg("ends", ends.kind()),
                arg("speedRpm", ends.value()));
    }

    private static Quantity kilovolts(double kilovolts) {
        return new Quantity(kilovolts, "kV");
    }
}
