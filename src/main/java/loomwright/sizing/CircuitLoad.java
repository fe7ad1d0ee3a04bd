package loomwright.sizing;

import loomwright.answer.Basis;
import loomwright.judgement.DropRule;

/** What a circuit feeds, as workshops say it: which drop it may have, and what it draws when it is switched on. */
public enum CircuitLoad {
    /** Headlamps, driving and stop lamps. */
    HEADLAMPS(DropRule.HEADLAMP, 10, 0.05),
    /** Lamps of up to 15 W. */
    LAMPS(DropRule.SMALL_LAMP, 10, 0.05),
    MOTOR(DropRule.GENERAL, 4, 0.3),
    PUMP(DropRule.GENERAL, 4, 0.3),
    HORN(DropRule.GENERAL, 1, 0),
    HEATER(DropRule.GENERAL, 1, 0),
    ELECTRONICS(DropRule.ELECTRONICS, 1, 0),
    /** Alternator, dynamo or charger to the battery. */
    CHARGER(DropRule.CHARGING, 1, 0),
    OTHER(DropRule.GENERAL, 1, 0);

    public static final Basis SURGE_BASIS = Basis.verified(
            "switch-on: filament lamps 10 times the current for 0.05 s, motors 4 times for 0.3 s",
            "electrical installation guide and lamp technology site: 10 to 15 times, settled in about 0.05 s (motors:"
                    + " common practice)");

    private final DropRule drop;
    private final double surge;
    private final double surgeS;

    CircuitLoad(DropRule drop, double surge, double surgeS) {
        this.drop = drop;
        this.surge = surge;
        this.surgeS = surgeS;
    }

    /** The limit of its drop. */
    public DropRule drop() {
        return drop;
    }

    /** Current at switch-on over running current. */
    public double surge() {
        return surge;
    }

    /** How long that lasts, s. */
    public double surgeS() {
        return surgeS;
    }

    boolean surges() {
        return surge > 1;
    }
}
