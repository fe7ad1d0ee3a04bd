package loomwright.ignition.primary;

import java.util.List;
import loomwright.judgement.ignition.PrimaryLoop;
import loomwright.judgement.ignition.RunningHeat;
import org.jspecify.annotations.Nullable;

/**
 * Mean heat in a coil of an engine: the current rises in every dwell anew, so it is less than the share of the dwell times the
 * heat with the primary closed.
 *
 * @param cycle dwell and time from spark to spark at a speed
 * @param speedsRpm the hottest of these counts
 * @param primaryOhm of the coil whose inductance is known, at 20 degrees
 * @param inductanceH of that coil; absent: that of a usual coil of its ohms, as it is for every other coil
 * @param burningV voltage of a burning spark as the primary sees it, above 0
 */
public record EngineHeat(
        Cycle cycle,
        List<Double> speedsRpm,
        double primaryOhm,
        @Nullable Double inductanceH,
        double burningV) implements RunningHeat {
    /** A warm engine idles so; at no other speed do contacts stay closed for longer. Common practice, no source. */
    public static final double IDLE_RPM = 800;

    private static final Firing USUAL_FIRING = new Firing(4, 4, Firing.Arrangement.DISTRIBUTOR);
    private static final double USUAL_BURNING_V = 15;
    /** Contacts that never open give no spark. */
    private static final double LONGEST_DWELL = 0.999;

    /** The cycle at a speed, which a module may make depend on the circuit. */
    @FunctionalInterface
    public interface Cycle {
        Dwell at(double speedRpm, PrimaryCircuit circuit);
    }

    public EngineHeat {
        speedsRpm = List.copyOf(speedsRpm);
    }

    /**
     * Of four cylinders that idle.
     *
     * @param dwellFraction share of the time that the primary is closed, to 1
     * @param primaryOhm of the coil whose inductance is known
     * @param inductanceH of that coil; absent if unknown
     */
    public static EngineHeat usual(double dwellFraction, double primaryOhm, @Nullable Double inductanceH) {
        double share = Math.min(dwellFraction, LONGEST_DWELL);
        return new EngineHeat(
                (rpm, circuit) -> new Dwell(share * USUAL_FIRING.cycleS(rpm), USUAL_FIRING.cycleS(rpm)),
                List.of(IDLE_RPM),
                primaryOhm,
                inductanceH,
                USUAL_BURNING_V);
    }

    @Override
    public double meanW(PrimaryLoop loop) {
        double coilH = inductanceH != null && loop.coilOhm() == primaryOhm
                ? inductanceH
                : CoilPreset.usualInductanceH(loop.coilOhm(), loop.nominalV());
        PrimaryCircuit circuit = new PrimaryCircuit(
                Math.max(0, loop.runningV() - loop.contact().dropV()),
                loop.totalOhm(),
                coilH,
                loop.contact().limitA() == null
                        ? Double.POSITIVE_INFINITY
                        : loop.contact().limitA(),
                burningV / coilH);
        return speedsRpm.stream()
                .map(rpm -> PrimaryCurrent.steady(circuit, cycle.at(rpm, circuit)))
                .mapToDouble(current -> current.squareA2S() / current.dwell().cycleS() * loop.coilOhm())
                .max()
                .orElse(0);
    }
}
