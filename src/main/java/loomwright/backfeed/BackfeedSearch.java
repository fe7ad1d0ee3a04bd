package loomwright.backfeed;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import loomwright.answer.Deadline;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.FaultFeeds;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.ReversedWire;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.FeedSearch.LoadCases;
import loomwright.backfeed.Situations.Situation;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.network.NetworkLimits;
import loomwright.operation.Branch;
import loomwright.operation.FeedStrength;
import loomwright.operation.PlanSolver;
import loomwright.operation.SwitchSettings;

/**
 * The loads that {@link FeedSearch} finds live though they are not meant to be, judged, with remedies that were tried.
 *
 * <p>Cost: that of the search, and for each remedy tried a solution of each combination that remedies are proved on. Not
 * thread safe.
 */
public final class BackfeedSearch {
    /** In how many combinations a plan with a remedy in it is searched again for what the remedy brings about. */
    private static final int PROOF_COMBINATIONS = 1024;

    /** How long that may take for one remedy. */
    private static final int PROOF_MS = 500;

    /** Of the time of a search, what is spent on remedies for all loads together: one part in so many. */
    private static final int REMEDY_SHARE = 2;

    private final BackfeedLimits limits;
    private final PlanSolver solver;
    private final FeedSearch search;
    /** Looks at a plan with a remedy in it. */
    private final FeedSearch proof;

    public BackfeedSearch(BackfeedLimits limits, NetworkLimits networkLimits) {
        this.limits = limits;
        this.solver = new PlanSolver(networkLimits);
        this.search = new FeedSearch(limits, networkLimits);
        this.proof = new FeedSearch(
                new BackfeedLimits(
                        Math.min(PROOF_COMBINATIONS, limits.maxCombinations()),
                        limits.solvedCombinations(),
                        1,
                        1,
                        PROOF_MS),
                networkLimits);
    }

    /** Searches a plan. */
    public BackfeedReport find(Plan plan, Progress progress) {
        return find(plan, Survey.of(plan, solver, limits.solvedCombinations(), progress.part(0, 3)), progress, false);
    }

    /** As {@link #find(Plan, Progress)}, and once more with each single fault. */
    public BackfeedReport findWithFaults(Plan plan, Progress progress) {
        return find(plan, Survey.of(plan, solver, limits.solvedCombinations(), progress.part(0, 3)), progress, true);
    }

    /**
     * Searches a plan of which combinations were solved before.
     *
     * @param survey of that plan
     */
    public BackfeedReport find(Plan plan, Survey survey, Progress progress) {
        return find(plan, survey, progress, false);
    }

    private BackfeedReport find(Plan plan, Survey survey, Progress progress, boolean singleFaults) {
        List<SingleFault> faults = singleFaults ? SingleFaults.list(plan) : List.of();
        FeedSearch.Found found =
                search.find(plan, new SearchClock(progress.part(1, 3), limits.timeMs(), combinations(plan)));
        Survey proving = proving(plan, survey, found);
        Set<String> bothWays = Clues.bothWays(survey.moments());
        NormalWays normal = new NormalWays(survey);
        Map<String, List<Occurrence>> occurrences = new LinkedHashMap<>();
        Map<String, Severity> before = new HashMap<>();
        List<Judged> judged = new ArrayList<>();
        found.cases().forEach((load, cases) -> {
            Judged one = Judged.of(load, cases, normal, found);
            judged.add(one);
            before.put(load.id(), one.severity());
            occurrences.put(load.id(), one.occurrences());
        });
        List<UnintendedFeed> feeds = new ArrayList<>();
        // All loads share the time for remedies; the worst come first.
        judged.sort(Comparator.comparing(Judged::severity));
        Progress remedyTime = new Deadline(limits.timeMs() / REMEDY_SHARE, progress.part(2, 3));
        for (int i = 0; i < judged.size(); i++) {
            Judged one = judged.get(i);
            feeds.add(one.feed(
                    remedies(plan, proving, one, occurrences, before, remedyTime.part(i, judged.size())), bothWays));
        }
        feeds.sort(Comparator.comparing(UnintendedFeed::severity).thenComparing(UnintendedFeed::load));
        return new BackfeedReport(
                plan.name(), found.extent(), feeds, reversedWires(survey), withFaults(plan, faults, normal, progress));
    }

