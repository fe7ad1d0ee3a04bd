package loomwright.review.part;

import static loomwright.message.Arg.arg;

import java.util.List;
import java.util.Optional;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.circuit.Connector;
import loomwright.circuit.ConnectorHalf;
import loomwright.message.Arg;
import loomwright.message.Argument.Thing;
import loomwright.message.Message;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** Whether the two halves of each connector can be pushed together at all. */
public final class ConnectorFit implements Check {
    private static final Basis FIT = Basis.computed(
            "halves fit together if form, width and ways are the same and one is male, the other female; of rings on"
                    + " one stud it does not matter which",
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
        List<Message> obstacles = one.obstacles(other);
        return obstacles.isEmpty()
                ? Optional.empty()
                : Optional.of(Finding.warning(
                                FindingCode.CONNECTOR_HALVES_DO_NOT_FIT.with(
                                        arg(
                                                "connector",
                                                new Thing(connector.id(), connector.id(), Thing.Kind.CONNECTOR)),
                                        arg("half", one.thing()),
                                        arg("otherHalf", other.thing()),
                                        Arg.messages("obstacles", obstacles)),
                                FIT)
                        .remedy(ReviewText.CHECK_CONNECTOR_HALVES.with()));
    }
}
