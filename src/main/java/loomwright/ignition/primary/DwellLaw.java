package loomwright.ignition.primary;

import loomwright.answer.InputErrors;
import loomwright.ignition.Bisection;

/** How a breaker or module decides how long it charges the coil. */
public sealed interface DwellLaw {

    /** The cycle at one speed, in a circuit as it is then. */
    Dwell at(Firing firing, double speedRpm, PrimaryCircuit circuit);

    /**
     * A breaker, or a module that copies one: the same angle at every speed.
     *
     * @param dwellDegrees degrees of the breaker shaft, above 0; also below {@link Firing#cycleDegrees()}, which
     *     the whole system checks
     */
    record FixedAngle(double dwellDegrees) implements DwellLaw {
        public FixedAngle {
            new InputErrors().range("/dwellDegrees", dwellDegrees, 1, 719).reject();
        }

        @Override
        public Dwell at(Firing firing, double speedRpm, PrimaryCircuit circuit) {
            return Dwell.ofAngle(firing, dwellDegrees, speedRpm);
        }
    }

    /**
     * The same time at every speed, as long as it takes no more than a share of the cycle.
     *
     * @param dwellS 0.0001 to 0.1 s
     * @param maxDutyFraction 0.05 to 0.98 of the cycle
     */
    record ConstantTime(double dwellS, double maxDutyFraction) implements DwellLaw {
        public ConstantTime {
            new InputErrors()
                    .range("/dwellS", dwellS, 1e-4, 0.1)
                    .range("/maxDutyFraction", maxDutyFraction, 0.05, 0.98)
                    .reject();
        }

        @Override
        public Dwell at(Firing firing, double speedRpm, PrimaryCircuit circuit) {
            double cycleS = firing.cycleS(speedRpm);
            return new Dwell(Math.min(dwellS, maxDutyFraction * cycleS), cycleS);
        }
    }

    /**
     * Just long enough to reach the current limit, as long as it takes no more than a share of the cycle.
     *
     * <p>A shorter off-time leaves more current to start from, so the time wanted falls as the dwell grows: the dwell
     * that equals it is the one root of a rising function, found by bisection. Without a limit within reach the dwell
     * is the largest allowed.
     *
     * @param maxDutyFraction 0.05 to 0.98 of the cycle
     */
    record CurrentControlled(double maxDutyFraction) implements DwellLaw {
        public CurrentControlled {
            new InputErrors()
                    .range("/maxDutyFraction", maxDutyFraction, 0.05, 0.98)
                    .reject();
        }

        @Override
        public Dwell at(Firing firing, double speedRpm, PrimaryCircuit circuit) {
            double cycleS = firing.cycleS(speedRpm);
            double longestS = maxDutyFraction * cycleS;
            if (surplusS(circuit, longestS, cycleS) <= 0) {
                return new Dwell(longestS, cycleS);
            }
            double dwellS = Bisection.root(d -> surplusS(circuit, d, cycleS), 0, longestS, 1e-15 * cycleS);
            return new Dwell(dwellS, cycleS);
        }

        /** By how much a dwell is longer than the rise to the limit takes, in the steady cycle that has this dwell. */
        private static double surplusS(PrimaryCircuit circuit, double dwellS, double cycleS) {
            double fromA = Math.max(0, circuit.limitA() - circuit.releaseAPerS() * (cycleS - dwellS));
            return dwellS - circuit.timeToLimitS(fromA);
        }
    }
}