    private long combinations(Plan plan) {
        return SwitchSettings.of(plan)
                .count()
                .min(BigInteger.valueOf(limits.maxCombinations()))
                .longValueExact();
    }

    /** What remedies are proved on: the combinations solved anyway, and those in which a load is fed. */
    private Survey proving(Plan plan, Survey survey, FeedSearch.Found found) {
        Set<List<Integer>> known = new HashSet<>();
        survey.situations().forEach(s -> known.add(s.setting()));
        List<List<Part>> open = Situations.open(plan);
        List<Situation> more = new ArrayList<>();
        found.cases().values().stream().flatMap(cases -> cases.cases().stream()).forEach(one -> {
            List<Integer> setting = open.stream()
                    .map(parts -> place(found, parts, one.setting()))
                    .toList();
            if (known.add(setting)) {
                more.add(Situations.at(plan, open, setting));
            }
        });
        if (more.isEmpty()) {
            return survey;
        }
        // Where a load is fed is looked at first.
        more.addAll(survey.situations());
        return Survey.of(
                plan, solver, more.subList(0, Math.min(more.size(), limits.solvedCombinations())), Progress.UNWATCHED);
    }

    private static int place(FeedSearch.Found found, List<Part> parts, int[] setting) {
        int part = found.settings().indexOf(parts.get(0).id());
        return part < 0 ? 0 : setting[part];
    }

    /** One load judged. */
    private record Judged(
            Consumer load,
            LoadCases cases,
            FeedCase main,
            boolean ownWay,
            Severity severity,
            List<Occurrence> occurrences) {

        static Judged of(Consumer load, LoadCases cases, NormalWays normal, FeedSearch.Found found) {
            List<FeedCase> worstFirst = cases.cases().stream()
                    .sorted(Comparator.<FeedCase, Boolean>comparing(c -> normal.isOwnWay(c))
                            .thenComparing(mainFirst()))
                    .toList();
            FeedCase main = worstFirst.get(0);
            boolean ownWay = normal.isOwnWay(main);
            Severity severity = ownWay
                    ? Severity.NOTE
                    : Verdicts.severity(
                            load, main.feed().strength(), main.feed().pulledIn());
            return new Judged(
                    load,
                    cases,
                    main,
                    ownWay,
                    severity,
                    worstFirst.stream()
                            .map(c -> c.occurrence(found.settings()))
                            .distinct()
                            .toList());
        }

        UnintendedFeed feed(List<Remedy> remedies, Set<String> bothWays) {
            Occurrence occurrence = occurrences.get(0);
            Plan plan = main.solved().plan();
            return new UnintendedFeed(
                    load.id(),
                    load.displayName(),
                    severity,
                    ownWay
                            ? Verdicts.question(plan, load, occurrence)
                            : Verdicts.verdict(
                                    plan, load, occurrence, main.solved().wasActive(load)),
                    cases.fedIn(),
                    occurrences,
                    remedies,
                    Clues.of(main, bothWays));
        }
    }

    /**
     * What a load does comes first, then what begins rather than what goes on: the cause, not its consequence; then by volts and
     * the fewest switches changed.
     */
    private static Comparator<FeedCase> mainFirst() {
        return Comparator.<FeedCase, FeedStrength>comparing(c -> c.feed().strength())
                .thenComparing(c -> !c.feed().pulledIn())
                .thenComparing(c -> c.solved().wasActive(c.load()))
                .thenComparing(FeedCase::memory)
                .thenComparing(FeedCase::feed)
                .thenComparingInt(FeedCase::changes)
                .thenComparing(c -> c.solved().step());
    }

