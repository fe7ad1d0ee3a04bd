package loomwright.backfeed;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import loomwright.answer.Deadline;
import loomwright.answer.Progress;
import loomwright.answer.SharedWork;
import loomwright.backfeed.BackfeedReport.FaultFeeds;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.BackfeedReport.Remedy;
import loomwright.backfeed.BackfeedReport.ReversedWire;
import loomwright.backfeed.BackfeedReport.UnintendedFeed;
import loomwright.backfeed.Situations.Situation;
import loomwright.backfeed.Survey.Moment;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.circuit.fault.FaultWording;
import loomwright.circuit.fault.SingleFault;
import loomwright.circuit.fault.SingleFaults;
import loomwright.message.Message;
import loomwright.network.NetworkLimits;
import loomwright.operation.Branch;
import loomwright.operation.PlanSolver;
import loomwright.operation.SwitchSettings;

/**
 * The loads that {@link FeedSearch} finds live though they should not be, judged, with remedies that were tried.
 *
 * <p>Cost: that of the search, and for each remedy tried a solution of each combination that remedies are proved on. Not
 * thread safe.
 */
public final class BackfeedSearch {
    /** Of the time there is, what may be spent when the search ends, when the figures are there, and when remedies end. */
    private static final double SEARCH_SHARE = 0.4;

    private static final double SURVEY_SHARE = 0.6;
    private static final double REMEDY_SHARE = 0.85;

    private final BackfeedLimits limits;
    private final NetworkLimits networkLimits;
    private final FeedSearch search;

    public BackfeedSearch(BackfeedLimits limits, NetworkLimits networkLimits) {
        this.limits = limits;
        this.networkLimits = networkLimits;
        this.search = new FeedSearch(limits, networkLimits);
    }

    /**
     * What was searched.
     *
     * @param plan as it was searched
     * @param survey all figures of some combinations: as drawn, with each switch moved, and those in which wires carry most
     */
    public record Searched(Plan plan, BackfeedReport report, Survey survey) {}

    /** Searches a plan. */
    public BackfeedReport find(Plan plan, Progress progress) {
        return search(plan, progress).report();
    }

    /** As {@link #find(Plan, Progress)}, and once more with each single fault. */
    public BackfeedReport findWithFaults(Plan plan, Progress progress) {
        return search(plan, progress, true).report();
    }

    /** As {@link #find(Plan, Progress)}, with what it saw. */
    public Searched search(Plan plan, Progress progress) {
        return search(plan, progress, false);
    }

    private Searched search(Plan plan, Progress progress, boolean singleFaults) {
        Budget budget = new Budget(limits.timeMs(), progress);
        PlanSolver solver = new PlanSolver(networkLimits);
        FeedSearch.Found found = search.find(
                plan, new SearchClock(progress.part(0, 3), budget.untilMs(SEARCH_SHARE), combinations(plan)));
        Survey survey = survey(plan, solver, found, progress.part(1, 3), budget);
        return new Searched(plan, report(plan, found, survey, budget, singleFaults), survey);
    }

    private Survey survey(Plan plan, PlanSolver solver, FeedSearch.Found found, Progress progress, Budget budget) {
        List<List<Part>> open = Situations.open(plan);
        List<List<Integer>> peaks = found.peaks().stream()
                .map(setting -> places(found, open, setting))
                .toList();
        List<Situation> situations = Situations.list(plan, limits.solvedCombinations(), peaks);
        return Survey.of(
                plan, solver, situations, new SearchClock(progress, budget.untilMs(SURVEY_SHARE), situations.size()));
    }

    /** The time of a search: its own limit, or what whoever watches gives it. */
    private record Budget(long allMs, long endMs, Progress progress) {
        Budget(int limitMs, Progress progress) {
            this(Math.min(limitMs, Math.max(0, progress.leftMs())), progress);
        }

        private Budget(long allMs, Progress progress) {
            this(allMs, nowMs() + allMs, progress);
        }

        /** How long it is until so much of the time is spent. */
        long untilMs(double share) {
            return Math.max(0, endMs - nowMs() - Math.round(allMs * (1 - share)));
        }

        private static long nowMs() {
            return TimeUnit.NANOSECONDS.toMillis(System.nanoTime());
        }
    }

