package loomwright.judgement.ignition;

import loomwright.answer.Basis;
import loomwright.judgement.DropRule;
import org.jspecify.annotations.Nullable;

/**
 * The volts that a coil should have with the contacts closed, by what it is made for.
 *
 * <p>A coil for use with a ballast: 5.7 to 8.1 V of 12.6 V, in proportion at other volts. A coil for direct feed: the
 * supply less what its feed and its switch may lose. A high-energy coil: nothing at least, and what its module's limit or
 * 8 A make at most.
 *
 * @param lowV at least
 * @param highV at most
 */
public record CoilWindow(double lowV, double highV) {
    public static final Basis BASIS = Basis.verified(
            "coil behind a ballast, contacts closed: 5.7 to 8.1 V of 12.6 V",
            "NAVEDTRA 14329: the ballast loses 4.5 to 6.9 V of 12.6 V (6 to 8 V is common practice)");

    private static final double REST_12V = 12.6;
    private static final double LOW_OF_REST_V = 5.7;
    private static final double HIGH_OF_REST_V = 8.1;

    /**
     * The window of one coil.
     *
     * @param coilOhm primary at 20 degrees
     * @param nominalV 6, 12 or 24
     * @param supplyV at the battery
     * @param dropV of the closed switch
     * @param limitA of a module; absent for none
     */
    public static CoilWindow of(
            double coilOhm, double nominalV, double supplyV, double dropV, @Nullable Double limitA) {
        return switch (CoilKind.ofOhm(coilOhm, nominalV)) {
            case WITH_BALLAST ->
                new CoilWindow(LOW_OF_REST_V / REST_12V * supplyV, HIGH_OF_REST_V / REST_12V * supplyV);
            case DIRECT ->
                new CoilWindow(Math.max(0, supplyV - dropV - DropRule.IGNITION_FEED.findingV(nominalV)), supplyV);
            case HIGH_ENERGY ->
                new CoilWindow(0, (limitA == null ? IgnitionRule.CONTACTS_WARNING_A : limitA) * coilOhm);
        };
    }
}
