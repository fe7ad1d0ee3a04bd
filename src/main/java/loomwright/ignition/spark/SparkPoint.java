package loomwright.ignition.spark;

/**
 * The spark at one speed and supply, in the cycle that repeats itself. Currents and heats are those of one coil.
 *
 * @param speedRpm of the crankshaft
 * @param supplyV at the battery side of the feed
 * @param bypassed whether the ballast was bypassed
 * @param dwellS time with the primary closed
 * @param cycleS time from one spark of the coil to its next
 * @param dutyFraction dwell over cycle
 * @param residualA residual current: what the spark before left, at the closing of the primary
 * @param peakA current at the break
 * @param heldS how long the module held its limit; 0 if the dwell ended before that or just then
 * @param energyJ stored at the break
 * @param releasedJ given off until the primary closes again
 * @param sparkS how long the spark burns
 * @param availableV what the coil can raise
 * @param requiredV what the gap asks for
 * @param marginV available less required; negative if the spark fails
 * @param marginRatio available over required
 * @param averageA average primary current
 * @param rmsA effective primary current, for heat
 * @param allCoilsA average current of all coils together, for fuse and wire
 * @param coilHeatW copper loss of the primary winding
 * @param ballastHeatW heat in the ballast; 0 if bypassed
 * @param feedHeatW heat in the feed
 * @param switchHeatW heat in breaker or module: drop, and holding the limit
 * @param supplyPowerW taken from the supply: the heats and the energy given off to the sparks
 */
public record SparkPoint(
        double speedRpm,
        double supplyV,
        boolean bypassed,
        double dwellS,
        double cycleS,
        double dutyFraction,
        double residualA,
        double peakA,
        double heldS,
        double energyJ,
        double releasedJ,
        double sparkS,
        double availableV,
        double requiredV,
        double marginV,
        double marginRatio,
        double averageA,
        double rmsA,
        double allCoilsA,
        double coilHeatW,
        double ballastHeatW,
        double feedHeatW,
        double switchHeatW,
        double supplyPowerW) {}
