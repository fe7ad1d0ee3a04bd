package loomwright.ignition;

import loomwright.ignition.CoilData.Feed;

/**
 * Coils of a general kind, for a caller who does not know the figures of his own: middle of the usual ranges (primary
 * with ballast 1.2 to 1.8 ohm, direct 2.8 to 3.6 ohm at 12 V and 1.0 to 1.6 ohm at 6 V, high-energy 0.4 to 1.0 ohm;
 * inductance plain 5 to 12 mH, high-energy 3 to 8 mH; ratio 60 to 150; capacitance 50 to 100 pF). Common practice, no
 * source.
 */
public enum CoilPreset {
    /** 12 V coil for use with a ballast. */
    FOR_BALLAST(new CoilData(1.5, 0.006, 100, 300, 80e-12, 0.5, Feed.WITH_BALLAST)),
    /** 12 V coil for direct feed. */
    FOR_DIRECT_FEED(new CoilData(3.2, 0.008, 100, 300, 80e-12, 0.5, Feed.DIRECT)),
    /** 6 V coil for direct feed. */
    FOR_DIRECT_FEED_6V(new CoilData(1.3, 0.005, 100, 300, 80e-12, 0.5, Feed.DIRECT)),
    /** High-energy coil for a module with current limit. */
    HIGH_ENERGY(new CoilData(0.7, 0.005, 90, 380, 80e-12, 0.5, Feed.LIMITING_MODULE));

    private final CoilData data;

    CoilPreset(CoilData data) {
        this.data = data;
    }

    public CoilData data() {
        return data;
    }
}
