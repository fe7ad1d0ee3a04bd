package loomwright.operation;

import java.util.BitSet;
import java.util.List;

/**
 * How a step came to rest. Parts are bits, by their place in the list of {@link Threshold}s.
 *
 * @param active the parts past their thresholds
 * @param moving the parts that race each other, or that keep changing; empty if settled
 * @param rests of a race the states in which it may end, the one told first; otherwise empty
 * @param complete whether all orders of a race were looked at
 */
record StableState(Outcome outcome, BitSet active, BitSet moving, List<BitSet> rests, boolean complete) {
    private static final BitSet NONE = new BitSet();

    /** How the search ended. */
    enum Outcome {
        SETTLED,
        /** At rest, but which rest depends on which part is quicker. */
        RACE,
        OSCILLATING,
        /** The network of this state has no solution. */
        UNSOLVABLE,
        /** Too close to a limit to tell; only where a circuit is solved to decide. */
        UNDECIDED
    }

    static StableState settled(BitSet active) {
        return new StableState(Outcome.SETTLED, active, NONE, List.of(), true);
    }

    static StableState without(StateSearch.Verdict verdict, BitSet active) {
        return new StableState(
                verdict == StateSearch.Verdict.UNDECIDED ? Outcome.UNDECIDED : Outcome.UNSOLVABLE,
                active,
                NONE,
                List.of(),
                true);
    }
}
