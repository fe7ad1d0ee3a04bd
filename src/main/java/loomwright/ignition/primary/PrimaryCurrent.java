package loomwright.ignition.primary;

/**
 * The primary current over one cycle: it rises from a start current, is held at the module's limit if it gets there,
 * and stops at the break.
 *
 * <p>i(t) = V/R + (i0 - V/R) exp(-t R/L) up to the limit, then constant, then zero while the primary is open. Averages
 * are exact integrals of these pieces. Source: OpenStax University Physics vol. 2, section 14.4 (RL circuits).
 *
 * @param circuit what the current flows through
 * @param residualA current at the closing of the primary, 0 or above
 * @param dwell the cycle
 */
public record PrimaryCurrent(PrimaryCircuit circuit, double residualA, Dwell dwell) {

    private static final double ROUNDING = 1e-12;

    /**
     * The cycle that repeats itself: it starts from what the one before left over.
     *
     * <p>At the break the stored current passes to the secondary. While the spark burns, its voltage U is nearly
     * constant, so the current falls at a constant rate, which seen from the primary (turns ratio N) is U / (N L). An
     * off-time too short for the whole fall leaves i0 = i_break - rate x off-time. With a = exp(-dwell R/L) the fixed
     * point is closed: i0 = max(0, min(V/R - rate off / (1 - a), limit - rate off)), as both maps rise by less than
     * one per ampere. The model (a constant burning voltage, no other loss) is common practice, no source.
     */
    public static PrimaryCurrent steady(PrimaryCircuit circuit, Dwell dwell) {
        double fallA = circuit.releaseAPerS() * dwell.offS();
        double risenShare = -Math.expm1(-dwell.dwellS() / circuit.timeConstantS());
        double leftA = Math.min(circuit.finalA() - fallA / risenShare, circuit.limitA() - fallA);
        return new PrimaryCurrent(circuit, Math.max(0, leftA), dwell);
    }

    /**
     * Seconds until the limit, or the whole dwell if it is not reached. A module that stops at the limit would else seem
     * to hold it for the rounding error of its dwell.
     */
    double riseS() {
        double toLimitS = circuit.timeToLimitS(residualA);
        return toLimitS < dwell.dwellS() * (1 - ROUNDING) ? toLimitS : dwell.dwellS();
    }

    /** Seconds for which the module holds the limit. */
    public double heldS() {
        return dwell.dwellS() - riseS();
    }

    /** Current at a time after the primary closed, up to the dwell. */
    public double atA(double timeS) {
        return timeS < riseS() ? circuit.unlimitedA(residualA, timeS) : peakA();
    }

    /** Current at the break. */
    public double peakA() {
        return heldS() > 0
                ? circuit.limitA()
                : Math.min(circuit.limitA(), circuit.unlimitedA(residualA, dwell.dwellS()));
    }

    /** Charge drawn in one cycle, the integral of i, in coulombs. */
    double chargeC() {
        double finalA = circuit.finalA();
        double rise = finalA * riseS() + (residualA - finalA) * circuit.timeConstantS() * risen(1);
        return rise + heldS() * peakA();
    }

    /**
     * The integral of the squared current over one cycle, in A2 s: times a resistance, the heat in it. Its terms cancel
     * in a dwell far shorter than the time constant: relative error about 1e-15 (L/R / dwell)^2.
     */
    public double squareA2S() {
        double finalA = circuit.finalA();
        double belowA = residualA - finalA;
        double tauS = circuit.timeConstantS();
        double rise = finalA * finalA * riseS()
                + 2 * finalA * belowA * tauS * risen(1)
                + belowA * belowA * tauS / 2 * risen(2);
        return rise + heldS() * peakA() * peakA();
    }

    private double risen(int times) {
        return -Math.expm1(-times * riseS() / circuit.timeConstantS());
    }

    public double averageA() {
        return chargeC() / dwell.cycleS();
    }

    public double rmsA() {
        return Math.sqrt(squareA2S() / dwell.cycleS());
    }

    /** What the module turns to heat in one cycle by holding the limit, its saturation drop not counted, in joules. */
    public double limitingJ() {
        return heldS() == 0 ? 0 : (circuit.drivingV() - circuit.resistanceOhm() * peakA()) * peakA() * heldS();
    }

    /** Seconds for which the spark burns: until the stored current is gone or the primary closes again. */
    public double sparkS() {
        return Math.min(peakA() / circuit.releaseAPerS(), dwell.offS());
    }

    /** What the coil gives off between break and closing: L (i_break^2 - i0^2) / 2, in joules. */
    public double releasedJ() {
        return SparkEnergy.storedJ(circuit.inductanceH(), peakA())
                - SparkEnergy.storedJ(circuit.inductanceH(), residualA);
    }
}
