package loomwright.backfeed;

import static loomwright.message.Arg.arg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Answer;
import loomwright.answer.Basis;
import loomwright.answer.Caution;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Cure;
import loomwright.backfeed.BackfeedReport.Extent;
import loomwright.backfeed.BackfeedReport.FaultFeeds;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Condition;
import loomwright.circuit.Plan;
import loomwright.circuit.PlanCautions;
import loomwright.message.Arg;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.IntentAssumptions;
import loomwright.operation.PlanAnswer;

/** The unintended feeds of a plan, put so that a person can follow the current with a finger. */
public final class BackfeedAnswer {
    /** The code of the finding of an unintended feed. */
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
        BackfeedReport report = search(plan, options, limits, networkLimits, progress);
        List<Basis> basis = new ArrayList<>(PlanAnswer.basis(plan));
        basis.add(Basis.computed(
                "the path of the current",
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
        BackfeedReport told = shortened(report, options);
        return new Answer<>(
                told,
                working(plan, told),
                basis,
                IntentAssumptions.of(given, id -> codes(report, id)),
                cautions(plan, report));
    }

    private static BackfeedReport search(
            Plan plan, BackfeedOptions options, BackfeedLimits limits, NetworkLimits networkLimits, Progress progress) {
        BackfeedSearch search = new BackfeedSearch(limits, networkLimits);
        BackfeedReport found =
                options.singleFaults() ? search.findWithFaults(plan, progress) : search.find(plan, progress);
        if (!options.cure()) {
            return found;
        }
        Progress rest = new Deadline(limits.timeMs(), progress.untold());
        return CombinedCure.of(plan, found, changed -> search.find(changed, rest))
                .map(cure -> search.judgedBeside(plan, found, cure, rest))
                .orElse(found);
    }

    /** A report with as much of it as is asked for: a whole car has hundreds of paths that nobody follows. */
    private static BackfeedReport shortened(BackfeedReport report, BackfeedOptions options) {
        List<UnintendedFeed> told = report.unintendedFeeds().stream()
                .filter(feed -> feed.severity().compareTo(options.severity()) <= 0)
                .limit(options.limit())
                .map(feed -> shortened(feed, options))
                .toList();
        return new BackfeedReport(
                report.plan(),
                report.extent(),
                told,
                report.unintendedFeeds().size() - told.size(),
                report.reversedWires(),
                report.withFaults().stream()
                        .map(fault -> new FaultFeeds(
                                fault.kind(),
                                fault.ids(),
                                fault.description(),
                                fault.unintendedFeeds().stream()
                                        .map(feed -> shortened(feed, options))
                                        .toList()))
                        .toList(),
                report.cure());
    }

    private static UnintendedFeed shortened(UnintendedFeed feed, BackfeedOptions options) {
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

    private static Arg things(Plan plan, String name, List<String> ids) {
        return Arg.things(name, ids.stream().map(plan::thing).toList());
    }

    /** What was looked at, and what was not. */
    public static List<Message> extent(Plan plan, Extent extent) {
        List<Message> lines = new ArrayList<>();
        lines.add(BackfeedText.COMBINATIONS_SEARCHED.with(
                arg("searched", extent.combinationsSearched()),
                arg("combinations", extent.combinations()),
                arg("all", extent.combinationsSearched() == extent.combinations() ? "yes" : "no")));
        if (!extent.heldSwitches().isEmpty()) {
            lines.add(BackfeedText.HELD_SWITCHES.with(things(plan, "switches", extent.heldSwitches())));
        }
        lines.add(BackfeedText.SWITCH_MOVES.with(arg("moves", extent.switchMoves())));
        if (extent.remediesLeft() > 0) {
            lines.add(BackfeedText.REMEDIES_LEFT.with(arg("remedies", extent.remediesLeft())));
        }
        if (extent.faultsLeft() > 0) {
            lines.add(BackfeedText.FAULTS_LEFT.with(arg("faults", extent.faultsLeft())));
        }
        return lines;
    }

    private static List<Message> working(Plan plan, BackfeedReport report) {
        List<Message> working = new ArrayList<>(extent(plan, report.extent()));
        if (report.notListed() > 0) {
            working.add(BackfeedText.NOT_LISTED.with(arg("notListed", report.notListed())));
        } else if (report.unintendedFeeds().isEmpty()) {
            working.add(BackfeedText.NOTHING_FOUND.with());
        }
        Cure cure = report.cure();
        if (cure != null) {
            working.add(BackfeedText.CURED_TOGETHER.with(
                    things(plan, "cures", cure.cures()),
                    things(plan, "remaining", cure.remaining()),
                    arg("changes", cure.changes().size())));
            working.addAll(cure.changes());
        }
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            working.add(feed.verdict());
            feed.main()
                    .paths()
                    .forEach(path -> working.add(BackfeedText.CURRENT_PATH.with(
                            arg("currentA", path.currentA()), Verdicts.path(plan, path))));
            feed.remedies()
                    .forEach(remedy -> working.add(
                            BackfeedText.REMEDY.with(arg("change", remedy.change()), arg("effect", remedy.effect()))));
        }
        return working;
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
