package loomwright.ignition.spark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import loomwright.ignition.primary.PrimaryCurrent;

/**
 * The curves around a spark, for a plot.
 *
 * @param at the spark at the speed and supply asked about
 * @param charging the primary current of one coil from its closing to the break, the last instant
 * @param overSpeed the sweep asked for, else from cranking to somewhat beyond the speed asked about and that from which the
 *     spark fails, at the supply asked about
 * @param overSupply the sweep asked for, else around the supply asked about, at the speed asked about
 * @param marginEndsRpm the speed from which the spark fails
 * @param startsAboveV the supply above which there is a spark while cranking
 * @param requiredLowestV least that the published formulas ask for at the point asked about
 * @param requiredHighestV most
 * @param reserveRatio available over required kilovolts that a sound system keeps
 */
public record SparkCurves(
        SparkPoint at,
        List<Instant> charging,
        List<SparkPoint> overSpeed,
        List<SparkPoint> overSupply,
        Boundary marginEndsRpm,
        Boundary startsAboveV,
        double requiredLowestV,
        double requiredHighestV,
        double reserveRatio) {

    private static final int INSTANTS = 100;
    private static final int SPEEDS = 80;
    private static final int SUPPLIES = 40;

    /** So far beyond the speed in question the curves go on. */
    private static final double BEYOND = 1.5;

    private static final double BEYOND_END = 1.2;

    /** Of the supply asked about: a flat battery, and charging. */
    private static final double LEAST_SUPPLY = 0.4;

    private static final double MOST_SUPPLY = 1.25;

    public SparkCurves {
        charging = List.copyOf(charging);
        overSpeed = List.copyOf(overSpeed);
        overSupply = List.copyOf(overSupply);
    }

    /** The primary current at a time after the primary closed. */
    public record Instant(double timeS, double currentA) {}

    /**
     * The curves of one ignition.
     *
     * @param input as for {@link Spark#calculate}
     * @throws loomwright.answer.RejectedInput with every fault of the input
     */
    public static SparkCurves of(SparkInput input) {
        return of(input.resolve());
    }

    /**
     * The curves of two ignitions over the same speeds and the same supplies, those that either of them would have.
     *
     * @return those of the first and of the second
     * @throws loomwright.answer.RejectedInput with every fault of the input
     */
    public static List<SparkCurves> ofBoth(SparkInput one, SparkInput other) {
        List<SparkCurves> apart = List.of(of(one), of(other));
        SweepRange speeds = range(
                apart.stream()
                        .map(curves -> values(curves.overSpeed, SparkPoint::speedRpm))
                        .toList(),
                SPEEDS);
        SweepRange supplies = range(
                apart.stream()
                        .map(curves -> values(curves.overSupply, SparkPoint::supplyV))
                        .toList(),
                SUPPLIES);
        return Stream.of(one, other)
                .map(input -> of(input.withSweeps(speeds, supplies)))
                .toList();
    }

    private static double[] values(List<SparkPoint> points, ToDoubleFunction<SparkPoint> value) {
        return points.stream().mapToDouble(value).toArray();
    }

    private static SweepRange range(List<double[]> sweeps, int steps) {
        DoubleSummaryStatistics all =
                sweeps.stream().flatMapToDouble(Arrays::stream).summaryStatistics();
        return new SweepRange(all.getMin(), all.getMax(), steps);
    }

    private static SparkCurves of(SparkInput.Resolved question) {
        SparkSystem system = question.system();
        MarginSearch search = question.search();
        double supplyV = question.supplyV();
        boolean bypassed = question.bypassed();
        Boundary ends = search.endsRpm(system, supplyV, bypassed, 1);
        List<Double> speedsRpm = search.speedsRpm().isEmpty()
                ? new SweepRange(search.crankingSpeedRpm(), topRpm(question, ends), SPEEDS).values()
                : search.speedsRpm();
        List<Double> suppliesV = search.suppliesV().isEmpty()
                ? new SweepRange(LEAST_SUPPLY * supplyV, MOST_SUPPLY * supplyV, SUPPLIES).values()
                : search.suppliesV();
        double secondV = system.demand().secondGapV();
        return new SparkCurves(
                system.at(question.speedRpm(), supplyV, bypassed),
                charging(system.current(question.speedRpm(), supplyV, bypassed)),
                speedsRpm.stream().map(rpm -> system.at(rpm, supplyV, bypassed)).toList(),
                suppliesV.stream()
                        .map(volts -> system.at(question.speedRpm(), volts, bypassed))
                        .toList(),
                ends,
                search.startsAboveV(system),
                system.demand().plug().lowestV() + secondV,
                system.demand().plug().highestV() + secondV,
                search.reserveRatio());
    }

    /** No farther than the question needs. */
    private static double topRpm(SparkInput.Resolved question, Boundary ends) {
        double asked = BEYOND * Math.max(question.speedRpm(), question.search().crankingSpeedRpm());
        double end = ends.kind() == Boundary.Kind.AT ? BEYOND_END * ends.value() : 0;
        return Math.min(question.search().topSpeedRpm(), Math.max(asked, end));
    }

    /** Evenly over the rise, so that the bend where a module begins to hold is a point of its own; then the break. */
    private static List<Instant> charging(PrimaryCurrent current) {
        double dwellS = current.dwell().dwellS();
        double riseS = dwellS - current.heldS();
        List<Instant> instants = new ArrayList<>(IntStream.rangeClosed(0, INSTANTS)
                .mapToObj(i -> riseS * i / INSTANTS)
                .map(timeS -> new Instant(timeS, current.atA(timeS)))
                .toList());
        instants.add(new Instant(dwellS, current.peakA()));
        return instants;
    }
}
