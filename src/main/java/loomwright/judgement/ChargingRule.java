package loomwright.judgement;

import loomwright.answer.Basis;
import loomwright.circuit.Curve;

/** What charges, how much, and how the volts at the battery's posts are judged while the engine runs. */
public final class ChargingRule {
    public static final Basis OUTPUT_BASIS = Basis.verified(
            "loads with the engine running: at most the rating of alternator or dynamo; an alternator, hot,"
                    + " gives 0.33, 0.85 and 1.0 of its rating at 1300, 2500 and 5000 of its own rev/min",
            "technical manual of an engine with a 50 A alternator: 16, 41 and 48 A");
    public static final Basis DYNAMO_SPEED_BASIS = Basis.verified(
            "a dynamo gives nothing below its cut-in speed; from there its current rises in proportion to the speed up to its rating;"
                    + " one with a third brush falls again at high speed, to about half",
            "auto electrician's handbook of 1922, table of volts and amperes from 1100 to 1700 rev/min; technical manual of the US Army on"
                    + " vehicle electrics, third-brush generators");
    public static final Basis POSTS_BASIS = Basis.commonPractice(
            "volts at the battery, engine at speed, at 12 V: to 12.9 V not charging, below 13.2 V a warning, below 13.7 V low,"
                    + " above 15.0 V overcharge, above 15.5 V a danger");

    public static final Basis SENSE_BASIS = Basis.commonPractice(
            "a regulator with a sense terminal holds the volts there; without its wire one type holds those at its output, slightly"
                    + " higher (service manual of a 1998 car), another gives all it can, up to 1.3 times its set volts");

    private static final double NOMINAL_V = 12;
    /** Where an alternator begins to give something (common practice, no source). */
    public static final double ALTERNATOR_CUT_IN_RPM = 900;

    private static final Curve OUTPUT =
            new Curve(new double[] {0, ALTERNATOR_CUT_IN_RPM, 1300, 2500, 5000}, new double[] {0, 0, 0.33, 0.85, 1});

    /** Of an alternator's own speed with the engine idling. */
    private static final double IDLE_RPM = 1300;

    /** Of a machine to be chosen so much is used. Common practice, no source. */
    private static final double CHOSEN_SHARE = 0.8;

    private static final double LOW_12V = 13.7;
    private static final double POOR_12V = 13.2;
    private static final double HIGH_12V = 15.0;
    private static final double DANGER_12V = 15.5;

    private ChargingRule() {}

    /**
     * Share of its rating that a hot alternator can give.
     *
     * @param alternatorRpm its own speed. Below 1300 it falls to nothing at 900, where it begins (common practice, no
     *     source)
     */
    public static double outputFraction(double alternatorRpm) {
        return OUTPUT.at(alternatorRpm);
    }

    /**
     * Share of its rating that a dynamo can give at a speed: its volts at full field rise in proportion to that, and the battery holds
     * them, so the current rises in proportion to what is above the cut-in speed.
     */
    public static double dynamoFraction(double speedRpm, double cutInRpm, double fullOutputRpm) {
        return Math.max(0, Math.min(1, (speedRpm - cutInRpm) / (fullOutputRpm - cutInRpm)));
    }

    /**
     * The same with a third brush: with x above the cut-in speed, and d from there to the full output, 4·d·x/(x + d)². The current of the
     * armature weakens its own field, so that the output falls again at high speed.
     */
    public static double thirdBrushFraction(double speedRpm, double cutInRpm, double fullOutputRpm) {
        double riseRpm = fullOutputRpm - cutInRpm;
        double aboveRpm = Math.max(0, speedRpm - cutInRpm);
        return 4 * riseRpm * aboveRpm / Math.pow(aboveRpm + riseRpm, 2);
    }

    /** What a hot alternator gives with the engine idling. */
    public static double idleA(double ratingA) {
        return ratingA * outputFraction(IDLE_RPM);
    }

    /**
     * Judges the volts at which a battery is charged, engine at speed.
     *
     * @param chargingV at its posts, or what the regulator is set to
     * @param nominalVoltageV 6, 12 or 24
     * @return with the limit that is nearest: the highest or the lowest volts
     */
    public static Verdict judge(double chargingV, double nominalVoltageV) {
        double scale = nominalVoltageV / NOMINAL_V;
        double at12V = chargingV / scale;
        boolean low = at12V < (LOW_12V + HIGH_12V) / 2;
        double limitV = low ? LOW_12V : HIGH_12V;
        return new Verdict(
                "charging-voltage",
                low ? lowLevel(at12V) : highLevel(at12V),
                false,
                chargingV,
                limitV * scale,
                POSTS_BASIS);
    }

    /**
     * Judges the volts that a machine makes whose sense terminal measures too little: with a note at the least, and a warning
     * where its regulator then gives all it can.
     */
    public static Level judgeSenseLost(double outputV, double nominalVoltageV, boolean fullOutput) {
        Level volts = judgeHigh(outputV, nominalVoltageV);
        Level least = fullOutput ? Level.WARNING : Level.NOTE;
        return volts.compareTo(least) > 0 ? volts : least;
    }

    /** Judges volts that may be too high alone. */
    public static Level judgeHigh(double chargingV, double nominalVoltageV) {
        return highLevel(chargingV * NOMINAL_V / nominalVoltageV);
    }

    private static Level lowLevel(double at12V) {
        return at12V >= LOW_12V ? Level.FITS : at12V >= POOR_12V ? Level.NOTE : Level.WARNING;
    }

    private static Level highLevel(double at12V) {
        return at12V <= HIGH_12V ? Level.FITS : at12V <= DANGER_12V ? Level.WARNING : Level.DANGER;
    }

    /** What a machine to be chosen is to give: with it the volts rise, and lamps draw more. */
    public static double chosenA(double loadsA) {
        return loadsA / CHOSEN_SHARE;
    }

    /** Judges what runs with the engine against what its machine gives at most. */
    public static Verdict judgeLoads(double loadsA, double limitA) {
        return Verdict.ofMost("generator-load", loadsA, limitA, Double.POSITIVE_INFINITY, OUTPUT_BASIS);
    }
}
