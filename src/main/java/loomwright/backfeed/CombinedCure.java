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

/**
 * Remedies that cure a plan together: the one that cures most loads is made, the changed plan is searched again, and so on. A
 * change is taken only if the search of the changed plan looked at as much as the one before, finds fewer loads fed and none
 * that was not. Cost: a search for each round.
 */
final class CombinedCure {
    private static final int MOST_ROUNDS = 5;

    private final Plan plan;
    private final List<Made> made;
    private final Cure cure;

    private CombinedCure(Plan plan, List<Made> made, Cure cure) {
        this.plan = plan;
        this.made = made;
        this.cure = cure;
    }

    /**
     * A change that was made.
     *
     * @param before the plan that it was made to
     * @param cures the loads that are no longer fed because of it
     */
    private record Made(Plan before, Remedy remedy, Set<String> cures) {}

    /**
     * Looks for a cure.
     *
     * @param found what a search of the plan found
     * @param search searches a changed plan
     * @return empty if no remedy helps
     */
    static Optional<CombinedCure> of(Plan plan, BackfeedReport found, Function<Plan, BackfeedReport> search) {
        Plan cured = plan;
        BackfeedReport now = found;
        List<Made> made = new ArrayList<>();
        Optional<Remedy> best = curesMost(now);
        while (best.isPresent() && made.size() < MOST_ROUNDS) {
            Plan next = PlanPatch.apply(cured, best.get().patch());
            BackfeedReport then = search.apply(next);
            if (!isBetter(now, then)) {
                break;
            }
            Set<String> cures = faulty(now);
            cures.removeAll(faulty(then));
            made.add(new Made(cured, best.get(), cures));
            cured = next;
            now = then;
            best = curesMost(now);
        }
        if (made.isEmpty()) {
            return Optional.empty();
        }
        List<String> remaining = List.copyOf(faulty(now));
        List<String> cures =
                faulty(found).stream().filter(load -> !remaining.contains(load)).toList();
        return Optional.of(new CombinedCure(
                plan,
                made,
                new Cure(
                        made.stream().map(one -> one.remedy().change()).toList(),
                        cures,
                        remaining,
                        now.extent(),
                        PlanPatch.between(plan, cured))));
    }

    Cure cure() {
        return cure;
    }

    /** The plan with all changes made but that which cures a load, and what cannot be made without it. */
    Plan withoutCureOf(String load) {
        Plan others = plan;
        for (Made one : made) {
            if (!one.cures().contains(load)) {
                others = PlanPatch.applyBeside(
                                one.before(), others, one.remedy().patch())
                        .orElse(others);
            }
        }
        return others;
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

    /** The remedy that most loads name; of these the best, and of these that of the worst load. */
    private static Optional<Remedy> curesMost(BackfeedReport report) {
        Map<List<PatchOperation>, Integer> loads = new HashMap<>();
        List<Remedy> remedies =
                feeds(report).stream().flatMap(feed -> feed.remedies().stream()).toList();
        remedies.forEach(remedy -> loads.merge(remedy.patch(), 1, Integer::sum));
        return remedies.stream()
                .min(Comparator.<Remedy>comparingInt(remedy -> -loads.getOrDefault(remedy.patch(), 0))
                        .thenComparing(RemedySearch.bestFirst()));
    }
}
