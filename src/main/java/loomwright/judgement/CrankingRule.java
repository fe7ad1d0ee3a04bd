package loomwright.judgement;

import loomwright.answer.Basis;
import loomwright.circuit.Curve;

/** The starter: what it draws where nobody says, what the battery must hold meanwhile, what its cables may have. */
public final class CrankingRule {
    public static final Basis POSTS_BASIS = Basis.verified(
            "volts at the battery's posts at half its cold cranking current, 12 V: at least 9.6 V at 20 C down to 8.5 V"
                    + " at -18 C",
            "load test of two service manuals");
    public static final Basis CABLE_BASIS = Basis.verified(
            "starter cables, out and back: 2.0 milliohm at 12 V, 0.20 V for each 100 A",
            "US Army TM 10-3930-671-24; an engine maker allows 1.7 milliohm for both leads");
    public static final Basis HEAVY_CABLE_BASIS = Basis.verified(
            "starter cables of a diesel or above 250 A: 1.0 milliohm new, a finding above 1.2, at 12 V",
            "cable table of a maker of small diesels: 35 mm2 to 1.8 m, 50 to 2.6 m, 70 to 3.7 m, 95 to 4.8 m");
    public static final Basis CURRENT_BASIS = Basis.verified(
            "cranking current of a petrol engine of 4, 6 and 8 cylinders: 150, 180, 220 A warm, twice that in the first"
                    + " cold second",
            "tester's handbook: greatest allowed 185, 200, 250 A (the diesel's 400 A is from memory)");

    /** Above this current the cables are judged as a diesel's. */
    public static final double HEAVY_FROM_A = 250;
    /** Body of a vehicle as return of the starter, if sound. Common practice, no source. */
    public static final double CHASSIS_OHM = 0.0003;
    /** Share of the budget that the cable has where the body is the return. Common practice, no source. */
    public static final double CABLE_SHARE_WITH_CHASSIS = 0.6;
    /** What a diesel's starter draws. */
    public static final double DIESEL_A = 400;
    /** By how much the current of the first cold second exceeds the warm one. */
    public static final double COLD_FACTOR = 2;

    private static final double NOMINAL_V = 12;
    private static final Curve POSTS = new Curve(
            new double[] {-18, -12, -7, -1, 4, 10, 16, 20}, new double[] {8.5, 8.7, 8.9, 9.1, 9.3, 9.4, 9.5, 9.6});
    private static final Curve WARM = new Curve(new double[] {1, 2, 4, 6, 8}, new double[] {70, 100, 150, 180, 220});

    private static final Curve MOST = new Curve(new double[] {4, 6, 8}, new double[] {185, 200, 250});
    private static final double FEED_MOST_12V = 0.5;
    private static final double EARTH_MOST_12V = 0.3;

    private CrankingRule() {}

    /**
     * The least volts at the posts of a sound, charged battery at half its cold cranking current for 15 s.
     *
     * @param temperatureC of the acid; outside -18 to 20 the figure of the nearest end
     * @param nominalVoltageV 6, 12 or 24
     */
    public static double leastPostsV(double temperatureC, double nominalVoltageV) {
        return POSTS.at(temperatureC) * nominalVoltageV / NOMINAL_V;
    }

    /**
     * What the starter of a warm petrol engine draws at 12 V. Below four cylinders: common practice, no source.
     *
     * @param cylinders 1 or more
     */
    public static double warmPetrolA(int cylinders) {
        return WARM.at(cylinders);
    }

    /**
     * What the starter of a warm petrol engine may draw at 12 V, from a tester's handbook; below four cylinders as four.
     *
     * @param cylinders 1 or more
     */
    public static double mostPetrolA(int cylinders) {
        return MOST.at(cylinders);
    }

    /** What the starter's feed may lose while cranking; see {@link DropRule#STARTER}. */
    public static double feedMostV(double nominalVoltageV) {
        return FEED_MOST_12V * nominalVoltageV / NOMINAL_V;
    }

    /** What its earth may lose. */
    public static double earthMostV(double nominalVoltageV) {
        return EARTH_MOST_12V * nominalVoltageV / NOMINAL_V;
    }

    /**
     * The ohms that both cables may have together, in a vehicle that exists.
     *
     * @param crankingA current
     * @param diesel whether it is a diesel
     * @param nominalVoltageV 6, 12 or 24
     */
    public static double cablesFindingOhm(double crankingA, boolean diesel, double nominalVoltageV) {
        return (diesel || crankingA > HEAVY_FROM_A ? 0.0012 : 0.0020) * nominalVoltageV / NOMINAL_V;
    }

    /** The ohms that both new cables may have together. */
    public static double cablesNewOhm(double crankingA, boolean diesel, double nominalVoltageV) {
        return (diesel || crankingA > HEAVY_FROM_A ? 0.0010 : 0.0020) * nominalVoltageV / NOMINAL_V;
    }

    /** Judges the ohms of both starter cables together; a danger is what follows from them, not they. */
    public static Verdict judgeCables(double bothOhm, double crankingA, boolean diesel, double nominalVoltageV) {
        boolean heavy = diesel || crankingA > HEAVY_FROM_A;
        return Verdict.ofMost(
                "starter-cables",
                bothOhm,
                cablesFindingOhm(crankingA, diesel, nominalVoltageV),
                Double.POSITIVE_INFINITY,
                heavy ? HEAVY_CABLE_BASIS : CABLE_BASIS);
    }
}
