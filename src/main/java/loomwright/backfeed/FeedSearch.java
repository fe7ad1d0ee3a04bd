package loomwright.backfeed;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import loomwright.answer.Progress;
import loomwright.backfeed.BackfeedReport.Extent;
import loomwright.backfeed.LeastChanges.Seen;
import loomwright.circuit.Consumer;
import loomwright.circuit.Part;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.Move;
import loomwright.operation.MovedPlan;
import loomwright.operation.SettingScan;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import loomwright.operation.SwitchSettings;
import org.jspecify.annotations.Nullable;

/**
 * The one search for loads that are live though they should not be: in every step and every setting of the free switches
 * and stopped contacts, and after sequences of moves that leave a relay in. It decides by {@link
 * loomwright.operation.SettingScan}; what is reported is solved again as it is reported.
 *
 * <p>Beyond its limits it does not refuse: some switches are held as they are drawn, or settings are left out when the time is
 * up, and {@link Extent} says which and how many.
 *
 * <p>Cost: a few microseconds for each step of each setting of a harness of 60 nodes; with a fault twice that, as the sound
 * plan is solved beside it. May be used by several threads; they share its pool.
 */
final class FeedSearch {
    private static final int KEEP_IDLE_S = 1;
    private static final int MOST_MOVES = 100_000;

    private static final int THREADS = Runtime.getRuntime().availableProcessors();
    private static final ExecutorService POOL = threads(THREADS);

    private final BackfeedLimits limits;
    private final int mostMoves;
    private final NetworkLimits networkLimits;

    FeedSearch(BackfeedLimits limits, NetworkLimits networkLimits) {
        this(limits, networkLimits, MOST_MOVES);
    }

    /**
     * Prepares a search.
     *
     * @param mostMoves moves of switches or key that are tried at most
     */
    FeedSearch(BackfeedLimits limits, NetworkLimits networkLimits, int mostMoves) {
        this.limits = limits;
        this.mostMoves = mostMoves;
        this.networkLimits = networkLimits;
    }

