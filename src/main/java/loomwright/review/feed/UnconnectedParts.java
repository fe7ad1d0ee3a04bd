package loomwright.review.feed;

import static loomwright.message.Arg.arg;

import java.util.List;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Battery;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Part;
import loomwright.operation.Intent;
import loomwright.operation.MissingConnections;
import loomwright.operation.MissingConnections.Kind;
import loomwright.operation.MissingConnections.Missing;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/**
 * Leads that are off and returns that lead nowhere. It is a warning where something stops working by it: at a source, in the
 * ignition, and at a load that should be live, or of which only the feed is missing; otherwise a note.
 */
public final class UnconnectedParts implements Check {
    private static final Basis DRAWN =
            Basis.computed("whether a current can go through a part", "the connections of the plan");

    @Override
    public List<Finding> check(ReviewContext context) {
        return MissingConnections.of(context.plan()).stream()
                .map(missing -> finding(context, missing))
                .toList();
    }

    private static Finding finding(ReviewContext context, Missing missing) {
        Part part = missing.part();
        String terminal = missing.terminal().toString();
        Severity severity = severity(context, missing);
        return missing.kind() == Kind.TERMINAL_NOT_CONNECTED
                ? Finding.of(
                                severity,
                                FindingCode.TERMINAL_NOT_CONNECTED.with(
                                        arg("part", part.thing()), arg("terminal", terminal)),
                                DRAWN)
                        .remedy(ReviewText.CONNECT_TERMINAL.with(arg("terminal", terminal)))
                : Finding.of(
                                severity,
                                FindingCode.NO_RETURN.with(arg("part", part.thing()), arg("terminal", terminal)),
                                DRAWN)
                        .remedy(ReviewText.CONNECT_TO_EARTH.with(arg("terminal", terminal)));
    }

    private static Severity severity(ReviewContext context, Missing missing) {
        Part part = missing.part();
        boolean stops = part instanceof Battery
                || part instanceof Generator
                || part instanceof ContactBreaker
                || part instanceof IgnitionModule
                || (part instanceof Consumer consumer
                        && (missing.terminal().terminal().equals(consumer.feedTerminal())
                                || !Intent.conditions(consumer, context.plan()).isEmpty()));
        return stops ? Severity.WARNING : Severity.NOTE;
    }
}
