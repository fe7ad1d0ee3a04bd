package loomwright.backfeed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Cure;
import loomwright.backfeed.BackfeedReport.Extent;
import loomwright.backfeed.BackfeedReport.PatchOperation;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.circuit.Plan;
import loomwright.message.Message;

/**
 * Remedies that cure a plan together: the one that cures most loads is made, the changed plan is searched again, and so on. A
 * change is taken only if the search of the changed plan looked at as much as the one before, finds fewer loads fed and none
 * that was not. Cost: a search for each round.
 */
final class CombinedCure {
    private static final int MOST_ROUNDS = 5;

    private CombinedCure() {}

    /**
     * Looks for a cure.
     *
     * @param found what a search of the plan found
     * @param search searches a changed plan
     * @return empty if no remedy helps
     */
    static Optional<Cure> of(Plan plan, BackfeedReport found, Function<Plan, BackfeedReport> search) {
        Plan cured = plan;
        BackfeedReport now = found;
        List<Message> changes = new ArrayList<>();
        Optional<Remedy> best = curesMost(now);
        while (best.isPresent() && changes.size() < MOST_ROUNDS) {
            Plan next = PlanPatch.apply(cured, best.get().patch());
            BackfeedReport then = search.apply(next);
            if (!isBetter(now, then)) {
                break;
            }
            cured = next;
            now = then;
            changes.add(best.get().change());
            best = curesMost(now);
        }
        if (changes.isEmpty()) {
            return Optional.empty();
        }
        List<String> remaining = List.copyOf(faulty(now));
        List<String> cures =
                faulty(found).stream().filter(load -> !remaining.contains(load)).toList();
        return Optional.of(new Cure(changes, cures, remaining, now.extent(), PlanPatch.between(plan, cured)));
    }

    /** Loads that are fed to more than a trickle; worst first. */
    private static Set<String> faulty(BackfeedReport report) {
        return feeds(report).stream().map(UnintendedFeed::load).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static List<UnintendedFeed> feeds(BackfeedReport report) {
        return report.unintendedFeeds().stream()
                .filter(feed -> feed.severity() != Severity.NOTE)
                .toList();
    }

    private static boolean isBetter(BackfeedReport before, BackfeedReport after) {
        Extent was = before.extent();
        Extent is = after.extent();
        boolean seenAsMuch =
                is.combinationsSearched() >= was.combinationsSearched() && is.switchMoves() >= was.switchMoves();
        Set<String> fed = faulty(after);
        return seenAsMuch
                && fed.size() < faulty(before).size()
                && faulty(before).containsAll(fed);
    }

    /** The remedy that most loads name; of these the one that costs least, and of these that of the worst load. */
    private static Optional<Remedy> curesMost(BackfeedReport report) {
        Map<List<PatchOperation>, Integer> loads = new HashMap<>();
        List<Remedy> remedies =
                feeds(report).stream().flatMap(feed -> feed.remedies().stream()).toList();
        remedies.forEach(remedy -> loads.merge(remedy.patch(), 1, Integer::sum));
        return remedies.stream()
                .min(Comparator.<Remedy>comparingInt(remedy -> -loads.getOrDefault(remedy.patch(), 0))
                        .thenComparingDouble(Remedy::costV));
    }
}