    /** They end when they have nothing to do, so nobody has to close the search. */
    private static ExecutorService threads(int count) {
        ThreadPoolExecutor pool = new ThreadPoolExecutor(
                count, count, KEEP_IDLE_S, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
                    Thread thread = new Thread(work, "backfeed-search");
                    thread.setDaemon(true);
                    return thread;
                });
        pool.allowCoreThreadTimeOut(true);
        return pool;
    }

    /**
     * What a search found.
     *
     * @param cases of each load that is fed, by step the strongest and, where it is another, the simplest
     * @param peaks the settings in which wires carry most, those first in which most of them do
     */
    record Found(SwitchSettings settings, Extent extent, Map<Consumer, LoadCases> cases, List<int[]> peaks) {}

    /** One load: in how many settings it is fed, and the cases that are reported, each step's strongest first. */
    record LoadCases(int fedIn, List<FeedCase> cases) {}

    /** Searches a plan as it is. */
    Found find(Plan plan, SearchClock clock) {
        return decide(plan, clock).found();
    }

    /** Searches a plan as it is, with no case solved yet as it is reported. */
    Decided decide(Plan plan, SearchClock clock) {
        Set<String> held = held(plan);
        SwitchSettings settings = SwitchSettings.holding(plan, held);
        SettingCodes codes = new SettingCodes(settings);
        int count = settings.count().intValueExact();
        FreshStates states = new FreshStates(count);
        ScanResult result = new PooledScan(POOL, 4 * THREADS, () -> new ScanTask(codes, null, states, networkLimits))
                .run(count, clock);
        clock.finished(count);
        MoveSearch moves = new MoveSearch(
                codes, states, networkLimits, mostMoves, new SearchClock(Progress.UNWATCHED, clock.leftMs(), count));
        List<MoveSearch.Found> ofMoves = moves.find(count);
        Extent extent = Extent.ofSearch(
                combinations(plan),
                result.settings,
                List.copyOf(held),
                moves.extent().switchMoves(),
                moves.extent().complete() && result.settings == combinations(plan));
        return new Decided(codes, result, ofMoves, extent, new Replay(settings));
    }

    /** What a search decided, of which each load's cases can be solved as they are reported. */
    static final class Decided {
        private final SettingCodes codes;
        private final ScanResult result;
        private final List<MoveSearch.Found> ofMoves;
        private final Extent extent;
        private final Replay replay;
        private final List<Consumer> consumers;

        private Decided(
                SettingCodes codes, ScanResult result, List<MoveSearch.Found> ofMoves, Extent extent, Replay replay) {
            this.codes = codes;
            this.result = result;
            this.ofMoves = ofMoves;
            this.extent = extent;
            this.replay = replay;
            this.consumers = codes.settings().plan().listParts(Consumer.class);
        }

        List<Consumer> consumers() {
            return consumers;
        }

        /** All ways in which a load is fed that were found strongest or simplest. */
        Stream<Feed> feeds(int consumer) {
            return Stream.concat(
                    Arrays.stream(Step.values())
                            .flatMap(step -> told(result.at(step, consumer)).stream())
                            .map(Seen::feed),
                    ofMoves.stream().filter(m -> m.consumer() == consumer).map(MoveSearch.Found::feed));
        }

        /** The cases of one load, each solved as it is reported. */
        List<FeedCase> cases(int consumer) {
            Consumer load = consumers.get(consumer);
            List<FeedCase> cases = new ArrayList<>();
            for (Step step : Step.values()) {
                for (Seen seen : told(result.at(step, consumer))) {
                    replay.fresh(load, codes.setting(seen.code()), step).ifPresent(cases::add);
                }
            }
            ofMoves.stream()
                    .filter(m -> m.consumer() == consumer)
                    .flatMap(m -> replay.moved(load, codes.setting(m.code()), m.moves()).stream())
                    .forEach(cases::add);
            return cases;
        }

        SwitchSettings settings() {
            return codes.settings();
        }

        Found found() {
            Map<Consumer, LoadCases> cases = new LinkedHashMap<>();
            for (int c = 0; c < consumers.size(); c++) {
                List<FeedCase> ofLoad = cases(c);
                if (!ofLoad.isEmpty()) {
                    cases.put(consumers.get(c), new LoadCases(result.fedIn[c], ofLoad));
                }
            }
            return new Found(codes.settings(), extent, cases, result.peaks.list());
        }
    }

    /**
     * Searches a plan with a fault in it for loads that the fault alone feeds: more strongly than in the same setting of the
     * sound plan, and by more than a trickle. Of each load one case is reported, the strongest.
     */
    Found findBeside(Plan sound, Plan faulty, SearchClock clock) {
        Set<String> held = held(faulty);
        SwitchSettings settings = SwitchSettings.holding(faulty, held);
        SettingCodes codes = new SettingCodes(settings);
        int count = settings.count().intValueExact();
        List<Consumer> consumers = faulty.listParts(Consumer.class);
        SwitchSettings beside = SwitchSettings.holding(sound, held);
        ScanResult result = new PooledScan(POOL, 4 * THREADS, () -> new ScanTask(codes, beside, null, networkLimits))
                .run(count, clock);
        clock.finished(count);
        Replay replay = new Replay(settings);
        Map<Consumer, LoadCases> cases = new LinkedHashMap<>();
        for (int c = 0; c < consumers.size(); c++) {
            int consumer = c;
            Optional<FeedCase> worst = Arrays.stream(Step.values())
                    .flatMap(step ->
                            result.at(step, consumer).strongest().stream().map(seen -> new SeenAt(step, seen)))
                    .min(Comparator.comparing(SeenAt::seen, LeastChanges.strongestFirst()))
                    .flatMap(s -> replay.fresh(
                            consumers.get(consumer), codes.setting(s.seen().code()), s.step()));
            worst.ifPresent(
                    one -> cases.put(consumers.get(consumer), new LoadCases(result.fedIn[consumer], List.of(one))));
        }
        Extent extent = Extent.ofSearch(combinations(faulty), result.settings, List.copyOf(held), 0, true);
        return new Found(settings, extent, cases, result.peaks.list());
    }

    private record SeenAt(Step step, Seen seen) {}

    private static long combinations(Plan plan) {
        return SwitchSettings.of(plan)
                .count()
                .min(BigInteger.valueOf(Long.MAX_VALUE))
                .longValueExact();
    }

    /** The strongest of a step and, where that is another setting, the simplest. */
    private static List<Seen> told(LeastChanges least) {
        List<Seen> told = new ArrayList<>(least.strongest().stream().toList());
        least.list().stream()
                .findFirst()
                .filter(simplest -> told.stream().noneMatch(strongest -> strongest.code() == simplest.code()))
                .ifPresent(told::add);
        return told;
    }

    /** The open parts that stay as they are drawn so that the rest makes no more settings than the limit. */
    private Set<String> held(Plan plan) {
        Set<String> held = new LinkedHashSet<>();
        long count = 1;
        // Those with the fewest positions first: of them most can be moved.
        List<List<Part>> open = SwitchSettings.of(plan).open().stream()
                .sorted(Comparator.comparingInt((List<Part> s) -> s.size())
                        .thenComparing(s -> s.get(0).id()))
                .toList();
        for (List<Part> settings : open) {
            if (count * settings.size() <= limits.maxCombinations()) {
                count *= settings.size();
            } else {
                held.add(settings.get(0).id());
            }
        }
        return held;
    }

    /** Solves what was decided once more, as it is reported. */
    private final class Replay {
        private final SwitchSettings settings;
        private @Nullable SettingScan scan;
        /** By setting; the strongest cases of many loads are of one. */
        private final Map<List<Integer>, List<SolvedStep>> solved = new HashMap<>();

        Replay(SwitchSettings settings) {
            this.settings = settings;
        }

        private SettingScan scan() {
            SettingScan known = scan;
            if (known == null) {
                known = new SettingScan(settings, networkLimits);
                scan = known;
            }
            return known;
        }

        /** The step of a setting, if the load is fed in it as decided. */
        Optional<FeedCase> fresh(Consumer load, int[] setting, Step step) {
            List<SolvedStep> steps =
                    solved.computeIfAbsent(Arrays.stream(setting).boxed().toList(), key -> scan().report(setting));
            List<Move> moves = new ArrayList<>();
            settings.positions(setting, true).forEach((id, position) -> moves.add(new Move(id, position)));
            moves.add(Move.key(step));
            SolvedStep at =
                    steps.stream().filter(one -> one.step() == step).findFirst().orElseThrow();
            return fed(load, setting, moves, false, at);
        }

        Optional<FeedCase> moved(Consumer load, int[] setting, List<Move> moves) {
            MovedPlan.follow(scan(), moves);
            return fed(load, setting, moves, true, scan().report());
        }

        private Optional<FeedCase> fed(
                Consumer load, int[] setting, List<Move> moves, boolean memory, SolvedStep solved) {
            return solved.solved() && !Feed.of(solved, load).isDead()
                    ? Optional.of(FeedCase.of(load, setting, moves, memory, solved, limits.maxPaths()))
                    : Optional.empty();
        }
    }
}
