package loomwright.backfeed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.PatchOperation;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.PlanSolver;
import org.jspecify.annotations.Nullable;

/**
 * Remedies against what a search found. Each candidate is tried where its load is fed; of those that help, the best are proved
 * on every combination at hand, and a search of the changed plan must find nothing new.
 *
 * <p>Cost: for each candidate some solutions, for each proof one of every combination and a search of the changed plan, which
 * serves all loads. How much is tried is bounded by number; the clock only ends it, and what is left is counted. May be used by
 * several threads.
 */
final class RemedySearch {
    /** In how many combinations a plan with a remedy in it is searched again for what the remedy brings about. */
    private static final int PROOF_COMBINATIONS = 256;

    /** How many moves of switches and key are tried there. */
    private static final int PROOF_MOVES = 5_000;

    /** Costs that differ by less are the same. */
    private static final double SAME_V = 1e-5;

    /** How many remedies of a load are reported. */
    private static final int TOLD = 3;

    private final Plan plan;
    private final Survey survey;
    /** Of no moment before a remedy is tried, see {@link RemedyTrial#figures}. */
    private List<LoadFigures> figures = List.of();

    private final BackfeedLimits limits;
    private final NetworkLimits networkLimits;
    private final FeedSearch proof;
    /** By id of each load that is fed, before anything is changed. */
    private final Map<String, Severity> before = new HashMap<>();

    private final Map<String, List<Occurrence>> occurrences = new HashMap<>();
    private final Map<List<PatchOperation>, Proof> proved = new ConcurrentHashMap<>();

    /**
     * Prepares a search.
     *
     * @param survey the combinations that remedies are proved on
     * @param judged all loads that are fed
     */
    RemedySearch(Survey survey, List<Judged> judged, BackfeedLimits limits, NetworkLimits networkLimits) {
        this.plan = survey.plan();
        this.survey = survey;
        this.limits = limits;
        this.networkLimits = networkLimits;
        int combinations = Math.min(PROOF_COMBINATIONS, limits.maxCombinations());
        this.proof = new FeedSearch(
                new BackfeedLimits(combinations, limits.solvedCombinations(), 1, 1, limits.timeMs()),
                networkLimits,
                PROOF_MOVES);
        judged.forEach(one -> {
            before.put(one.load().id(), one.severity());
            occurrences.put(one.load().id(), one.occurrences());
        });
    }

    /**
     * Remedies of a load.
     *
     * @param left candidates that were not tried, or not to the end
     */
    record Remedies(List<Remedy> found, int left) {}

    /** A candidate, and what it does where its load is fed. */
    private record Tried(RemedyTrial.Made made, Remedy remedy) {}

    /**
     * Looks for remedies of one load.
     *
     * @param fedAt the settings in which it is fed, as {@link Situations.Situation#setting}
     * @param progress may end it; then what was found is handed back
     */
    Remedies find(Judged judged, Set<List<Integer>> fedAt, Progress progress) {
        // A trickle does nothing that would be worth a part, and a question asks first.
        if (judged.severity() == Severity.NOTE) {
            return new Remedies(List.of(), 0);
        }
        return find(judged, fedAt, RemedyCandidates.list(plan, survey, judged.load(), occurrences), progress);
    }

    /** The same among given candidates. */
    Remedies find(Judged judged, Set<List<Integer>> fedAt, List<Candidate> listed, Progress progress) {
        RemedyTrial trial = new RemedyTrial(
                survey,
                figures(),
                judged.load(),
                new PlanSolver(networkLimits),
                judged.cases().cases(),
                fedAt);
        List<Candidate> candidates = listed.subList(0, Math.min(listed.size(), limits.maxTrials()));
        List<Remedy> remedies = new ArrayList<>();
        int done = 0;
        try {
            List<Tried> helping = new ArrayList<>();
            for (int i = 0; i < candidates.size(); i++) {
                RemedyTrial.Made made = trial.make(candidates.get(i));
                Optional<Remedy> helps = trial.runWhereFed(made, progress.untold());
                helps.ifPresent(remedy -> helping.add(new Tried(made, remedy)));
                done += helps.isPresent() ? 0 : 1;
                progress.at(i, 2L * candidates.size());
            }
            helping.sort(Comparator.comparing(Tried::remedy, bestFirst()));
            for (int i = 0; i < helping.size(); i++) {
                Candidate candidate = helping.get(i).made().candidate();
                if (hasRoom(remedies, candidate.kind()) && (mends(candidate.kind()) || !mends(remedies))) {
                    Optional<Remedy> remedy = trial.run(helping.get(i).made(), progress.untold());
                    if (remedy.isPresent()
                            && bringsNothingNew(helping.get(i).made().changed(), remedy.get(), judged, progress)) {
                        remedies.add(remedy.get());
                    }
                }
                done++;
                progress.at(helping.size() + (long) i, 2L * helping.size());
            }
        } catch (OutOfTime over) {
            // What was found is reported, and how many changes there was no time to try.
            return new Remedies(sorted(remedies), listed.size() - done);
        }
        return new Remedies(sorted(remedies), listed.size() - candidates.size());
    }

