package loomwright.ignition.spark;

import org.jspecify.annotations.Nullable;

/**
 * The feed of the coil as asked about.
 *
 * @param supplyV at the battery, 1 to 60; if left out, charging: 14.2, in proportion at 6 and 24 V
 * @param feedResistanceOhm out and back without ballast, 0 to 10; 0.05 if left out
 * @param ballastResistanceOhm 0 to 20; none if left out
 * @param bypassed whether the ballast is bypassed; not if left out
 * @param nominalVoltageV of the vehicle: 6, 12 or 24; by the supply and the coil if left out
 */
public record FeedInput(
        @Nullable Double supplyV,
        @Nullable Double feedResistanceOhm,
        @Nullable Double ballastResistanceOhm,
        @Nullable Boolean bypassed,
        @Nullable Integer nominalVoltageV) {

    /** Everything as is common. */
    public static final FeedInput COMMON = new FeedInput(null, null, null, null, null);

    FeedInput completedFrom(FeedInput other) {
        return nominalVoltageV != null
                ? this
                : new FeedInput(supplyV, feedResistanceOhm, ballastResistanceOhm, bypassed, other.nominalVoltageV);
    }

    boolean bypassedOrNot() {
        return bypassed != null && bypassed;
    }

    double ballastOhm() {
        return ballastResistanceOhm == null ? 0 : ballastResistanceOhm;
    }
}
