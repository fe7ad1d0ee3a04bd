package loomwright.ignition.spark;

/**
 * The spark at one speed and supply, in the cycle that repeats itself. Currents and heats are those of one coil.
 *
 * @param speedRpm of the crankshaft
 * @param supplyV at the battery side of the feed
 * @param bypassed whether the ballast was bypassed
 */
public record SparkPoint(
        double speedRpm,
        double supplyV,
        boolean bypassed,
        Timing timing,
        Build build,
        Stored stored,
        Margin margin,
        Means means,
        MeanHeat heat) {
    /**
     * The times of one cycle.
     *
     * @param dwellS time with the primary closed
     * @param cycleS time from one spark of the coil to its next
     * @param dutyFraction dwell over cycle
     */
    public record Timing(double dwellS, double cycleS, double dutyFraction) {}

    /**
     * How the current builds up.
     *
     * @param residualA residual current: what the spark before left, at the closing of the primary
     * @param peakA current at the break
     * @param heldS how long the module held its limit; 0 if the dwell ended before that or just then
     */
    public record Build(double residualA, double peakA, double heldS) {}

    /**
     * The energy, and the spark that it feeds.
     *
     * @param energyJ stored at the break
     * @param releasedJ given off until the primary closes again
     * @param sparkS how long the spark burns
     */
    public record Stored(double energyJ, double releasedJ, double sparkS) {}

    /**
     * The secondary volts.
     *
     * @param availableV what the coil can raise
     * @param requiredV what the gap asks for
     * @param marginV available less required; negative if the spark fails
     * @param marginRatio available over required
     */
    public record Margin(double availableV, double requiredV, double marginV, double marginRatio) {}

    /**
     * Means of the current over a cycle.
     *
     * @param averageA average primary current
     * @param rmsA effective primary current, for heat
     * @param allCoilsA average current of all coils together, for fuse and wire
     */
    public record Means(double averageA, double rmsA, double allCoilsA) {}

    /**
     * Where the power goes, as means over a cycle.
     *
     * @param coilHeatW copper loss of the primary winding
     * @param ballastHeatW heat in the ballast; 0 if bypassed
     * @param feedHeatW heat in the feed
     * @param switchHeatW heat in breaker or module: drop, and holding the limit
     * @param supplyPowerW taken from the supply: the heats and the energy given off to the sparks
     */
    public record MeanHeat(
            double coilHeatW, double ballastHeatW, double feedHeatW, double switchHeatW, double supplyPowerW) {}
}
