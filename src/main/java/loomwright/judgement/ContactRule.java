package loomwright.judgement;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;

/** What the contact of a switch or relay is bought for. */
public final class ContactRule {
    public static final Basis BASIS = Basis.commonPractice(
            "contact of a switch or relay: steady load at most 0.75 of its rating, lamps and motors at most half of it");

    private static final double STEADY_SHARE = 0.75;
    private static final double SURGE_SHARE = 0.5;
    private static final List<Double> SWITCHES_A = List.of(3.0, 5.0, 10.0, 15.0, 20.0, 30.0);
    private static final List<Double> RELAYS_A = List.of(20.0, 30.0, 40.0, 70.0, 100.0, 200.0);

    private ContactRule() {}

    /**
     * The smallest usual switch.
     *
     * @param currentA of the load, 0 or more
     * @param surges whether it draws several times as much when it is switched on
     * @return empty if no usual switch carries it: then a relay is needed
     */
    public static Optional<Double> switchA(double currentA, boolean surges) {
        return smallest(SWITCHES_A, currentA, surges);
    }

    /** The smallest usual relay; empty if none carries it. */
    public static Optional<Double> relayA(double currentA, boolean surges) {
        return smallest(RELAYS_A, currentA, surges);
    }

    private static Optional<Double> smallest(List<Double> ratings, double currentA, boolean surges) {
        double share = surges ? SURGE_SHARE : STEADY_SHARE;
        return ratings.stream().filter(ratingA -> currentA <= share * ratingA).findFirst();
    }
}
