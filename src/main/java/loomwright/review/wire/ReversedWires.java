package loomwright.review.wire;

import static loomwright.review.context.FindingWording.number;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.ReversedWire;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;

/**
 * Directed wires that carry current backwards, but for those that a backfeed was told of; those with the same current at
 * the same time, which follow each other, together.
 */
public final class ReversedWires implements Check {
    private static final Basis SOLVED = Basis.computed("the direction of a solved current", "Kirchhoff's laws");

    private record Place(Step step, Map<String, String> switches, String currentA) {}

    @Override
    public List<Finding> check(ReviewContext context) {
        Set<String> told = context.backfeed().unintendedFeeds().stream()
                .flatMap(feed -> feed.occurrences().stream())
                .flatMap(occurrence -> occurrence.paths().stream())
                .flatMap(path -> path.steps().stream())
                .filter(PathStep::againstFeed)
                .map(PathStep::id)
                .collect(Collectors.toSet());
        Map<Place, List<ReversedWire>> together = new LinkedHashMap<>();
        context.backfeed().reversedWires().stream()
                .filter(wire -> !told.contains(wire.wire()))
                .forEach(wire -> together.computeIfAbsent(
                                new Place(wire.step(), wire.switches(), number(wire.currentA())),
                                key -> new ArrayList<>())
                        .add(wire));
        return together.values().stream().map(ReversedWires::finding).toList();
    }

    private static Finding finding(List<ReversedWire> wires) {
        ReversedWire first = wires.get(0);
        List<String> ids = wires.stream().map(ReversedWire::wire).toList();
        return FindingCode.REVERSED_WIRE.finding(
                Severity.NOTE,
                ids,
                (ids.size() == 1 ? "Wire " : "Wires ") + String.join(", ", ids)
                        + (ids.size() == 1 ? " carries " : " carry ") + number(first.currentA())
                        + " A against the direction of feed, "
                        + FindingWording.words(first.step().description(), first.switches())
                        + ": current comes from where none should. It feeds nothing that is meant to be dead.",
                List.of(FindingWording.figure("currentA", first.currentA())),
                SOLVED,
                "A diode in it, or a contact that opens it at that time, keeps the feeds apart.");
    }
}
