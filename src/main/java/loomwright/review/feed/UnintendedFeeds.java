package loomwright.review.feed;

import static loomwright.message.Arg.arg;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Basis;
import loomwright.answer.Finding;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.Verdicts;
import loomwright.circuit.FilamentLamp;
import loomwright.circuit.Plan;
import loomwright.message.Arg;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.review.context.Check;
import loomwright.review.context.FindingCode;
import loomwright.review.context.FindingWording;
import loomwright.review.context.ReviewContext;
import loomwright.review.context.ReviewText;

/** The loads that are live though they should not be, with the path of most current and the cheapest remedy. */
public final class UnintendedFeeds implements Check {
    private static final Basis WAY = Basis.computed(
            "the path of the current",
            "solved currents taken apart into loops, the strongest first: flow decomposition");

    /** Below this share of the nominal voltage no test lamp shows a trickle. */
    private static final double NOTICEABLE = 0.05;

    @Override
    public List<Finding> check(ReviewContext context) {
        double noticeableV = NOTICEABLE * context.plan().system().nominalVoltageV();
        return context.backfeed().unintendedFeeds().stream()
                .filter(feed -> feed.severity() != Severity.NOTE || isNoticed(context, feed, noticeableV))
                .map(feed -> finding(context.plan(), feed))
                .toList();
    }

    /** A trickle that a test lamp shows; in a lamp of the vehicle it is one that nobody sees. */
    private static boolean isNoticed(ReviewContext context, UnintendedFeed feed, double noticeableV) {
        boolean darkLamp = feed.main().level().activity() == FeedStrength.LEAKS
                && context.plan().findPart(feed.load()).orElseThrow() instanceof FilamentLamp;
        return !darkLamp && feed.main().level().effectiveV() >= noticeableV;
    }

    private static Finding finding(Plan plan, UnintendedFeed feed) {
        Occurrence worst = feed.main();
        Set<String> ids = new LinkedHashSet<>(List.of(feed.load()));
        worst.paths().stream()
                .limit(1)
                .flatMap(path -> path.steps().stream())
                .filter(step -> step.owner() == Branch.Owner.WIRE)
                .forEach(step -> ids.add(step.id()));
        return Finding.of(
                        feed.severity(),
                        FindingCode.BACKFEED.with(
                                arg("effectiveV", worst.level().effectiveV()),
                                arg("operateV", worst.level().operateV()),
                                arg("currentA", worst.level().currentA()),
                                FindingWording.limitRatio(
                                        worst.level().effectiveV(),
                                        worst.level().operateV()),
                                arg("verdict", feed.verdict()),
                                worst.paths().isEmpty()
                                        ? Arg.messages("path", List.of())
                                        : Verdicts.path(plan, worst.paths().get(0))),
                        WAY)
                .about(List.copyOf(ids))
                .remedy(feed.remedies().stream()
                        .findFirst()
                        .map(r -> ReviewText.REMEDY_OF_BACKFEED.with(
                                arg("change", r.change()), arg("effect", r.effect())))
                        .orElse(null));
    }
}
