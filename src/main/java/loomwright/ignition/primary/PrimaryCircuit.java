package loomwright.ignition.primary;

/**
 * The primary of a coil with everything in series with it, as the current sees it.
 *
 * @param drivingV supply less the drop of breaker or module, 0 or above
 * @param resistanceOhm feed, ballast and primary winding in series, above 0
 * @param inductanceH primary inductance, above 0
 * @param limitA what a module holds the current to; positive infinity where nothing limits it
 * @param releaseAPerS how fast the stored current, referred to the primary, falls while the spark burns, above 0
 */
public record PrimaryCircuit(
        double drivingV, double resistanceOhm, double inductanceH, double limitA, double releaseAPerS) {

    /** Where the current would end if the primary stayed closed and nothing limited it: V / R. */
    public double finalA() {
        return drivingV / resistanceOhm;
    }

    /** L / R. */
    public double timeConstantS() {
        return inductanceH / resistanceOhm;
    }

    /** i(t) = V/R + (i0 - V/R) exp(-t R/L), before any limit. */
    double unlimitedA(double fromA, double timeS) {
        return fromA - (finalA() - fromA) * Math.expm1(-timeS / timeConstantS());
    }

    /** Time from a start current to the limit: (L/R) ln((V/R - i0) / (V/R - limit)); positive infinity if never. */
    double timeToLimitS(double fromA) {
        if (fromA >= limitA) {
            return 0;
        }
        if (finalA() <= limitA) {
            return Double.POSITIVE_INFINITY;
        }
        return timeConstantS() * Math.log((finalA() - fromA) / (finalA() - limitA));
    }
}
