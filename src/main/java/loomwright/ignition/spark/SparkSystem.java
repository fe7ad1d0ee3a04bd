package loomwright.ignition.spark;

import static loomwright.message.Arg.plain;

import java.util.Comparator;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.ignition.SelfHeating;
import loomwright.ignition.primary.CoilData;
import loomwright.ignition.primary.Dwell;
import loomwright.ignition.primary.DwellLaw;
import loomwright.ignition.primary.Firing;
import loomwright.ignition.primary.PrimaryCircuit;
import loomwright.ignition.primary.PrimaryCurrent;
import loomwright.ignition.primary.PrimarySwitch;
import loomwright.ignition.primary.SecondaryVoltage;
import loomwright.ignition.primary.SparkEnergy;

/**
 * Everything about an ignition that does not change with speed and supply.
 *
 * @param feedResistanceOhm from the battery to ballast or coil and back through earth, 0 to 10
 * @param ballastResistanceOhm 0 if there is none, to 20
 * @param coil the coil
 * @param coilTemperatureC of its primary winding, -40 to 250
 * @param primarySwitch breaker or module
 * @param firing how often a coil is asked
 * @param burningV voltage of a burning spark with leads and secondary winding, 200 to 10 000
 * @param demand what the coil has to raise
 */
public record SparkSystem(
        double feedResistanceOhm,
        double ballastResistanceOhm,
        CoilData coil,
        double coilTemperatureC,
        PrimarySwitch primarySwitch,
        Firing firing,
        double burningV,
        Demand demand) {

    /** The mean current changes slowly over speed. */
    private static final int MEAN_STEPS = 40;

    public SparkSystem {
        InputErrors faults = new InputErrors();
        range(faults, feedResistanceOhm, ballastResistanceOhm, coilTemperatureC, burningV);
        if (primarySwitch.dwellLaw() instanceof DwellLaw.FixedAngle angle) {
            double cycleDegrees = firing.cycleDegrees();
            faults.check(
                    angle.dwellDegrees() < cycleDegrees,
                    InputError.Code.CONTRADICTION,
                    "/dwellDegrees",
                    angle.dwellDegrees(),
                    AcceptedSpark.DWELL,
                    plain("limit", cycleDegrees));
        }
        faults.reject();
    }

    /** Notes which of the bare numbers are out of range; apart, for a question whose other parts are at fault too. */
    static void range(
            InputErrors faults,
            double feedResistanceOhm,
            double ballastResistanceOhm,
            double coilTemperatureC,
            double burningV) {
        faults.range("/feedResistanceOhm", feedResistanceOhm, 0, 10)
                .range("/ballastResistanceOhm", ballastResistanceOhm, 0, 20)
                .range("/coilTemperatureC", coilTemperatureC, -40, 250)
                .range("/burningV", burningV, 200, 10_000);
    }

    /** The same system with its coil at another temperature. */
    SparkSystem withCoilTemperatureC(double temperatureC) {
        return new SparkSystem(
                feedResistanceOhm, ballastResistanceOhm, coil, temperatureC, primarySwitch, firing, burningV, demand);
    }

    /** Primary resistance at the coil's temperature: R20 (1 + 0.00393 (T - 20)). */
    public double coilResistanceOhm() {
        return SelfHeating.resistanceOhm(coil.primaryResistanceOhm(), SelfHeating.COPPER_PER_K, coilTemperatureC);
    }

    double ballastOhm(boolean bypassed) {
        return bypassed ? 0 : ballastResistanceOhm;
    }

    PrimaryCircuit circuit(double supplyV, boolean bypassed) {
        return new PrimaryCircuit(
                primarySwitch.worksAt(supplyV) ? Math.max(0, supplyV - primarySwitch.dropV()) : 0,
                feedResistanceOhm + ballastOhm(bypassed) + coilResistanceOhm(),
                coil.inductanceH(),
                primarySwitch.limitA(),
                coil.releaseAPerS(burningV));
    }

    PrimaryCurrent current(double speedRpm, double supplyV, boolean bypassed) {
        PrimaryCircuit circuit = circuit(supplyV, bypassed);
        return PrimaryCurrent.steady(circuit, primarySwitch.dwellLaw().at(firing, speedRpm, circuit));
    }

    /** Current with the engine stopped and the primary closed, after it has settled. */
    public double closedA(double supplyV, boolean bypassed) {
        PrimaryCircuit circuit = circuit(supplyV, bypassed);
        return Math.min(circuit.finalA(), circuit.limitA());
    }

    /**
     * The speed at which all coils together draw most in the mean.
     *
     * @param fromRpm above 0
     * @param toRpm above {@code fromRpm}
     */
    SparkPoint greatestMean(double fromRpm, double toRpm, double supplyV, boolean bypassed) {
        return new SweepRange(fromRpm, toRpm, MEAN_STEPS)
                .values().stream()
                        .map(rpm -> at(rpm, supplyV, bypassed))
                        .max(Comparator.comparingDouble(s -> s.means().allCoilsA()))
                        .orElseThrow();
    }

    /**
     * The spark at one speed and supply.
     *
     * @param speedRpm above 0
     * @param supplyV 0 or above; at or below the drop of the switch no current flows
     * @param bypassed whether the ballast is bypassed
     * @return the steady cycle; the heats and the released energy add up to what the supply gives
     */
    public SparkPoint at(double speedRpm, double supplyV, boolean bypassed) {
        PrimaryCurrent current = current(speedRpm, supplyV, bypassed);
        Dwell dwell = current.dwell();
        double energyJ = SparkEnergy.storedJ(coil.inductanceH(), current.peakA());
        double availableV = SecondaryVoltage.of(coil, energyJ).availableV();
        double requiredV = demand.requiredV();
        double meanSquareA2 = current.squareA2S() / dwell.cycleS();
        double switchDropV = Math.min(primarySwitch.dropV(), supplyV);
        return new SparkPoint(
                speedRpm,
                supplyV,
                bypassed,
                new SparkPoint.Timing(dwell.dwellS(), dwell.cycleS(), dwell.dutyFraction()),
                new SparkPoint.Build(current.residualA(), current.peakA(), current.heldS()),
                new SparkPoint.Stored(energyJ, current.releasedJ(), current.sparkS()),
                new SparkPoint.Margin(availableV, requiredV, availableV - requiredV, availableV / requiredV),
                new SparkPoint.Means(current.averageA(), current.rmsA(), current.averageA() * firing.coils()),
                new SparkPoint.MeanHeat(
                        meanSquareA2 * coilResistanceOhm(),
                        meanSquareA2 * ballastOhm(bypassed),
                        meanSquareA2 * feedResistanceOhm,
                        switchDropV * current.averageA() + current.limitingJ() / dwell.cycleS(),
                        supplyV * current.averageA()));
    }
}
