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
import loomwright.backfeed.BackfeedReport.Extent;
import loomwright.backfeed.BackfeedReport.FaultFeeds;
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
     * @throws loomwright.answer.RejectedInput with all faults of the plan
     */
    public static Answer<BackfeedReport> of(
            Plan given,
            BackfeedOptions options,
            BackfeedLimits limits,
            NetworkLimits networkLimits,
            Progress progress) {
        Plan plan = PlanAnswer.requireSound(given);
        BackfeedSearch search = new BackfeedSearch(limits, networkLimits);
        BackfeedReport report =
                options.singleFaults() ? search.findWithFaults(plan, progress) : search.find(plan, progress);
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        basis.add(Basis.computed(
                "the way of the current",
                "solved currents taken apart into loops, the strongest first: flow decomposition of graph theory"));
        if (options.singleFaults()) {
            basis.add(Basis.commonPractice(
                    "which single faults are plausible, a bad joint of 3 ohm, a short to earth of 0.01 ohm"));
        }
        if (options.clues()) {
            basis.add(Basis.fromMemory(
                    "sneak path, timing, indication and label; line, dome and H patterns",
                    "MIL-STD-785B, task 205, Sneak circuit analysis; RADC-TR-90-109, Integration of Sneak Analysis with"
                            + " Design"));
        }
        return new Answer<>(
                told(report, options),
                Unconverted.lines(working(report)),
                basis,
                IntentAssumptions.of(given, id -> codes(report, id)),
                cautions(plan, report));
    }

    /** A report with as much of it as is asked for: a whole car has hundreds of ways that nobody follows. */
    private static BackfeedReport told(BackfeedReport report, BackfeedOptions options) {
        return new BackfeedReport(
                report.plan(),
                report.extent(),
                report.unintendedFeeds().stream()
                        .limit(options.limit())
                        .map(feed -> told(feed, options))
                        .toList(),
                report.reversedWires(),
                report.withFaults().stream()
                        .map(fault -> new FaultFeeds(
                                fault.kind(),
                                fault.ids(),
                                fault.description(),
                                fault.unintendedFeeds().stream()
                                        .map(feed -> told(feed, options))
                                        .toList()))
                        .toList());
    }

    private static UnintendedFeed told(UnintendedFeed feed, BackfeedOptions options) {
        List<Occurrence> occurrences = new ArrayList<>();
        for (Occurrence occurrence : feed.occurrences()) {
            occurrences.add(occurrences.isEmpty() || options.details() ? occurrence : occurrence.withoutPaths());
        }
        return new UnintendedFeed(
                feed.load(),
                feed.label(),
                feed.severity(),
                feed.verdict(),
                feed.combinations(),
                occurrences,
                feed.remedies(),
                options.clues() ? feed.clues() : List.of());
    }

    private static List<String> codes(BackfeedReport report, String id) {
        return report.unintendedFeeds().stream().anyMatch(feed -> feed.load().equals(id))
                ? List.of(BACKFEED)
                : List.of();
    }

    private static List<String> working(BackfeedReport report) {
        List<String> working = new ArrayList<>();
        Extent extent = report.extent();
        working.add(extent.combinationsSearched() + " of " + extent.combinations()
                + " combinations of free switches and contact points were searched, each in every step.");
        if (!extent.heldSwitches().isEmpty()) {
            working.add("These switches were left as drawn: " + String.join(", ", extent.heldSwitches()) + ".");
        }
        working.add(
                "Then up to " + extent.switchMoves()
                        + " switches were moved one after the other, with the key turned in between, to find relays that stay in.");
        if (report.unintendedFeeds().isEmpty()) {
            working.add("In none of them is a load fed that is not meant to be.");
        }
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            working.add(feed.severity().name().toLowerCase(Locale.ROOT) + ": " + feed.verdict());
            feed.main().paths().forEach(path -> working.add(wayOf(path)));
            for (Remedy remedy : feed.remedies()) {
                working.add("helps: " + remedy.change() + " " + Verdicts.effect(remedy));
            }
        }
        return working;
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