    /** A plan that was searched, ready for remedies to be tried. */
    private record Prepared(
            FeedSearch.Found found,
            List<List<Part>> open,
            NormalWays normal,
            List<Judged> judged,
            RemedySearch remedies,
            boolean provable) {
        Set<List<Integer>> fedAt(Judged one) {
            return one.cases().cases().stream()
                    .map(c -> places(found, open, c.setting()))
                    .collect(Collectors.toSet());
        }
    }

    private Prepared prepared(Plan plan, FeedSearch.Found found, Survey survey, Budget budget) {
        Survey proving = proving(plan, survey, found, budget);
        NormalWays normal = new NormalWays(survey);
        List<Judged> judged = new ArrayList<>();
        found.cases().forEach((load, cases) -> judged.add(Judged.of(load, cases, normal, found.settings())));
        // All loads share the time for remedies; the worst come first.
        judged.sort(Comparator.comparing(Judged::severity));
        return new Prepared(
                found,
                Situations.open(plan),
                normal,
                judged,
                new RemedySearch(proving, judged, limits, networkLimits),
                proving.isComplete());
    }

    private BackfeedReport report(
            Plan plan, FeedSearch.Found found, Survey survey, Budget budget, boolean singleFaults) {
        List<SingleFault> faults = singleFaults ? SingleFaults.list(plan) : List.of();
        Prepared prepared = prepared(plan, found, survey, budget);
        Set<String> bothWays = Clues.bothWays(survey.moments());
        // On a part of the combinations nothing can be proved.
        long remedyMs = prepared.provable() ? budget.untilMs(REMEDY_SHARE) : 0;
        Progress remedyTime = new Deadline((int) remedyMs, budget.progress().part(2, 3));
        List<Judged> loads = prepared.judged();
        // The loads share nothing but proofs of changed plans.
        IntFunction<RemedySearch.Remedies> ofLoad =
                i -> prepared.remedies().find(loads.get(i), prepared.fedAt(loads.get(i)), remedyTime.untold());
        List<RemedySearch.Remedies> remedies =
                new ArrayList<>(SharedWork.inOrder(loads.size(), () -> ofLoad, remedyTime));
        // For what is left there is no time: these say how many changes were not tried.
        IntStream.range(remedies.size(), loads.size()).mapToObj(ofLoad).forEach(remedies::add);
        List<UnintendedFeed> feeds = new ArrayList<>();
        for (int i = 0; i < loads.size(); i++) {
            feeds.add(loads.get(i).feed(remedies.get(i).found(), bothWays));
        }
        int remediesLeft =
                remedies.stream().mapToInt(RemedySearch.Remedies::left).sum();
        feeds.sort(Comparator.comparing(UnintendedFeed::severity).thenComparing(UnintendedFeed::load));
        FaultsFound ofFaults = withFaults(plan, faults, prepared.normal(), budget);
        return new BackfeedReport(
                plan.name(),
                found.extent().with(survey.combinations(), remediesLeft, ofFaults.left()),
                feeds,
                0,
                reversedWires(survey),
                ofFaults.feeds(),
                null);
    }

    /**
     * A report with a cure, its remedies judged once more on the plan with everything made that cures other loads: what they cost
     * then is what they cost. One that no longer helps is left out, and one for which there is no time is reported as it was.
     */
    BackfeedReport judgedBeside(Plan plan, BackfeedReport report, CombinedCure cure, Progress progress) {
        Map<Plan, Prepared> byOthers = new LinkedHashMap<>();
        Budget budget = new Budget(limits.timeMs(), progress);
        List<UnintendedFeed> feeds = new ArrayList<>();
        for (UnintendedFeed feed : report.unintendedFeeds()) {
            Plan others = cure.withoutCureOf(feed.load());
            if (feed.remedies().isEmpty() || others.equals(plan)) {
                feeds.add(feed);
                continue;
            }
            Prepared prepared = byOthers.computeIfAbsent(others, one -> {
                FeedSearch.Found found =
                        search.find(one, new SearchClock(progress, budget.untilMs(SEARCH_SHARE), combinations(one)));
                PlanSolver solver = new PlanSolver(networkLimits);
                return prepared(one, found, survey(one, solver, found, progress, budget), budget);
            });
            feeds.add(feed.with(beside(plan, others, feed, prepared, budget)));
        }
        return report.with(feeds, cure.cure());
    }

