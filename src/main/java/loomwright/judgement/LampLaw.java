package loomwright.judgement;

import loomwright.answer.Basis;

/**
 * A filament lamp at other volts than those it was measured at. With u = volts over test volts: current u^0.55, light
 * u^3.4, life u^-13.
 */
public final class LampLaw {
    public static final double CURRENT_EXPONENT = 0.55;
    public static final double LIGHT_EXPONENT = 3.4;
    public static final double LIFE_EXPONENT = -13;

    public static final Basis LIGHT_BASIS = Basis.verified(
            "light of a filament lamp: volts to the power of 3.4",
            "handbook for electrical engineers and SPIE field guide to illumination: exponents 3.4 to 3.5");
    public static final Basis CURRENT_BASIS = Basis.verified(
            "current of a filament lamp: volts to the power of 0.55",
            "two handbooks: 0.55 and 0.526; measured near the rated volts: 0.48 to 0.49");
    public static final Basis LIFE_BASIS = Basis.verified(
            "life of a filament lamp: volts to the power of -13; 5 % too much halves it", "lamp maker's page");
    public static final Basis TEST_VOLTS_BASIS = Basis.verified(
            "test volts of lamps: 6.75 V; 13.2 V headlamps, 13.5 V others; 28 V",
            "UN Regulation 37 through EU Directive 97/24/EC, IEC 60810");

    public static final Basis OVERVOLTAGE_BASIS = new Basis(
            "filament lamp: above 1.1 times its test volts a note, above 1.2 times a warning",
            "life by volts to the power of -13 (lamp maker's page): 29 % and 9 % of it; the two figures are common practice",
            Basis.Status.COMMON_PRACTICE);

    private static final double HEADLAMP_LEAST_W = 35;
    /** Volts over test volts from which a lamp is too bright. */
    private static final double BRIGHT_NOTE = 1.1;

    private static final double BRIGHT_WARNING = 1.2;

    private LampLaw() {}

    /**
     * The volts at which a lamp gives its rated light. A rating of 6, 12 or 24 V is a name and stands for the test volts
     * of the regulation; any other rating is taken as it stands.
     *
     * @param ratedV volts on the lamp, above 0
     * @param ratedW watts on the lamp; from 35 W it is taken for a headlamp
     */
    public static double testV(double ratedV, double ratedW) {
        if (ratedV == 6) {
            return 6.75;
        } else if (ratedV == 12) {
            return ratedW >= HEADLAMP_LEAST_W ? 13.2 : 13.5;
        }
        return ratedV == 24 ? 28 : ratedV;
    }

    /**
     * Judges the volts that a lit lamp gets, by its life.
     *
     * @param lampV 0 or more
     * @param testV see {@link #testV}
     */
    public static Verdict judgeOvervoltage(double lampV, double testV) {
        double share = lampV / testV;
        Level level = share > BRIGHT_WARNING ? Level.WARNING : share > BRIGHT_NOTE ? Level.NOTE : Level.FITS;
        return new Verdict(
                "lamp-overvoltage",
                level,
                Ratio.of(lampV, BRIGHT_NOTE * testV).borderline(),
                lampV,
                BRIGHT_NOTE * testV,
                OVERVOLTAGE_BASIS);
    }

    /** Light over rated light, from volts over test volts (0 or more). */
    public static double lightFraction(double voltsFraction) {
        return Math.pow(voltsFraction, LIGHT_EXPONENT);
    }

    /** Current over rated current, from volts over test volts (0 or more). */
    public static double currentFraction(double voltsFraction) {
        return Math.pow(voltsFraction, CURRENT_EXPONENT);
    }

    /** Life over rated life, from volts over test volts (above 0). */
    public static double lifeFraction(double voltsFraction) {
        return Math.pow(voltsFraction, LIFE_EXPONENT);
    }
}
