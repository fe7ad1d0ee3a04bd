package loomwright.judgement.wire;

import loomwright.answer.Basis;

/** The thinnest wire that bears handling, whatever its current. */
public final class StrengthRule {
    public static final Basis BASIS = Basis.commonPractice(
            "least for strength: 0.5 mm² (20 AWG) in a loom, 0.75 mm² (18 AWG) alone; boats ask for 16 AWG alone and 18 AWG"
                    + " in a sheath, but not under 1 A (33 CFR 183.425)");
    public static final Basis STARTER_BASIS = Basis.commonPractice(
            "least for a starter: 16 mm² where both runs are under 1 m, else 25 mm²; 6 V 35 mm²; motorcycles 10 mm²");

    /** 20 AWG has 0.518 mm2, the metric size 0.5. */
    private static final double IN_LOOM_MM2 = 0.5;
    /** 18 AWG has 0.823 mm2, SAE 18 0.76, the metric size 0.75. */
    private static final double ALONE_MM2 = 0.75;

    private StrengthRule() {}

    /** The least copper of an ordinary wire. */
    public static double leastMm2(boolean inLoom) {
        return inLoom ? IN_LOOM_MM2 : ALONE_MM2;
    }

    /**
     * The least copper of a starter cable.
     *
     * @param runM length one way
     * @param nominalVoltageV 6, 12 or 24
     */
    public static double leastStarterMm2(double runM, double nominalVoltageV) {
        if (nominalVoltageV <= 6) {
            return 35;
        }
        return runM < 1 ? 16 : 25;
    }
}
