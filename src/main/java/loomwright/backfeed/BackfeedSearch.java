package loomwright.backfeed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.ReversedWire;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanSolver;
import loomwright.operation.Step;

/**
 * Finds every load that is live though it is not meant to be, in every step and every combination of free switches and
 * breaker contacts, by solving them all.
 *
 * <p>Cost: combinations times steps, and for each load found as much again for every remedy tried. Not thread safe.
 */
public final class BackfeedSearch {
    private final BackfeedLimits limits;
    private final PlanSolver solver;

    public BackfeedSearch(BackfeedLimits limits, NetworkLimits networkLimits) {
        this.limits = limits;
        this.solver = new PlanSolver(networkLimits);
    }

    /**
     * Searches a plan.
     *
     * @throws loomwright.answer.RejectedInput OVER_LIMIT if the switches make too many combinations
     */
    public BackfeedReport find(Plan plan, Progress progress) {
        return find(plan, Survey.of(plan, solver, limits.maxCombinations(), progress.part(0, 2)), progress.part(1, 2));
    }

    /**
     * Searches a plan that was solved before.
     *
     * @param survey of that plan
     */
    public BackfeedReport find(Plan plan, Survey survey, Progress progress) {
        Map<String, List<Occurrence>> occurrences = new LinkedHashMap<>();
        for (Consumer consumer : survey.consumers()) {
            List<Occurrence> found = occurrences(survey, consumer);
            if (!found.isEmpty()) {
                occurrences.put(consumer.id(), found);
            }
        }
        List<UnintendedFeed> feeds = new ArrayList<>();
        for (Consumer consumer : survey.consumers()) {
            if (occurrences.containsKey(consumer.id())) {
                feeds.add(feed(plan, survey, consumer, occurrences, progress.part(feeds.size(), occurrences.size())));
            }
        }
        progress.at(1, 1);
        feeds.sort(Comparator.comparing(UnintendedFeed::severity));
        return new BackfeedReport(plan.name(), (int) survey.combinations(), feeds, reversedWires(survey));
    }

    private UnintendedFeed feed(
            Plan plan, Survey survey, Consumer consumer, Map<String, List<Occurrence>> all, Progress progress) {
        List<Occurrence> occurrences = all.getOrDefault(consumer.id(), List.of());
        Occurrence worst = occurrences.stream().min(worstFirst()).orElseThrow();
        boolean wasIn = worstOfSteps(survey, consumer).values().stream()
                .anyMatch(m -> m.solved().step() == worst.step() && m.solved().wasActive(consumer));
        Severity severity = Verdicts.severity(consumer, worst.activity(), worst.operated());
        RemedyTrial trial = new RemedyTrial(survey, consumer, solver, limits.maxCombinations());
        // A trickle does nothing that would be worth a part.
        List<Candidate> candidates = severity == Severity.NOTE
                ? List.of()
                : RemedyCandidates.list(plan, survey, consumer, all).stream()
                        .limit(limits.maxTrials())
                        .toList();
        List<Remedy> remedies = new ArrayList<>();
        for (int i = 0; i < candidates.size(); i++) {
            trial.run(candidates.get(i), progress.part(i, candidates.size())).ifPresent(remedies::add);
        }
        // What leaves a load starved that another remedy restores would hide the fault, such as a lost earth.
        int restored =
                remedies.stream().mapToInt(r -> r.restores().size()).max().orElse(0);
        remedies.removeIf(r -> r.restores().size() < restored);
        remedies.sort(Comparator.comparingDouble(Remedy::costV));
        return new UnintendedFeed(
                consumer.id(),
                consumer.displayName(),
                severity,
                Verdicts.verdict(consumer, worst, wasIn),
                occurrences,
                remedies);
    }

    /** The strongest first, what is pulled in before what is not. */
    public static Comparator<Occurrence> worstFirst() {
        return Comparator.comparing(Occurrence::activity)
                .thenComparing(Occurrence::operated, Comparator.reverseOrder())
                .thenComparing(Occurrence::effectiveV, Comparator.reverseOrder());
    }

    private List<Occurrence> occurrences(Survey survey, Consumer consumer) {
        return worstOfSteps(survey, consumer).values().stream()
                .map(m -> occurrence(consumer, m))
                .toList();
    }

    /** The worst moment of each step; of two alike the one that is nearer to the plan as it stands. */
    private static Map<Step, Moment> worstOfSteps(Survey survey, Consumer consumer) {
        Map<Step, Moment> worst = new EnumMap<>(Step.class);
        for (Moment moment : survey.solvedMoments()) {
            if (moment.isUnintended(consumer)) {
                worst.merge(moment.solved().step(), moment, (a, b) -> worse(consumer, a, b));
            }
        }
        return worst;
    }

    private static Moment worse(Consumer consumer, Moment a, Moment b) {
        return Comparator.<Moment, FeedStrength>comparing(m -> m.solved().activity(consumer))
                                .thenComparing(m -> !m.isPulledIn(consumer))
                                .thenComparing(m -> m.situation().changes())
                                .compare(a, b)
                        <= 0
                ? a
                : b;
    }

    private Occurrence occurrence(Consumer consumer, Moment moment) {
        var solved = moment.solved();
        FeedStrength.Limits limitsV =
                FeedStrength.limits(consumer, solved.plan().system());
        FeedPaths.Found found = FeedPaths.find(solved, solved.findBranch(consumer), limits.maxPaths());
        return new Occurrence(
                solved.step(),
                solved.step().description(),
                moment.situation().positions(),
                solved.activity(consumer),
                moment.isPulledIn(consumer),
                solved.effectiveV(consumer),
                limitsV.operateV(),
                limitsV.releaseV(),
                Math.abs(solved.currentA(consumer)),
                found.paths(),
                found.complete());
    }

    private static List<ReversedWire> reversedWires(Survey survey) {
        Map<String, ReversedWire> strongest = new LinkedHashMap<>();
        for (Moment moment : survey.solvedMoments()) {
            List<Branch> branches = moment.solved().branches();
            for (int i = 0; i < branches.size(); i++) {
                if (moment.solved().isAgainstFeed(i)) {
                    strongest.merge(
                            branches.get(i).id(),
                            new ReversedWire(
                                    branches.get(i).id(),
                                    moment.solved().step(),
                                    moment.situation().positions(),
                                    Math.abs(moment.solved().currentA(i))),
                            (a, b) -> b.currentA() > a.currentA() * (1 + 1e-9) ? b : a);
                }
            }
        }
        return strongest.values().stream()
                .sorted(Comparator.comparingDouble(ReversedWire::currentA).reversed())
                .toList();
    }
}
