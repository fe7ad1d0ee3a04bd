package loomwright.operation;

/**
 * One way through a part, wire or connector, and the network element that stands for it.
 *
 * @param owner what kind of thing it belongs to
 * @param id of the part, wire or connector
 * @param from terminal at which positive current enters, {@code part.terminal} or {@link Wiring#CHASSIS}
 * @param to terminal at which it leaves
 * @param fromNode node of {@code from}
 * @param toNode node of {@code to}
 */
public record Branch(Owner owner, String id, String from, String to, int fromNode, int toNode) {

    /** What a branch belongs to. */
    public enum Owner {
        PART,
        WIRE,
        CONNECTOR
    }

    /** The node at its other end. */
    public int otherEnd(int node) {
        return node == fromNode ? toNode : fromNode;
    }
}
