package loomwright.ignition.spark;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import loomwright.ignition.primary.PrimaryCurrent;

/**
 * The curves around a spark, for a plot.
 *
 * @param at the spark at the speed and supply asked about
 * @param charging the primary current of one coil from its closing to the break, the last instant
 * @param overSpeed the sweep asked for, else from cranking to top speed, at the supply asked about
 * @param overSupply the sweep asked for, at the speed asked about; else empty
 * @param marginEndsRpm the speed from which the spark fails
 */
public record SparkCurves(
        SparkPoint at,
        List<Instant> charging,
        List<SparkPoint> overSpeed,
        List<SparkPoint> overSupply,
        Boundary marginEndsRpm) {

    private static final int INSTANTS = 100;
    private static final int SPEEDS = 80;

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
        SparkInput.Resolved question = input.resolve();
        SparkSystem system = question.system();
        MarginSearch search = question.search();
        double supplyV = question.supplyV();
        boolean bypassed = question.bypassed();
        List<Double> speedsRpm = search.speedsRpm().isEmpty()
                ? new SweepRange(search.crankingSpeedRpm(), search.topSpeedRpm(), SPEEDS).values()
                : search.speedsRpm();
        return new SparkCurves(
                system.at(question.speedRpm(), supplyV, bypassed),
                charging(system.current(question.speedRpm(), supplyV, bypassed)),
                speedsRpm.stream().map(rpm -> system.at(rpm, supplyV, bypassed)).toList(),
                search.suppliesV().stream()
                        .map(volts -> system.at(question.speedRpm(), volts, bypassed))
                        .toList(),
                search.endsRpm(system, supplyV, bypassed, 1));
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
