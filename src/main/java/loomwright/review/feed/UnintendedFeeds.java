package loomwright.review.feed;

import static loomwright.review.context.FindingWording.figure;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.PathStep;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.BackfeedSearch;
import loomwright.backfeed.Verdicts;
import loomwright.operation.Branch;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;

/** The loads that are live though they are not meant to be, with the way of most current and the cheapest remedy. */
public final class UnintendedFeeds implements Check {
    private static final Basis WAY = Basis.computed(
            "the way of the current",
            "solved currents taken apart into loops, the strongest first: flow decomposition");

    /** Below this share of the nominal voltage no test lamp shows a trickle. */
    private static final double NOTICEABLE = 0.05;

    @Override
    public List<Finding> check(ReviewContext context) {
        double noticeableV = NOTICEABLE * context.plan().system().nominalVoltageV();
        return context.backfeed().unintendedFeeds().stream()
                .filter(feed -> feed.severity() != Severity.NOTE || worst(feed).effectiveV() >= noticeableV)
                .map(UnintendedFeeds::finding)
                .toList();
    }

    private static Occurrence worst(UnintendedFeed feed) {
        return feed.occurrences().stream().min(BackfeedSearch.worstFirst()).orElseThrow();
    }

    private static Finding finding(UnintendedFeed feed) {
        Occurrence worst = worst(feed);
        Set<String> ids = new LinkedHashSet<>(List.of(feed.load()));
        worst.paths().stream()
                .limit(1)
                .flatMap(path -> path.steps().stream())
                .filter(step -> step.owner() == Branch.Owner.WIRE)
                .forEach(step -> ids.add(step.id()));
        return FindingCode.BACKFEED.finding(
                feed.severity(),
                List.copyOf(ids),
                feed.verdict() + "." + way(worst.paths()),
                List.of(
                        figure("effectiveV", worst.effectiveV()),
                        figure("operateV", worst.operateV()),
                        figure("currentA", worst.currentA()),
                        figure(FindingWording.TIMES_LIMIT, worst.effectiveV() / worst.operateV())),
                WAY,
                feed.remedies().stream()
                        .findFirst()
                        .map(r -> r.change() + " " + Verdicts.effect(r))
                        .orElse(null));
    }

    private static String way(List<FeedPath> paths) {
        if (paths.isEmpty()) {
            return "";
        }
        StringBuilder text = new StringBuilder(" The current comes by ");
        String separator = "";
        for (PathStep step : paths.get(0).steps()) {
            text.append(separator).append(step.id()).append(step.againstFeed() ? " (backwards)" : "");
            separator = ", ";
        }
        return text.append('.').toString();
    }
}
