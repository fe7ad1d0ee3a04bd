package loomwright.ignition.spark;

import loomwright.message.MessageCode;

/**
 * Where something ends or begins along an axis that was searched from one end to the other.
 *
 * @param kind what was found
 * @param value the place on the axis; with {@link Kind#NOT_REACHED} the end to which it was searched, with {@link
 *     Kind#NEVER_THERE} the end from which
 */
public record Boundary(Kind kind, double value) {

    /** What a search can find. */
    public enum Kind implements MessageCode {
        /** It changes here. */
        AT,
        /** It holds over the whole axis. */
        NOT_REACHED,
        /** It does not hold at the start of the search. */
        NEVER_THERE
    }
}
