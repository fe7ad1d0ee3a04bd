package loomwright.review.feed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.circuit.Battery;
import loomwright.circuit.Condition;
import loomwright.circuit.Consumer;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Generator;
import loomwright.circuit.IgnitionModule;
import loomwright.circuit.Joint;
import loomwright.circuit.Motor;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Stabiliser;
import loomwright.circuit.TerminalRef;
import loomwright.message.Arg;
import loomwright.message.Argument;
import loomwright.operation.Intent;
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
        List<Finding> findings = new ArrayList<>();
        Map<TerminalRef, List<Missing>> returns = new LinkedHashMap<>();
        for (Missing missing : context.missing()) {
            if (missing.kind() == Kind.TERMINAL_NOT_CONNECTED) {
                findings.add(leadOff(context, missing));
            } else {
                returns.computeIfAbsent(missing.at(), key -> new ArrayList<>()).add(missing);
            }
        }
        returns.forEach((at, lost) -> findings.add(lostReturn(context, at, lost)));
        return findings;
    }

    private static Finding leadOff(ReviewContext context, Missing missing) {
        String terminal = missing.terminal().toString();
        return Finding.of(
                        severity(context, missing),
                        FindingCode.TERMINAL_NOT_CONNECTED.with(
                                arg("part", missing.part().thing()),
                                arg("terminal", terminal),
                                arg("stabiliser", missing.part() instanceof Stabiliser ? "yes" : "no")),
                        DRAWN)
                .remedy(ReviewText.CONNECT_TERMINAL.with(arg("terminal", terminal)));
    }

    /** Returns that end at one place are one fault: the engine without a strap to the body takes all that is bolted to it. */
    private static Finding lostReturn(ReviewContext context, TerminalRef at, List<Missing> lost) {
        Severity severity = lost.stream()
                .map(missing -> severity(context, missing))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        Plan plan = context.plan();
        Part end = plan.findPart(at.part()).orElseThrow();
        Argument place = end instanceof Joint ? end.thing() : new Argument.Nested(plan.describe(at));
        boolean starter = lost.stream()
                .map(Missing::part)
                .anyMatch(part -> part instanceof Motor motor
                        && Intent.conditions(motor, plan).equals(List.of(Condition.CRANK)));
        List<String> ids = new ArrayList<>(
                lost.stream().map(missing -> missing.part().id()).toList());
        ids.add(end.id());
        return Finding.of(
                        severity,
                        FindingCode.NO_RETURN.with(
                                Arg.things(
                                        "parts",
                                        lost.stream()
                                                .map(missing -> missing.part().thing())
                                                .toList()),
                                arg("place", place)),
                        DRAWN)
                .about(ids.stream().distinct().toList())
                .remedy(ReviewText.CONNECT_TO_EARTH.with(arg("place", place), arg("starter", starter ? "yes" : "no")));
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
