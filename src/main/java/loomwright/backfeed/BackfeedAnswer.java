package loomwright.backfeed;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.FeedPath;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.message.Unconverted;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.PlanAnswer;

/** The unintended feeds of a plan, told so that a person can follow the current with a finger. */
public final class BackfeedAnswer {
    /** The code under which an unintended feed is told where findings have codes. */
    private static final String BACKFEED = "backfeed";

    private BackfeedAnswer() {}

    /**
     * Searches a plan that a person handed in.
     *
     * @throws loomwright.answer.RejectedInput with all faults of the plan, or OVER_LIMIT if its switches make too many
     *     combinations
     */
    public static Answer<BackfeedReport> of(
            Plan given, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        BackfeedReport report = new BackfeedSearch(limits, networkLimits).find(plan, progress);
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        basis.add(Basis.computed(
                "the way of the current",
                "solved currents taken apart into loops, the strongest first: flow decomposition of graph theory"));
        return new Answer<>(
                report,
                Unconverted.lines(working(report)),
                basis,
                IntentAssumptions.of(given, id -> codes(report, id)),
                cautions(plan, report));
    }

    private static List<String> codes(BackfeedReport report, String id) {
        return report.unintendedFeeds().stream().anyMatch(feed -> feed.load().equals(id))
                ? List.of(BACKFEED)
                : List.of();
    }

    private static List<String> working(BackfeedReport report) {
        List<String> working = new ArrayList<>();
        working.add(report.combinations() + " combinations of free switches and breaker contacts, each in every step.");
        if (report.unintendedFeeds().isEmpty()) {
            working.add("In none of them is a load fed that is not meant to be.");
        }
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            working.add(feed.severity().name().toLowerCase(Locale.ROOT) + ": " + feed.verdict());
            worst(feed).paths().forEach(path -> working.add(wayOf(path)));
            for (Remedy remedy : feed.remedies()) {
                working.add("helps: " + remedy.change() + " " + Verdicts.effect(remedy));
            }
        }
        return working;
    }

    /** The occurrence that the verdict speaks of. */
    private static Occurrence worst(UnintendedFeed feed) {
        return feed.occurrences().stream().min(BackfeedSearch.worstFirst()).orElseThrow();
    }

    private static String wayOf(FeedPath path) {
        return String.format(Locale.ROOT, "%.3g A by: ", path.currentA())
                + path.steps().stream()
                        .map(s -> s.from() + " (" + s.id() + (s.againstFeed() ? ", against its feed" : "") + ")")
                        .collect(Collectors.joining(" > "))
                + " > " + path.steps().get(path.steps().size() - 1).to();
    }

    private static List<Caution> cautions(Plan plan, BackfeedReport report) {
        Set<Caution> cautions = EnumSet.copyOf(PlanCautions.of(plan));
        boolean liveWhenOff = report.unintendedFeeds().stream()
                .flatMap(f -> f.occurrences().stream())
                .anyMatch(o -> o.step().condition() == Condition.OFF);
        if (liveWhenOff) {
            cautions.add(Caution.LIVE_WHEN_OFF);
        }
        return List.copyOf(cautions);
    }
}
