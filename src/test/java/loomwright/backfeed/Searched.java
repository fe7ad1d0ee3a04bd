package loomwright.backfeed;

import java.util.Optional;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.Step;

/** A plan's backfeed report, asked in the words of a test. */
record Searched(BackfeedReport report) {
    static Searched of(Plan plan) {
        return new Searched(
                new BackfeedSearch(BackfeedLimits.defaults(), NetworkLimits.defaults()).find(plan, Progress.UNWATCHED));
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
