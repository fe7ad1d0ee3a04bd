package loomwright.judgement;

import loomwright.answer.Basis;

/** The current that flows with the key off and every switch at rest, and how long the battery stands it. */
public final class DrainRule {
    /** Clock and radio memory take up to this. */
    public static final double NORMAL_A = 0.025;
    /** Above this the battery is flat after some days. */
    public static final double MUCH_A = 0.050;
    /** Share of a full battery's charge after which it no longer starts the engine, at 25 degrees. */
    public static final double USUAL_SHARE = 0.4;

    public static final Basis BASIS = Basis.verified(
            "key off: to 25 mA normal, to 50 mA a note, above a warning; a danger where a coil or motor heats",
            "service manual (5 to 25 mA), training module (35 mA), several manuals (50 mA)");
    public static final Basis HOURS_BASIS = new Basis(
            "hours until a full battery no longer starts the engine: 0.4 of its ampere-hours over the current, at 25 °C;"
                    + " halve it in hard frost",
            "maker's bulletin on parasitic drain, quoted on a secondary page; above a tenth of the ampere-hours 0.8 of that is"
                    + " common practice",
            Basis.Status.FROM_MEMORY);

    private static final double FAST_SHARE_OF_AH = 0.1;
    private static final double FAST_FACTOR = 0.8;
    /** A coil or motor that takes less stays cool. */
    private static final double HEATS_FROM_A = 1;

    private DrainRule() {}

    /**
     * How long a full battery stands a drain.
     *
     * @param currentA above 0
     * @param capacityAh above 0
     * @return hours until it no longer starts the engine
     */
    public static double hours(double currentA, double capacityAh) {
        double factor = currentA > FAST_SHARE_OF_AH * capacityAh ? FAST_FACTOR : 1;
        return factor * USUAL_SHARE * capacityAh / currentA;
    }

    /**
     * Judges a drain.
     *
     * @param currentA from the battery, 0 or more
     * @param windingA of that through a coil or a motor, 0 or more
     */
    public static Verdict judge(double currentA, double windingA) {
        Level level = currentA <= NORMAL_A ? Level.FITS : currentA <= MUCH_A ? Level.NOTE : Level.WARNING;
        return new Verdict(
                "key-off-drain",
                windingA >= HEATS_FROM_A ? Level.DANGER : level,
                Ratio.of(currentA, NORMAL_A).borderline(),
                currentA,
                NORMAL_A,
                BASIS);
    }
}
