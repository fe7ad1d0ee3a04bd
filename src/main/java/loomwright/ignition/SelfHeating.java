package loomwright.ignition;

import java.util.function.DoubleUnaryOperator;
import loomwright.answer.InputErrors;

/**
 * A winding or resistor that heats itself: its temperature rises with its power, its power depends on its resistance,
 * its resistance on its temperature.
 *
 * <p>R(T) = R20 (1 + alpha (T - 20)); T = T_ambient + R_th P(R(T)).
 *
 * @param resistance20Ohm resistance at 20 C, 0.001 to 10 000
 * @param coefficientPerK at 20 C, -0.001 to 0.01; copper {@link #COPPER_PER_K}
 * @param thermalResistanceKPerW from the part to the air around it, 0 to 1000
 * @param ambientC -60 to 150
 */
public record SelfHeating(
        double resistance20Ohm, double coefficientPerK, double thermalResistanceKPerW, double ambientC) {

    /** Copper, at 20 C: IEC 60028 (from memory). */
    public static final double COPPER_PER_K = 0.00393;

    /** A rise is followed up to the ceiling in this many steps before the root is refined. */
    private static final int STEPS = 400;

    private static final double TOLERANCE_K = 1e-9;

    public SelfHeating {
        new InputErrors()
                .range("/resistance20Ohm", resistance20Ohm, 0.001, 10_000)
                .range("/coefficientPerK", coefficientPerK, -0.001, 0.01)
                .range("/thermalResistanceKPerW", thermalResistanceKPerW, 0, 1000)
                .range("/ambientC", ambientC, -60, 150)
                .reject();
    }

    /** One state of the part. */
    public record State(double temperatureC, double resistanceOhm, double powerW) {}

    /** Where the heating ends. */
    public sealed interface End {
        /** The part at the temperature around it, as it is switched on. */
        State cold();

        /** Where it comes to rest, or its state at the ceiling. */
        State last();
    }

    /** It settles. */
    public record Settled(State cold, State hot) implements End {
        @Override
        public State last() {
            return hot;
        }
    }

    /** It still gets hotter at the ceiling: it would burn before it settles. */
    public record Runaway(State cold, State atCeiling) implements End {
        @Override
        public State last() {
            return atCeiling;
        }
    }

    /** Resistance at a temperature, by the coefficient at 20 C; the law is kept to its line. */
    public static double resistanceOhm(double resistance20Ohm, double coefficientPerK, double temperatureC) {
        return resistance20Ohm * (1 + coefficientPerK * (temperatureC - 20));
    }

    /**
     * The first fixed point that the part comes to from cold.
     *
     * @param powerW heat in the part for a resistance, 0 or above
     * @param ceilingC highest temperature the part is believed to survive, above the ambient temperature
     * @return settled, or runaway if it is still getting hotter there
     */
    public End solve(DoubleUnaryOperator powerW, double ceilingC) {
        if (!(ceilingC > ambientC)) {
            throw new IllegalArgumentException("ceiling " + ceilingC + " C, ambient " + ambientC + " C");
        }
        DoubleUnaryOperator gain =
                t -> ambientC + thermalResistanceKPerW * at(t, powerW).powerW() - t;
        State cold = at(ambientC, powerW);
        double below = ambientC;
        for (int step = 1; step <= STEPS; step++) {
            double above = ambientC + (ceilingC - ambientC) * step / STEPS;
            if (gain.applyAsDouble(above) <= 0) {
                return new Settled(cold, at(Bisection.root(gain, above, below, TOLERANCE_K), powerW));
            }
            below = above;
        }
        return new Runaway(cold, at(ceilingC, powerW));
    }

    private State at(double temperatureC, DoubleUnaryOperator powerW) {
        double ohm = resistanceOhm(resistance20Ohm, coefficientPerK, temperatureC);
        return new State(temperatureC, ohm, powerW.applyAsDouble(ohm));
    }
}
