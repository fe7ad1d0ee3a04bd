package loomwright.ignition.spark;

import loomwright.ignition.gap.BreakdownFormula;
import loomwright.ignition.gap.BreakdownVoltage;
import loomwright.ignition.gap.GapConditions;
import loomwright.ignition.primary.Firing;

/**
 * What the coil has to raise.
 *
 * @param plug the gap in the cylinder that is to be ignited
 * @param secondGapV what the plug in series with it takes, in its cylinder on the exhaust stroke; 0 if there is none
 */
public record Demand(BreakdownVoltage plug, double secondGapV) {

    /** Exhaust stroke: about free air pressure and 430 C. Common practice, no source. */
    private static final double EXHAUST_PA = 1e5;

    private static final double EXHAUST_C = 430;

    /** The demand of one coil; a second plug has the same gap. */
    static Demand of(BreakdownVoltage plug, Firing firing) {
        if (!firing.hasSecondGap()) {
            return new Demand(plug, 0);
        }
        return new Demand(plug, BreakdownFormula.LINEAR.voltageV(exhaust(plug)));
    }

    /** The second gap and the gas in it. */
    static GapConditions exhaust(BreakdownVoltage plug) {
        return new GapConditions(plug.gap().gapMm(), EXHAUST_PA, EXHAUST_C);
    }

    /** The same gas in another gap. */
    Demand withGapMm(double gapMm, Firing firing) {
        GapConditions gap = plug.gap();
        return of(
                BreakdownVoltage.of(new GapConditions(gapMm, gap.pressurePa(), gap.temperatureC()), plug.formula()),
                firing);
    }

    public double requiredV() {
        return plug.voltageV() + secondGapV;
    }
}
