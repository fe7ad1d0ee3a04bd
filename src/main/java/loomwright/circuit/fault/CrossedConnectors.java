package loomwright.circuit.fault;

import java.util.List;
import loomwright.circuit.Connector;
import loomwright.circuit.Plan;

/**
 * Two connectors whose halves were exchanged when they were pushed together.
 *
 * @param one connector: its half {@code oneHalf} now sits in the other's {@code otherHalf}
 * @param other connector
 */
public record CrossedConnectors(String one, String oneHalf, String other, String otherHalf) implements SingleFault {
    @Override
    public Kind kind() {
        return Kind.CONNECTORS_CROSSED;
    }

    @Override
    public List<String> ids() {
        return List.of(one, other);
    }

    @Override
    public Plan applyTo(Plan plan) {
        Connector first = connector(plan, one);
        Connector second = connector(plan, other);
        Connector crossedFirst = new Connector(one, List.of(oneHalf, otherHalf), first.contactResistanceOhm());
        Connector crossedSecond = new Connector(
                other, List.of(rest(second, otherHalf), rest(first, oneHalf)), second.contactResistanceOhm());
        return Edits.withConnectors(
                plan,
                plan.connectors().stream()
                        .map(c -> c.equals(first) ? crossedFirst : c.equals(second) ? crossedSecond : c)
                        .toList());
    }

    private static Connector connector(Plan plan, String id) {
        return plan.connectors().stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no connector " + id));
    }

    /** The half that is left. */
    static String rest(Connector connector, String half) {
        return connector.halves().get(connector.halves().get(0).equals(half) ? 1 : 0);
    }
}
