package loomwright.judgement.ignition;

import loomwright.answer.Basis;
import loomwright.circuit.IgnitionModule;
import loomwright.judgement.Level;
import loomwright.judgement.Verdict;

/** The volts from which an ignition module works. */
public final class ModuleSupplyRule {
    /** From here every module works, at 12 V. */
    public static final double SURE_12V = 8;
    /** Below this none does, at 12 V, unless its maker says otherwise. */
    public static final double DEAD_12V = IgnitionModule.DEAD_BELOW_12V;

    public static final Basis BASIS = Basis.fromMemory(
            "ignition module: works from 8 V, unsure from 6 V, dead below, at 12 V",
            "ISO 16750-2, supply voltage codes (an engine maker's unit: 9 to 30 V)");

    private static final double TABLE_NOMINAL_V = 12;

    private ModuleSupplyRule() {}

    /** Below this a module does not work. */
    public static double deadV(double nominalV) {
        return DEAD_12V * nominalV / TABLE_NOMINAL_V;
    }

    /** From here it surely works. */
    public static double sureV(double nominalV, double deadV) {
        return Math.max(deadV, SURE_12V * nominalV / TABLE_NOMINAL_V);
    }

    /**
     * Judges the supply of a module.
     *
     * @param supplyV from 15 to 31
     * @param nominalV 6, 12 or 24
     * @param deadV below which it does not work
     */
    public static Verdict judge(double supplyV, double nominalV, double deadV) {
        double sureV = sureV(nominalV, deadV);
        Level level = supplyV >= sureV ? Level.FITS : supplyV >= deadV ? Level.NOTE : Level.WARNING;
        return new Verdict("module-supply", level, level == Level.NOTE, supplyV, sureV, BASIS);
    }
}
