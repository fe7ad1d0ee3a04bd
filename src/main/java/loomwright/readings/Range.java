package loomwright.readings;

import java.util.OptionalDouble;

/**
 * What a reading may be when all is sound.
 *
 * @param nominal with everything at its stated figure; empty if there is none to read
 * @param lowest 0 without nominal; so the next
 * @param hanging whether a relay, solenoid or the like may stand otherwise within the tolerances
 */
record Range(OptionalDouble nominal, double lowest, double highest, boolean hanging) {
    static final Range NONE = new Range(OptionalDouble.empty(), 0, 0, false);

    /** What covers both of two states between which a meter averages. */
    Range and(Range other) {
        if (nominal.isEmpty()) {
            return other.nominal.isEmpty() ? this : other.orNothing();
        } else if (other.nominal.isEmpty()) {
            return orNothing();
        }
        return new Range(
                OptionalDouble.of((nominal.getAsDouble() + other.nominal.getAsDouble()) / 2),
                Math.min(lowest, other.lowest),
                Math.max(highest, other.highest),
                hanging || other.hanging);
    }

    /** The same, of which this is the state that counts as usual: the engine stands, and the meter shows one of both. */
    Range or(Range other) {
        Range both = and(other);
        return nominal.isEmpty() ? both : new Range(nominal, both.lowest, both.highest, both.hanging);
    }

    /** In the other state there is nothing steady: a meter falls towards 0. */
    private Range orNothing() {
        return new Range(nominal, Math.min(0, lowest), Math.max(0, highest), hanging);
    }
}
