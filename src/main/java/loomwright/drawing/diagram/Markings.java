package loomwright.drawing.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import loomwright.answer.Finding;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedLimits;
import loomwright.backfeed.BackfeedReport;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.BackfeedSearch;
import loomwright.circuit.Condition;
import loomwright.circuit.ContactBreaker;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.Switch;
import loomwright.network.NetworkLimits;
import loomwright.operation.FeedStrength;
import loomwright.operation.Step;
import loomwright.review.PlanReview;
import loomwright.review.context.FindingCode;

/**
 * What is pointed out in a drawing.
 *
 * @param plan the plan to draw: as handed in, or with switches and breaker contacts as the worst backfeed of the step
 *     needs them
 * @param fed parts, wires and connectors on the way of the worst backfeed
 * @param changed what stands otherwise than in the plan handed in, id to position
 */
record Markings(Plan plan, List<Mark> marks, Set<String> fed, Map<String, String> changed) {

    static Markings of(
            Plan plan, DiagramOptions options, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        List<Mark> marks = new ArrayList<>();
        Markings drawn = new Markings(plan, List.of(), Set.of(), Map.of());
        if (options.shows(DiagramOptions.Marks.BACKFEED)) {
            BackfeedReport report = new BackfeedSearch(limits, networkLimits).find(plan, progress.part(0, 2));
            drawn = backfeed(plan, report, options.step(), marks);
        }
        if (options.shows(DiagramOptions.Marks.FINDINGS)) {
            boolean told = options.shows(DiagramOptions.Marks.BACKFEED);
            for (Finding finding : PlanReview.of(plan, limits, networkLimits, progress.part(1, 2))
                    .result()
                    .findings()) {
                if (!(told && isBackfeed(finding))) {
                    Mark.Kind kind = Mark.Kind.valueOf(finding.severity().name());
                    marks.add(new Mark(kind, marks.size() + 1, finding.ids(), finding.text()));
                }
            }
        }
        return new Markings(drawn.plan(), List.copyOf(marks), drawn.fed(), drawn.changed());
    }

    private static boolean isBackfeed(Finding finding) {
        return finding.code().equals(FindingCode.BACKFEED.code());
    }

    /** Takes the worst backfeed of a step, and with it all that happen in the same positions of the switches. */
    private static Markings backfeed(Plan plan, BackfeedReport report, Step step, List<Mark> marks) {
        Map<UnintendedFeed, Occurrence> here = new LinkedHashMap<>();
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            occurrence(feed, step).filter(o -> feed.severity() != Severity.NOTE).ifPresent(o -> here.put(feed, o));
        }
        if (here.isEmpty()) {
            return new Markings(plan, List.of(), Set.of(), Map.of());
        }
        Occurrence worst = here.values().iterator().next();
        Map<String, String> positions = worst.switches();
        Set<String> fed = new LinkedHashSet<>();
        for (FeedPath path : worst.paths()) {
            path.steps().forEach(one -> fed.add(one.id()));
        }
        here.forEach((feed, occurrence) -> {
            if (occurrence.switches().equals(positions)) {
                marks.add(
                        new Mark(Mark.Kind.BACKFEED, marks.size() + 1, List.of(feed.load()), words(feed, occurrence)));
            }
        });
        Map<String, String> changed = new HashMap<>();
        return new Markings(standing(plan, positions, changed), List.of(), fed, changed);
    }

    private static String words(UnintendedFeed feed, Occurrence occurrence) {
        String does = occurrence.operated() || occurrence.activity() == FeedStrength.OPERATES
                ? "works"
                : switch (occurrence.activity()) {
                    case HOLDS -> "would stay in, once pulled in,";
                    case GLOWS -> "glows";
                    default -> "gets a trickle";
                };
        return feed.label() + " " + does + " though it should be dead: "
                + DiagramNumbers.volts(occurrence.effectiveV())
                + ", " + DiagramNumbers.amps(occurrence.currentA()) + " (it operates from "
                + DiagramNumbers.volts(occurrence.operateV()) + ").";
    }

    private static Optional<Occurrence> occurrence(UnintendedFeed feed, Step step) {
        return feed.occurrences().stream().filter(o -> o.step() == step).findFirst();
    }

    /** The plan with its free switches and breakers in given positions. */
    private static Plan standing(Plan plan, Map<String, String> positions, Map<String, String> changed) {
        Plan standing = plan;
        for (Map.Entry<String, String> entry : positions.entrySet()) {
            Part part = plan.findPart(entry.getKey()).orElseThrow();
            String wanted = entry.getValue();
            if (part instanceof Switch chosen
                    && !chosen.in(Condition.OFF).name().equals(wanted)) {
                standing = standing.withPart(chosen.withPosition(wanted));
                changed.put(part.id(), wanted);
            } else if (part instanceof ContactBreaker breaker
                    && breaker.closedWhenStopped() != wanted.equals("closed")) {
                standing = standing.withPart(new ContactBreaker(
                        breaker.id(),
                        breaker.label(),
                        wanted.equals("closed"),
                        breaker.contactResistanceOhm(),
                        breaker.ratingA()));
                changed.put(part.id(), wanted);
            }
        }
        return standing;
    }
}