    private static List<Remedy> beside(Plan plan, Plan others, UnintendedFeed feed, Prepared prepared, Budget budget) {
        Optional<Judged> still = prepared.judged().stream()
                .filter(one -> one.load().id().equals(feed.load()))
                .findFirst();
        if (still.isEmpty() || !prepared.provable()) {
            return feed.remedies();
        }
        Map<Message, Remedy> asToldBefore = new LinkedHashMap<>();
        List<Candidate> candidates = new ArrayList<>();
        for (Remedy remedy : feed.remedies()) {
            PlanPatch.applyBeside(plan, others, remedy.patch()).ifPresent(changed -> {
                asToldBefore.put(remedy.change(), remedy);
                candidates.add(Candidate.of(remedy, others, changed));
            });
        }
        RemedySearch.Remedies judged = prepared.remedies()
                .find(
                        still.get(),
                        prepared.fedAt(still.get()),
                        candidates,
                        new Deadline((int) budget.untilMs(1), budget.progress().untold()));
        return judged.left() > 0
                ? feed.remedies()
                : judged.found().stream()
                        .map(one -> one.with(Objects.requireNonNull(asToldBefore.get(one.change()))
                                .patch()))
                        .toList();
    }

    /**
     * What single faults bring about.
     *
     * @param left faults that there was no time for
     */
    private record FaultsFound(List<FaultFeeds> feeds, int left) {}

    private long combinations(Plan plan) {
        return SwitchSettings.of(plan)
                .count()
                .min(BigInteger.valueOf(limits.maxCombinations()))
                .longValueExact();
    }

    /** What remedies are proved on: the combinations solved anyway, and those in which a load is fed. */
    private Survey proving(Plan plan, Survey survey, FeedSearch.Found found, Budget budget) {
        Set<List<Integer>> known = new HashSet<>();
        survey.situations().forEach(s -> known.add(s.setting()));
        List<List<Part>> open = Situations.open(plan);
        List<Situation> more = new ArrayList<>();
        found.cases().values().stream().flatMap(cases -> cases.cases().stream()).forEach(one -> {
            List<Integer> setting = places(found, open, one.setting());
            if (known.add(setting)) {
                more.add(Situations.at(plan, open, setting));
            }
        });
        if (more.isEmpty() || !survey.isComplete()) {
            return survey;
        }
        // Where a load is fed is looked at first.
        more.addAll(survey.situations());
        return survey.with(
                more.subList(0, Math.min(more.size(), limits.solvedCombinations())),
                new SearchClock(Progress.UNWATCHED, budget.untilMs((SURVEY_SHARE + REMEDY_SHARE) / 2), more.size()));
    }

    /** A setting of the search as the places of all open parts of the plan, those that were held among them. */
    private static List<Integer> places(FeedSearch.Found found, List<List<Part>> open, int[] setting) {
        return open.stream().map(parts -> place(found, parts, setting)).toList();
    }

    private static int place(FeedSearch.Found found, List<Part> parts, int[] setting) {
        int part = found.settings().indexOf(parts.get(0).id());
        return part < 0 ? 0 : setting[part];
    }

    private FaultsFound withFaults(Plan plan, List<SingleFault> faults, NormalWays normal, Budget budget) {
        List<FaultFeeds> feeds = new ArrayList<>();
        SearchClock clock = new SearchClock(
                budget.progress().part(2, 3), budget.untilMs(1), combinations(plan) * Math.max(1, faults.size()));
        int searched = 0;
        for (SingleFault fault : faults) {
            if (clock.isExpired()) {
                break;
            }
            FeedSearch.Found found = search.findBeside(plan, fault.applyTo(plan), clock);
            searched += clock.isExpired() ? 0 : 1;
            List<UnintendedFeed> ofFault = new ArrayList<>();
            found.cases()
                    .forEach((load, cases) -> ofFault.add(
                            Judged.of(load, cases, normal, found.settings()).feed(List.of(), Set.of())));
            if (!ofFault.isEmpty()) {
                ofFault.sort(Comparator.comparing(UnintendedFeed::severity).thenComparing(UnintendedFeed::load));
                feeds.add(new FaultFeeds(fault.kind(), fault.ids(), FaultWording.of(fault, plan), ofFault));
            }
        }
        feeds.sort(Comparator.comparing(f -> f.unintendedFeeds().get(0).severity()));
        return new FaultsFound(feeds, faults.size() - searched);
    }

    /** The strongest first, what is pulled in before what is not. */
    public static Comparator<Occurrence> worstFirst() {
        return Comparator.comparing((Occurrence o) -> o.level().activity())
                .thenComparing(o -> o.level().pulledIn(), Comparator.reverseOrder())
                .thenComparing(o -> o.level().effectiveV(), Comparator.reverseOrder());
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
