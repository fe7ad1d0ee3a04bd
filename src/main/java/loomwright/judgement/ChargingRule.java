package loomwright.judgement;

import loomwright.answer.Basis;
import loomwright.circuit.Alternator;
import loomwright.circuit.Curve;

/** What charges, how much, and how the volts at the battery's posts are judged while the engine runs. */
public final class ChargingRule {
    public static final Basis ALTERNATOR_BASIS = Basis.verified(
            "alternator, hot: 0.33, 0.85 and 1.0 of its rating at 1300, 2500 and 5000 of its own rev/min",
            "technical manual of an engine with a 50 A alternator: 16, 41 and 48 A");
    public static final Basis REGULATOR_BASIS = Basis.verified(
            "regulated volts: 13.7 to 14.7 V at 20 C, falling 0.1 V per 10 K, at 12 V",
            "service specifications and technical manual of an engine");
    public static final Basis EXCITATION_BASIS =
            Basis.commonPractice("an alternator needs 0.1 A at its exciter terminal to begin");
    public static final Basis DYNAMO_BASIS = Basis.verified(
            "dynamo: joins at 6.3 to 6.7 V (12.7 to 13.3 V at 12 V, from memory); its regulator is open-circuit 15.8 to"
                    + " 16.4 V and falls to 13.5 V at the rating",
            "service manuals; see parts data");
    public static final Basis POSTS_BASIS = Basis.commonPractice(
            "volts at the battery, engine at speed: to 12.9 V not charging, 13.2 to 13.7 V low, above 15.0 V overcharge,"
                    + " above 15.5 V danger, at 12 V");

    /** Regulated volts of a 12 V alternator at 20 C. */
    public static final double REGULATED_12V = 14.2;
    /** By how much the regulated volts of a 12 V alternator fall for each kelvin. */
    public static final double REGULATED_12V_PER_K = -0.01;
    /** Below this current at its exciter terminal an alternator does not begin. */
    public static final double EXCITATION_LEAST_A = Alternator.LEAST_FIELD_A;
    /** Open-circuit setting of a compensated 12 V dynamo regulator at 20 C, middle of 15.8 to 16.4 V. */
    public static final double DYNAMO_OPEN_12V = 16.1;
    /** What such a regulator has come down to at the dynamo's rating. */
    public static final double DYNAMO_RATED_12V = 13.5;
    /** A 12 V cut-out joins the dynamo to the battery here, middle of 12.7 to 13.3 V. */
    public static final double CUT_IN_12V = 13.0;
    /** Of the hot output at idling speed: above this share of it the battery is discharged at idle. */
    public static final double IDLE_SHARE = 0.8;

    private static final double NOMINAL_V = 12;
    private static final Curve OUTPUT =
            new Curve(new double[] {0, 900, 1300, 2500, 5000}, new double[] {0, 0, 0.33, 0.85, 1});

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

    /** What the volts at the battery's posts say with the engine at speed. */
    public enum Posts {
        NOT_CHARGING(Level.WARNING),
        LOW(Level.NOTE),
        GOOD(Level.FITS),
        OVERCHARGE(Level.WARNING),
        DANGEROUS_OVERCHARGE(Level.DANGER);

        private final Level level;

        Posts(Level level) {
            this.level = level;
        }

        public Level level() {
            return level;
        }
    }

    /**
     * Judges the volts at the battery's posts, engine at speed.
     *
     * @param postsV measured or solved
     * @param nominalVoltageV 6, 12 or 24
     */
    public static Posts posts(double postsV, double nominalVoltageV) {
        double at12V = postsV * NOMINAL_V / nominalVoltageV;
        if (at12V > 15.5) {
            return Posts.DANGEROUS_OVERCHARGE;
        } else if (at12V > 15.0) {
            return Posts.OVERCHARGE;
        } else if (at12V >= 13.7) {
            return Posts.GOOD;
        }
        return at12V > 12.9 ? Posts.LOW : Posts.NOT_CHARGING;
    }
}
