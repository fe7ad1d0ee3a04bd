package loomwright.review.wire;

import static loomwright.message.Arg.arg;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.ReversedWire;
import loomwright.circuit.Plan;
import loomwright.operation.Step;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/**
 * Directed wires that carry current backwards, but for those that a backfeed was told of; those with the same current at
 * the same time, which follow each other, together.
 */
public final class ReversedWires implements Check {
    private static final Basis SOLVED = Basis.computed("the direction of a solved current", "Kirchhoff's laws");

    private record Place(Step step, Map<String, String> switches, double currentA) {}

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
                                new Place(wire.step(), wire.switches(), toThreeDigits(wire.currentA())),
                                key -> new ArrayList<>())
                        .add(wire));
        return together.values().stream()
                .map(wires -> finding(context.plan(), wires))
                .toList();
    }

    /** Currents that differ by rounding alone are one. */
    private static double toThreeDigits(double currentA) {
        return new BigDecimal(currentA).round(new MathContext(3)).doubleValue();
    }

    private static Finding finding(Plan plan, List<ReversedWire> wires) {
        ReversedWire first = wires.get(0);
        List<String> ids = wires.stream().map(ReversedWire::wire).toList();
        return Finding.note(
                        FindingCode.REVERSED_WIRE.with(
                                FindingWording.things("wires", plan, ids),
                                arg("currentA", first.currentA()),
                                FindingWording.when(plan, first.step(), first.switches())),
                        SOLVED)
                .remedy(ReviewText.SEPARATE_FEEDS.with());
    }
}