    private List<Remedy> remedies(
            Plan plan,
            Survey survey,
            Judged judged,
            Map<String, List<Occurrence>> all,
            Map<String, Severity> before,
            Progress progress) {
        // A trickle does nothing that would be worth a part, and a question asks first.
        if (judged.severity() == Severity.NOTE) {
            return List.of();
        }
        RemedyTrial trial =
                new RemedyTrial(survey, judged.load(), solver, judged.cases().cases());
        List<Candidate> candidates = RemedyCandidates.list(plan, survey, judged.load(), all).stream()
                .limit(limits.maxTrials())
                .toList();
        List<Remedy> remedies = new ArrayList<>();
        try {
            for (int i = 0; i < candidates.size(); i++) {
                Candidate candidate = candidates.get(i);
                trial.run(candidate, progress.part(i, candidates.size()))
                        .filter(remedy -> bringsNothingNew(candidate, judged.load(), before))
                        .ifPresent(remedies::add);
            }
        } catch (OutOfTime over) {
            // What was found is told, with the remedies that there was time to try.
            return sorted(remedies);
        }
        return sorted(remedies);
    }

    private static List<Remedy> sorted(List<Remedy> remedies) {
        // What leaves a load starved that another remedy restores would hide the fault, such as a lost earth.
        int restored =
                remedies.stream().mapToInt(r -> r.restores().size()).max().orElse(0);
        remedies.removeIf(r -> r.restores().size() < restored);
        remedies.sort(Comparator.comparingDouble(Remedy::costV)
                .thenComparing(r -> r.kind().effort()));
        return remedies;
    }

    /**
     * Whether a search of the plan with the change, sequences of moves included, finds the load no more than a trickle, and no
     * other load of more weight than before.
     */
    private boolean bringsNothingNew(Candidate candidate, Consumer cured, Map<String, Severity> before) {
        Plan changed = candidate.changed().get();
        FeedSearch.Found found = proof.find(changed, new SearchClock(Progress.UNWATCHED, PROOF_MS, PROOF_COMBINATIONS));
        if (found.cases().isEmpty()) {
            return true;
        }
        NormalWays normal = new NormalWays(Survey.of(changed, solver, limits.solvedCombinations(), Progress.UNWATCHED));
        return found.cases().entrySet().stream().allMatch(entry -> {
            Consumer load = entry.getKey();
            Severity now = Judged.of(load, entry.getValue(), normal, found).severity();
            Severity was = load.id().equals(cured.id()) ? Severity.NOTE : before.getOrDefault(load.id(), Severity.NOTE);
            return now.compareTo(was) >= 0;
        });
    }

    private List<FaultFeeds> withFaults(Plan plan, List<SingleFault> faults, NormalWays normal, Progress progress) {
        List<FaultFeeds> feeds = new ArrayList<>();
        SearchClock clock = new SearchClock(progress, limits.timeMs(), combinations(plan) * Math.max(1, faults.size()));
        for (SingleFault fault : faults) {
            if (clock.isExpired()) {
                break;
            }
            FeedSearch.Found found = search.findBeside(plan, fault.applyTo(plan), clock);
            List<UnintendedFeed> ofFault = new ArrayList<>();
            found.cases()
                    .forEach((load, cases) ->
                            ofFault.add(Judged.of(load, cases, normal, found).feed(List.of(), Set.of())));
            if (!ofFault.isEmpty()) {
                ofFault.sort(Comparator.comparing(UnintendedFeed::severity).thenComparing(UnintendedFeed::load));
                feeds.add(new FaultFeeds(fault.kind(), fault.ids(), fault.description(), ofFault));
            }
        }
        feeds.sort(Comparator.comparing(f -> f.unintendedFeeds().get(0).severity()));
        return feeds;
    }

    /** The strongest first, what is pulled in before what is not. */
    public static Comparator<Occurrence> worstFirst() {
        return Comparator.comparing(Occurrence::activity)
                .thenComparing(Occurrence::operated, Comparator.reverseOrder())
                .thenComparing(Occurrence::effectiveV, Comparator.reverseOrder());
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
