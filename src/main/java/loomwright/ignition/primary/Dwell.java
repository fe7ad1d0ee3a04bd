package loomwright.ignition.primary;

/**
 * One cycle of a coil: charged for the dwell, then off until the next dwell begins.
 *
 * @param dwellS seconds with the primary closed, from 0 to below {@code cycleS}
 * @param cycleS seconds from one spark of the coil to its next, above 0
 */
public record Dwell(double dwellS, double cycleS) {
    public Dwell {
        if (!(dwellS >= 0 && dwellS < cycleS)) {
            throw new IllegalArgumentException("dwell " + dwellS + " s in a cycle of " + cycleS + " s");
        }
    }

    /**
     * Dwell of a breaker: t = angle / (6 n of the breaker shaft), which for a distributor of a four-stroke engine is
     * angle / (3 n).
     *
     * @param firing the engine
     * @param dwellDegrees angle of the breaker shaft with the contacts closed, below {@link Firing#cycleDegrees()}
     * @param speedRpm speed of the crankshaft, above 0
     * @return the cycle
     */
    public static Dwell ofAngle(Firing firing, double dwellDegrees, double speedRpm) {
        double degreesPerS = 6 * speedRpm * firing.breakerTurnsPerCrankTurn();
        return new Dwell(dwellDegrees / degreesPerS, firing.cycleS(speedRpm));
    }

    /** Seconds with the primary open. */
    public double offS() {
        return cycleS - dwellS;
    }

    /** Share of the cycle with the primary closed. */
    public double dutyFraction() {
        return dwellS / cycleS;
    }
}
