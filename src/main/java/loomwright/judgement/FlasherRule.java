package loomwright.judgement;

import loomwright.answer.Basis;
import loomwright.circuit.Flasher;
import loomwright.circuit.VehicleSystem;

/** What a flasher unit does with the load it has. */
public final class FlasherRule {
    public static final Basis BASIS = Basis.verified(
            "a flasher unit runs at 60 to 120 a minute; a lamp that fails shows as steady on, steady off or a marked change of"
                    + " rate; electronic units double it",
            "Swiss ordinance on vehicle construction, article 79; interpretation letters quoting SAE J588 and J945");
    public static final Basis LOAD_BASIS = Basis.commonPractice(
            "a thermal flasher unit needs about 0.7 of the watts it is made for, and stands 1.25 times that");

    /** A current of lamps below this is none (common practice, no source). */
    public static final double LEAST_LOAD_A = 0.005;
    /** Below this share of what it is made for an electronic one that watches its lamps doubles its rate. */
    public static final double LAMP_OUT_SHARE = 0.7;
    /** Above this share of what it is made for it is overloaded. */
    public static final double OVERLOAD_SHARE = 1.25;

    private FlasherRule() {}

    /** What a flasher unit does. */
    public enum State {
        /** No supply, or its contact is stuck open. */
        OFF,
        /** Supplied, with no lamp to flash. */
        STANDBY,
        /** Its lamps stay lit, or flash far too slowly. */
        NOT_FLASHING,
        FLASHING,
        /** At twice its rate: a lamp is missing, or takes too little. */
        FAST,
        /** It flashes, with more than it is made for. */
        OVERLOADED;

        /** Whether its lamps go on and off. */
        public boolean flashes() {
            return this == FLASHING || this == FAST || this == OVERLOADED;
        }
    }

    /**
     * The state by the current of the lamps while they are lit.
     *
     * @param supplied whether it has volts; of an electronic one, between 49 and 31
     * @param loadA through 49a, 0 or more
     */
    public static State state(Flasher flasher, VehicleSystem system, boolean supplied, double loadA) {
        if (!supplied || flasher.stuck() == Flasher.Stuck.OPEN) {
            return State.OFF;
        } else if (loadA < LEAST_LOAD_A) {
            return State.STANDBY;
        } else if (flasher.stuck() == Flasher.Stuck.CLOSED || loadA < flasher.minimumA(system)) {
            return State.NOT_FLASHING;
        }
        Double madeForW = flasher.madeForW();
        if (madeForW == null) {
            return State.FLASHING;
        }
        double share = loadA * system.nominalVoltageV() / madeForW;
        if (share > OVERLOAD_SHARE) {
            return State.OVERLOADED;
        }
        return flasher.electronic() && share < LAMP_OUT_SHARE ? State.FAST : State.FLASHING;
    }

    /** How often it flashes in a state, per minute; 0 where it does not. */
    public static double ratePerMinute(Flasher flasher, State state) {
        if (!state.flashes()) {
            return 0;
        }
        return state == State.FAST ? 2 * flasher.ratePerMinute() : flasher.ratePerMinute();
    }
}
