package loomwright.service.ignition;

import java.util.List;
import java.util.stream.Stream;
import loomwright.answer.Finding;
import loomwright.ignition.FeedNeed;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.spark.Boundary;
import loomwright.ignition.spark.Demand;
import loomwright.ignition.spark.SparkPoint;
import loomwright.ignition.spark.SparkResult;
import loomwright.service.form.Table;
import org.jspecify.annotations.Nullable;

/** A spark in the names and units of the contract; what each figure is says {@link SparkResult}. */
public record SparkReport(
        Point at,
        Required required,
        SparkResult.Closed closed,
        SpeedEnd marginEnds,
        SpeedEnd reserveEnds,
        SupplyEnd startsAbove,
        GapEnd largestGap,
        List<Point> speedSweep,
        List<Point> supplySweep,
        FeedNeed feedNeed,
        @Nullable HotCoil hotCoil,
        List<Finding> findings) {
    public static final List<String> COLUMNS = List.of(
            "speedRpm",
            "supplyV",
            "dwellMs",
            "dutyFraction",
            "peakA",
            "energyMj",
            "availableKv",
            "requiredKv",
            "marginKv",
            "marginRatio",
            "averageA",
            "coilHeatW",
            "ballastHeatW");

    /** The spark at one speed and supply. */
    public record Point(
            double speedRpm,
            double supplyV,
            boolean bypassed,
            double dwellMs,
            double cycleMs,
            double dutyFraction,
            double residualA,
            double peakA,
            double currentLimitedMs,
            double energyMj,
            double releasedMj,
            double sparkMs,
            double availableKv,
            double requiredKv,
            double marginKv,
            double marginRatio,
            double averageA,
            double rmsA,
            double allCoilsA,
            double coilHeatW,
            double ballastHeatW,
            double feedHeatW,
            double switchHeatW,
            double supplyPowerW) {
        static Point of(SparkPoint point) {
            return new Point(
                    point.speedRpm(),
                    point.supplyV(),
                    point.bypassed(),
                    point.dwellS() * 1e3,
                    point.cycleS() * 1e3,
                    point.dutyFraction(),
                    point.residualA(),
                    point.peakA(),
                    point.heldS() * 1e3,
                    point.energyJ() * 1e3,
                    point.releasedJ() * 1e3,
                    point.sparkS() * 1e3,
                    point.availableV() / 1e3,
                    point.requiredV() / 1e3,
                    point.marginV() / 1e3,
                    point.marginRatio(),
                    point.averageA(),
                    point.rmsA(),
                    point.allCoilsA(),
                    point.coilHeatW(),
                    point.ballastHeatW(),
                    point.feedHeatW(),
                    point.switchHeatW(),
                    point.supplyPowerW());
        }
    }

    /** What the gap asks for, by which formula if one was named, and how sure that is. */
    public record Required(
            double requiredKv,
            double plugKv,
            double secondGapKv,
            double lowestKv,
            double highestKv,
            double gapMm,
            double pressureKpa,
            double temperatureC,
            @Nullable BreakdownFormula formula,
            boolean withinRange,
            String source,
            List<ByFormula> byFormula) {
        static Required of(Demand demand) {
            BreakdownVoltage plug = demand.plug();
            return new Required(
                    demand.requiredV() / 1e3,
                    plug.voltageV() / 1e3,
                    demand.secondGapV() / 1e3,
                    plug.lowestV() / 1e3,
                    plug.highestV() / 1e3,
                    plug.gap().gapMm(),
                    plug.gap().pressurePa() / 1e3,
                    plug.gap().temperatureC(),
                    plug.formula(),
                    plug.withinRange(),
                    plug.basis().source(),
                    plug.all().stream().map(ByFormula::of).toList());
        }
    }

    /** One formula, what it asks for, and whether it is meant for this gap. */
    public record ByFormula(
            BreakdownFormula formula,
            double kv,
            boolean withinRange,
            String formulaText,
            String validRange,
            String source) {
        static ByFormula of(BreakdownVoltage.ByFormula one) {
            return new ByFormula(
                    one.formula(),
                    one.voltageV() / 1e3,
                    one.withinRange(),
                    one.formula().formula(),
                    one.formula().range(),
                    one.formula().basis().source());
        }
    }

    /** A speed from which something ends; with {@code not-reached} the speed to which it was looked for. */
    public record SpeedEnd(Boundary.Kind kind, double speedRpm) {}

    /** The supply below which it does not start; with {@code never-there} the highest that was tried. */
    public record SupplyEnd(Boundary.Kind kind, double supplyV) {}

    /** The widest gap that leaves the reserve; with {@code not-reached} the widest that was tried. */
    public record GapEnd(Boundary.Kind kind, double gapMm) {}

    /**
     * The coil cold and warmed up.
     *
     * @param settles whether it comes to rest below 200 C; if not, {@code hot} is its state there
     */
    public record HotCoil(
            boolean settles,
            SelfHeating.State cold,
            SelfHeating.State hot,
            @Nullable Point atHot) {}

    static SparkReport of(SparkResult result) {
        return new SparkReport(
                Point.of(result.at()),
                Required.of(result.demand()),
                result.closed(),
                speed(result.marginEndsRpm()),
                speed(result.reserveEndsRpm()),
                new SupplyEnd(
                        result.startsAboveV().kind(), result.startsAboveV().value()),
                new GapEnd(result.largestGapMm().kind(), result.largestGapMm().value()),
                result.speedSweep().stream().map(Point::of).toList(),
                result.supplySweep().stream().map(Point::of).toList(),
                result.feedNeed(),
                hotCoil(result.hotCoil()),
                result.findings());
    }

    private static SpeedEnd speed(Boundary boundary) {
        return new SpeedEnd(boundary.kind(), boundary.value());
    }

    private static @Nullable HotCoil hotCoil(SparkResult.@Nullable HotCoil hot) {
        if (hot == null) {
            return null;
        }
        SparkPoint atHot = hot.atHot();
        return new HotCoil(
                hot.end() instanceof SelfHeating.Settled,
                hot.end().cold(),
                hot.end().last(),
                atHot == null ? null : Point.of(atHot));
    }

    /** The figure in one cell: kilovolts left at the speed asked about, negative if the spark fails. */
    public double marginKv() {
        return at.marginKv();
    }

    /** The sweeps, or the one point where none was asked for. */
    public Table table() {
        List<Point> rows = speedSweep.isEmpty() && supplySweep.isEmpty()
                ? List.of(at)
                : Stream.concat(speedSweep.stream(), supplySweep.stream()).toList();
        return new Table(COLUMNS, rows.stream().map(SparkReport::row).toList());
    }

    private static List<@Nullable Object> row(Point point) {
        return List.of(
                point.speedRpm(),
                point.supplyV(),
                point.dwellMs(),
                point.dutyFraction(),
                point.peakA(),
                point.energyMj(),
                point.availableKv(),
                point.requiredKv(),
                point.marginKv(),
                point.marginRatio(),
                point.averageA(),
                point.coilHeatW(),
                point.ballastHeatW());
    }
}
