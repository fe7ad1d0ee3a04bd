package loomwright.ignition.primary;

import loomwright.ignition.primary.CoilData.Feed;
import loomwright.judgement.ignition.CoilKind;
import loomwright.message.MessageCode;

/**
 * Coils of a general kind, for a caller who does not know the figures of his own: middle of the usual ranges (primary
 * with ballast 1.2 to 1.8 ohm, direct 2.8 to 3.6 ohm at 12 V and 1.0 to 1.6 ohm at 6 V, high-energy 0.4 to 1.0 ohm;
 * inductance plain 5 to 12 mH, high-energy 3 to 8 mH; ratio 60 to 150; capacitance 50 to 100 pF; primary kick 200 V or more with contacts, clamp 300 to 400 V with a module;
 * efficiency lower with contacts, whose condenser takes part of the energy). Common practice, no
 * source.
 */
public enum CoilPreset implements MessageCode {
    /** 12 V coil for use with a ballast. */
    FOR_BALLAST,
    /** 12 V coil for direct feed. */
    FOR_DIRECT_FEED,
    /** 6 V coil for direct feed. */
    FOR_DIRECT_FEED_6V,
    /** High-energy coil for a module with current limit. */
    HIGH_ENERGY;

    /** The kind that a coil of so many ohms is, in a vehicle of 6, 12 or 24 V. */
    public static CoilPreset ofOhm(double primaryOhm, double nominalV) {
        return switch (CoilKind.ofOhm(primaryOhm, nominalV)) {
            case HIGH_ENERGY -> HIGH_ENERGY;
            case WITH_BALLAST -> FOR_BALLAST;
            case DIRECT -> nominalV == 6 ? FOR_DIRECT_FEED_6V : FOR_DIRECT_FEED;
        };
    }

    /**
     * Inductance of a usual coil of so many ohms, H. A winding of other turns in the same space has inductance and ohms in the
     * same proportion, so that of a 24 V coil is 3.3 times that of one for 12 V.
     */
    public static double usualInductanceH(double primaryOhm, double nominalV) {
        CoilPreset kind = ofOhm(primaryOhm, nominalV);
        double usualH = kind.data().inductanceH();
        return kind == FOR_DIRECT_FEED_6V ? usualH : usualH / CoilKind.ohmAt12V(1, nominalV);
    }

    public CoilData data() {
        return switch (this) {
            case FOR_BALLAST -> new CoilData(1.5, 0.006, 100, 250, 80e-12, 0.35, Feed.WITH_BALLAST);
            case FOR_DIRECT_FEED -> new CoilData(3.2, 0.008, 100, 250, 80e-12, 0.35, Feed.DIRECT);
            case FOR_DIRECT_FEED_6V -> new CoilData(1.3, 0.005, 100, 250, 80e-12, 0.35, Feed.DIRECT);
            case HIGH_ENERGY -> new CoilData(0.7, 0.005, 90, 380, 80e-12, 0.5, Feed.LIMITING_MODULE);
        };
    }
}
