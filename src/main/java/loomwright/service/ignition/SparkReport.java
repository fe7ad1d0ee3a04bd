package loomwright.service.ignition;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
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
        @JsonUnwrapped ShownEnds ends,
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
            @JsonUnwrapped TimingMs timing,
            @JsonUnwrapped Charge build,
            @JsonUnwrapped EnergyMj stored,
            @JsonUnwrapped MarginKv margin,
            @JsonUnwrapped SparkPoint.Means means,
            @JsonUnwrapped SparkPoint.MeanHeat heat) {
        static Point of(SparkPoint point) {
            return new Point(
                    point.speedRpm(),
                    point.supplyV(),
                    point.bypassed(),
                    new TimingMs(
                            point.timing().dwellS() * 1e3,
                            point.timing().cycleS() * 1e3,
                            point.timing().dutyFraction()),
                    new Charge(
                            point.build().residualA(),
                            point.build().peakA(),
                            point.build().heldS() * 1e3),
                    new EnergyMj(
                            point.stored().energyJ() * 1e3,
                            point.stored().releasedJ() * 1e3,
                            point.stored().sparkS() * 1e3),
                    new MarginKv(
                            point.margin().availableV() / 1e3,
                            point.margin().requiredV() / 1e3,
                            point.margin().marginV() / 1e3,
                            point.margin().marginRatio()),
                    point.means(),
                    point.heat());
        }
    }

    /** The times of one cycle. */
    public record TimingMs(double dwellMs, double cycleMs, double dutyFraction) {}

    /** How the current builds up. */
    public record Charge(double residualA, double peakA, double currentLimitedMs) {}

    /** The energy, and the spark that it feeds. */
    public record EnergyMj(double energyMj, double releasedMj, double sparkMs) {}

    /** The secondary volts. */
    public record MarginKv(double availableKv, double requiredKv, double marginKv, double marginRatio) {}

    /** What the gap asks for, by which formula if one was named, and how sure that is. */
    public record Required(
            @JsonUnwrapped RequiredKv volts,
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
                    new RequiredKv(
                            demand.requiredV() / 1e3,
                            plug.voltageV() / 1e3,
                            demand.secondGapV() / 1e3,
                            plug.lowestV() / 1e3,
                            plug.highestV() / 1e3),
                    plug.gap().gapMm(),
                    plug.gap().pressurePa() / 1e3,
                    plug.gap().temperatureC(),
                    plug.formula(),
                    plug.withinRange(),
                    plug.basis().source(),
                    plug.all().stream().map(ByFormula::of).toList());
        }
    }

    /** The secondary volts that the gaps ask for. */
    public record RequiredKv(double requiredKv, double plugKv, double secondGapKv, double lowestKv, double highestKv) {}

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
                new ShownEnds(
                        speed(result.ends().marginEndsRpm()),
                        speed(result.ends().reserveEndsRpm()),
                        new SupplyEnd(
                                result.ends().startsAboveV().kind(),
                                result.ends().startsAboveV().value()),
                        new GapEnd(
                                result.ends().largestGapMm().kind(),
                                result.ends().largestGapMm().value())),
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
        return at.margin().marginKv();
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
                point.timing().dwellMs(),
                point.timing().dutyFraction(),
                point.build().peakA(),
                point.stored().energyMj(),
                point.margin().availableKv(),
                point.margin().requiredKv(),
                point.margin().marginKv(),
                point.margin().marginRatio(),
                point.means().averageA(),
                point.heat().coilHeatW(),
                point.heat().ballastHeatW());
    }

    /** Where the spark ends. */
    public record ShownEnds(SpeedEnd marginEnds, SpeedEnd reserveEnds, SupplyEnd startsAbove, GapEnd largestGap) {}
}
