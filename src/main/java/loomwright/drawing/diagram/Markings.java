package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.BackfeedSearch.Searched;
import loomwright.circuit.Condition;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.drawing.diagram.DiagramOptions.Marks;
import loomwright.operation.Step;
import loomwright.review.PlanReview;
import loomwright.review.context.FindingCode;

/**
 * What is pointed out in the drawings of a plan.
 *
 * @param marks of all steps: findings of the review, worst first
 * @param steps what each step shows
 */
record Markings(List<Mark> marks, Map<Step, InStep> steps) {
    /**
     * What one step shows.
     *
     * @param plan as handed in, or with switches and breaker contacts as the worst backfeed of the step needs them
     * @param absent marks of other steps
     * @param fed parts, wires and connectors on the way of the worst backfeed
     */
    record InStep(Plan plan, Set<Mark> absent, Set<String> fed) {}

    /**
     * Points out what the options ask for.
     *
     * @param search looks for unintended feeds; asked only if anything is to be pointed out
     */
    static Markings of(Plan plan, DiagramOptions options, Supplier<Searched> search) {
        Map<Step, InStep> steps = new EnumMap<>(Step.class);
        if (!options.shows(Marks.FINDINGS) && !options.shows(Marks.BACKFEED)) {
            for (Step step : Step.values()) {
                steps.put(step, new InStep(plan, Set.of(), Set.of()));
            }
            return new Markings(List.of(), steps);
        }
        Searched searched = search.get();
        List<Mark> marks = new ArrayList<>();
        for (Finding finding : PlanReview.of(plan, searched).result().findings()) {
            boolean backfeed = isBackfeed(finding) && options.shows(Marks.BACKFEED);
            if (backfeed || options.shows(Marks.FINDINGS)) {
                marks.add(new Mark(
                        backfeed
                                ? Mark.Kind.BACKFEED
                                : Mark.Kind.valueOf(finding.severity().name()),
                        marks.size() + 1,
                        finding.code(),
                        finding.ids(),
                        finding.text(),
                        finding.message().shortText()));
            }
        }
        for (Step step : Step.values()) {
            steps.put(step, inStep(plan, options, searched.report(), step, marks));
        }
        return new Markings(List.copyOf(marks), steps);
    }

    private static boolean isBackfeed(Finding finding) {
        return finding.code().equals(FindingCode.BACKFEED.code());
    }

    /** Takes the worst backfeed of a step, and with it all that happen in the same positions of the switches. */
    private static InStep inStep(
            Plan plan, DiagramOptions options, BackfeedReport report, Step step, List<Mark> marks) {
        Map<UnintendedFeed, Occurrence> here = new LinkedHashMap<>();
        if (options.shows(Marks.BACKFEED)) {
            for (UnintendedFeed feed : report.unintendedFeeds()) {
                occurrence(feed, step)
                        .filter(o -> feed.severity() != Severity.NOTE)
                        .ifPresent(o -> here.put(feed, o));
            }
        }
        Set<Mark> absent = new HashSet<>();
        Set<String> fed = new LinkedHashSet<>();
        Plan drawn = plan;
        Set<String> loads = new HashSet<>();
        if (!here.isEmpty()) {
            Occurrence worst = here.values().iterator().next();
            for (FeedPath path : worst.paths()) {
                path.steps().forEach(one -> fed.add(one.id()));
            }
            drawn = standing(plan, worst.switches());
            here.forEach((feed, occurrence) -> {
                if (occurrence.switches().equals(worst.switches())) {
                    loads.add(feed.load());
                }
            });
        }
        marks.stream()
                .filter(mark ->
                        mark.kind() == Mark.Kind.BACKFEED && mark.ids().stream().noneMatch(loads::contains))
                .forEach(absent::add);
        return new InStep(drawn, absent, fed);
    }

    private static Optional<Occurrence> occurrence(UnintendedFeed feed, Step step) {
        return feed.occurrences().stream().filter(o -> o.step() == step).findFirst();
    }

    /** The plan with its free switches and breakers in given positions. */
    private static Plan standing(Plan plan, Map<String, String> positions) {
        Plan standing = plan;
        for (Map.Entry<String, String> entry : positions.entrySet()) {
            Part part = plan.findPart(entry.getKey()).orElseThrow();
            String wanted = entry.getValue();
            if (part instanceof Switch chosen
                    && !chosen.in(Condition.OFF).name().equals(wanted)) {
                standing = standing.withPart(chosen.withPosition(wanted));
            } else if (part instanceof ContactBreaker breaker
                    && breaker.closedWhenStopped() != wanted.equals("closed")) {
                standing = standing.withPart(new ContactBreaker(
                        breaker.id(),
                        breaker.label(),
                        wanted.equals("closed"),
                        breaker.contactResistanceOhm(),
                        breaker.ratingA()));
            }
        }
        return standing;
    }
}
