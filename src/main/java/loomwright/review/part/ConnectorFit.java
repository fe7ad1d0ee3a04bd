package loomwright.review.part;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;

/** Whether the two halves of each connector can be pushed together at all. */
public final class ConnectorFit implements Check {
    private static final Basis FIT = Basis.computed(
            "halves fit together if form, width and ways are the same and one is male, the other female; of rings on one"
                    + " stud it does not matter which",
            "comparison");

    @Override
    public List<Finding> check(ReviewContext context) {
        return context.plan().connectors().stream()
                .flatMap(connector ->
                        judge(connector, half(context, connector, 0), half(context, connector, 1)).stream())
                .toList();
    }

    private static ConnectorHalf half(ReviewContext context, Connector connector, int index) {
        return (ConnectorHalf)
                context.plan().findPart(connector.halves().get(index)).orElseThrow();
    }

    private static Optional<Finding> judge(Connector connector, ConnectorHalf one, ConnectorHalf other) {
        List<String> obstacles = one.obstacles(other);
        return obstacles.isEmpty()
                ? Optional.empty()
                : Optional.of(FindingCode.CONNECTOR_HALVES_DO_NOT_FIT.finding(
                        Severity.WARNING,
                        List.of(connector.id(), one.id(), other.id()),
                        one.displayName() + " and " + other.displayName() + " of connector " + connector.id()
                                + " do not fit together: " + String.join("; ", obstacles) + ".",
                        List.of(),
                        FIT,
                        "Look at both halves and set them right in the plan; if they are so, change one for a half that"
                                + " fits, or join the wires in another way."));
    }
}
