package loomwright.backfeed;

import java.util.Optional;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanSolver;
import loomwright.operation.Step;

/** A plan's backfeed report, asked in the words of a test. */
record Searched(BackfeedReport report) {
    /** As usual, but for a clock that a slow machine might reach. */
    private static final BackfeedLimits LIMITS = new BackfeedLimits(262_144, 64, 6, 40, 3_600_000);

    static Searched of(Plan plan) {
        return new Searched(new BackfeedSearch(LIMITS, NetworkLimits.defaults()).find(plan, Progress.UNWATCHED));
    }

    /** All combinations of a plan of few switches, with all figures. */
    static Survey survey(Plan plan, PlanSolver solver) {
        return Survey.of(
                plan, solver, Situations.list(plan, 64), new SearchClock(Progress.UNWATCHED, Long.MAX_VALUE, 64));
    }

    Optional<UnintendedFeed> find(String load) {
        return report.unintendedFeeds().stream()
                .filter(f -> f.load().equals(load))
                .findFirst();
    }

    UnintendedFeed feed(String load) {
        return find(load).orElseThrow(() -> new AssertionError(load + " is not fed unasked"));
    }

    Occurrence at(String load, Step step) {
        return feed(load).occurrences().stream()
                .filter(o -> o.step() == step)
                .findFirst()
                .orElseThrow(() -> new AssertionError(load + " is not fed unasked, " + step.description()));
    }

    Remedy remedy(String load, Remedy.Kind kind, String at) {
        return feed(load).remedies().stream()
                .filter(r -> r.kind() == kind && r.at().equals(at))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + kind + " at " + at));
    }
}
