package loomwright.network;

import java.util.List;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/**
 * Something about a network that a caller should know.
 *
 * @param message what was found; its code is a {@link Kind}
 * @param elementIds the elements concerned, in order along the loop where it is one
 * @param nodes names of the nodes concerned
 */
public record NetworkFinding(Message message, List<String> elementIds, List<String> nodes) {

    /** What was found. */
    public enum Kind implements MessageCode {
        /** A loop of ideal sources and joints whose voltages do not add up to zero: no solution. */
        CONFLICTING_SOURCES,
        /** A current that is driven into nodes from which nothing leads it back: no solution. */
        CURRENT_WITHOUT_RETURN,
        /** A loop of ideal joints: how its current divides is not determined. */
        UNDETERMINED_CURRENT,
        /** Nodes without connection to the reference: their voltages are to their own first node. */
        FLOATING,
        /** A constant-power load that pulls its feed below its minimum voltage. */
        OVERLOADED,
        /** A constant-power load that would be below its minimum voltage even if it took nothing. */
        BELOW_MINIMUM
    }

    public NetworkFinding {
        elementIds = List.copyOf(elementIds);
        nodes = List.copyOf(nodes);
    }

    public Kind kind() {
        return (Kind) message.code();
    }

    public String text() {
        return message.text();
    }

    /** Whether the network has no solution for this reason. */
    public boolean preventsSolution() {
        return kind() == Kind.CONFLICTING_SOURCES || kind() == Kind.CURRENT_WITHOUT_RETURN;
    }
}
