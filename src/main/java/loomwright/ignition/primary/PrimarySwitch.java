package loomwright.ignition.primary;

import static loomwright.message.Arg.plain;

import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/** What closes and breaks the primary. */
public sealed interface PrimarySwitch {
    /** Drop while closed, in volts, 0 to 5. */
    double dropV();

    /** What the current is held to; positive infinity where nothing limits it. */
    double limitA();

    /** Whether it works at a supply; contacts always do. */
    default boolean worksAt(double supplyV) {
        return true;
    }

    /** How long the coil is charged. */
    DwellLaw dwellLaw();

    /**
     * Contact points.
     *
     * @param dropV 0 to 5
     * @param dwellLaw the closed angle
     */
    record ContactBreaker(double dropV, DwellLaw.FixedAngle dwellLaw) implements PrimarySwitch {
        public ContactBreaker {
            new InputErrors().range("/dropV", dropV, 0, 5).reject();
        }

        @Override
        public double limitA() {
            return Double.POSITIVE_INFINITY;
        }
    }

    /**
     * Electronic switch.
     *
     * @param dropV saturation voltage, 0 to 5
     * @param currentLimitA 0.5 to 30; absent if it has none
     * @param dwellLaw how it decides its dwell
     * @param deadBelowV supply below which it does not work, 0 to 60
     */
    record Module(double dropV, @Nullable Double currentLimitA, DwellLaw dwellLaw, double deadBelowV)
            implements PrimarySwitch {
        public Module {
            new InputErrors()
                    .range("/dropV", dropV, 0, 5)
                    .range("/currentLimitA", currentLimitA, 0.5, 30)
                    .range("/moduleLeastV", deadBelowV, 0, 60)
                    .check(
                            currentLimitA != null || !(dwellLaw instanceof DwellLaw.CurrentControlled),
                            InputError.Code.MISSING,
                            "/currentLimitA",
                            null,
                            AcceptedIgnition.MODULE_LIMIT,
                            plain("min", 0.5),
                            plain("max", 30))
                    .reject();
        }

        @Override
        public boolean worksAt(double supplyV) {
            return supplyV >= deadBelowV;
        }

        @Override
        public double limitA() {
            return currentLimitA == null ? Double.POSITIVE_INFINITY : currentLimitA;
        }
    }
}