    private synchronized List<LoadFigures> figures() {
        if (figures.isEmpty()) {
            figures = RemedyTrial.figures(survey);
        }
        return figures;
    }

    /** Whether one more is reported: three that surely hold, and one that needs what the plan does not show. */
    private static boolean hasRoom(List<Remedy> remedies, Remedy.Kind kind) {
        long alike = remedies.stream()
                .filter(remedy -> remedy.kind().depends() == kind.depends())
                .count();
        return alike < (kind.depends() ? 1 : TOLD);
    }

    private static boolean mends(Remedy.Kind kind) {
        return kind == Remedy.Kind.REPAIR;
    }

    /** Whether a bad joint or earth is the cause: then no part is added and no wire taken out to get round it. */
    private static boolean mends(List<Remedy> remedies) {
        return remedies.stream().anyMatch(remedy -> mends(remedy.kind()));
    }

    /**
     * What mends first, then what restores most, then what needs nothing that the plan does not show, then what costs least; of
     * equal cost what takes least work.
     */
    static Comparator<Remedy> bestFirst() {
        return Comparator.<Remedy, Boolean>comparing(r -> !mends(r.kind()))
                .thenComparingInt(r -> -r.restoredLoads().size())
                .thenComparing(r -> r.kind().depends())
                .thenComparing(r -> Math.round(r.costV() / SAME_V))
                .thenComparing(r -> r.kind().effort());
    }

    private static List<Remedy> sorted(List<Remedy> remedies) {
        // What leaves a load starved that another remedy restores would hide the fault, such as a lost earth.
        int restored =
                remedies.stream().mapToInt(r -> r.restoredLoads().size()).max().orElse(0);
        remedies.removeIf(r -> !mends(r.kind()) && r.restoredLoads().size() < restored);
        remedies.sort(bestFirst());
        return remedies;
    }

    /**
     * Whether a search of the plan with the change, sequences of moves included, finds the load no more than a trickle, and no
     * other load of more weight than before.
     */
    private boolean bringsNothingNew(Plan changed, Remedy remedy, Judged cured, Progress progress) {
        return proved.computeIfAbsent(remedy.patch(), patch -> new Proof(changed, progress))
                .holds(load ->
                        load.equals(cured.load().id()) ? Severity.NOTE : before.getOrDefault(load, Severity.NOTE));
    }

    /** How loads are fed in a changed plan. */
    private final class Proof {
        private final Plan changed;
        private final FeedSearch.Decided decided;
        /** By load, once its cases were judged: most are seen to be harmless without. */
        private final Map<Integer, Severity> judged = new HashMap<>();

        private final SearchClock clock;
        private @Nullable NormalWays normal;

        Proof(Plan changed, Progress progress) {
            this.changed = changed;
            this.clock = new SearchClock(progress.untold(), limits.timeMs(), PROOF_COMBINATIONS);
            this.decided = proof.decide(changed, clock);
            checkClock();
        }

        private void checkClock() {
            if (!clock.at(0)) {
                throw new OutOfTime(BackfeedText.NO_TIME_FOR_REMEDY.with());
            }
        }

        /**
         * Whether no load is fed worse than it may be.
         *
         * @param atWorst by id of a load
         */
        synchronized boolean holds(Function<String, Severity> atWorst) {
            List<Consumer> loads = decided.consumers();
            for (int c = 0; c < loads.size(); c++) {
                Consumer load = loads.get(c);
                Severity allowed = atWorst.apply(load.id());
                // By what it does alone; where it is fed by its own way that may be too severe.
                boolean harmless = decided.feeds(c)
                        .allMatch(feed -> Verdicts.severity(load, feed.strength(), feed.pulledIn())
                                        .compareTo(allowed)
                                >= 0);
                if (!harmless && judged(c).compareTo(allowed) < 0) {
                    return false;
                }
            }
            return true;
        }

        private Severity judged(int consumer) {
            Severity known = judged.get(consumer);
            if (known == null) {
                Consumer load = decided.consumers().get(consumer);
                List<FeedCase> cases = decided.cases(consumer);
                known = cases.isEmpty()
                        ? Severity.NOTE
                        : Judged.of(load, new FeedSearch.LoadCases(cases.size(), cases), normal(), decided.settings())
                                .severity();
                judged.put(consumer, known);
                checkClock();
            }
            return known;
        }

        private NormalWays normal() {
            NormalWays known = normal;
            if (known == null) {
                // The ways of loads show with each switch moved alone.
                int simple = Math.min(
                        limits.solvedCombinations(),
                        1 + Situations.open(changed).size());
                known = new NormalWays(
                        Survey.of(changed, new PlanSolver(networkLimits), Situations.list(changed, simple), clock));
                normal = known;
            }
            return known;
        }
    }
}
