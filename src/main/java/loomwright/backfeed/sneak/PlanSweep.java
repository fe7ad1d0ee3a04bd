package loomwright.backfeed.sneak;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.Verdicts;
import loomwright.backfeed.sneak.Shown.Moment;
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.backfeed.sneak.SneakReport.SneakOccurrence;
import loomwright.circuit.Consumer;
import loomwright.network.NetworkLimits;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * The search in one plan, sound or with a fault in it: the sweep through all settings, and the smallest settings that show
 * something followed in full. For one thread.
 */
final class PlanSweep {
    private final Settings settings;
    private final @Nullable PlanSweep sound;
    private final SneakLimits limits;
    private final NetworkLimits networkLimits;
    private final ExecutorService pool;
    private final Watch watch;
    private final List<Consumer> consumers;
    /** All of this plan's own; faults in it may ask for any number of others. */
    private final Remembered solved;

    /**
     * What the search in one plan found.
     *
     * @param inFull how many settings were left to the full solver
     * @param complete whether every smallest setting was followed
     */
    record Found(int inFull, boolean complete, List<Sneak> sneaks) {}

    /** A load with its cases, and in how many settings it is fed. */
    private record Group(Consumer load, int fedIn, List<SneakCase> cases) {}

    /** Prepares the search in a plan; what is fed in the {@code sound} one as well is not told, if there is one. */
    PlanSweep(
            Settings settings,
            @Nullable PlanSweep sound,
            SneakLimits limits,
            NetworkLimits networkLimits,
            ExecutorService pool,
            Watch watch) {
        this.settings = settings;
        this.sound = sound;
        this.limits = limits;
        this.networkLimits = networkLimits;
        this.pool = pool;
        this.watch = watch;
        this.consumers = settings.plan().listParts(Consumer.class);
        PlanSolver solver = new PlanSolver(networkLimits);
        this.solved = new Remembered(limits.maxCases() + 1, code -> solver.solve(settings.planAt(code)));
    }

    /** Searches quickly, and once more in full if the quick solution says what the full one does not. */
    Found find() {
        Optional<Found> quick = find(true);
        Found found = quick.isPresent()
                ? quick.get()
                : find(false).orElseThrow(() -> new IllegalStateException("the full solution contradicts itself"));
        watch.finished(settings.count());
        return found;
    }

    private Optional<Found> find(boolean quick) {
        Settings soundSettings = sound == null ? null : sound.settings;
        Shown shown = new PooledSweep(
                        pool, 4 * limits.threads(), () -> new SweepTask(settings, soundSettings, quick, networkLimits))
                .run(settings, new Shown(settings, consumers.size()), watch);
        Map<String, Group> groups = new LinkedHashMap<>();
        boolean complete = true;
        int followed = 0;
        for (int c = 0; c < consumers.size(); c++) {
            Consumer load = consumers.get(c);
            int fedIn = shown.fedIn[c];
            complete &= shown.complete(c);
            for (Moment moment : moments(shown, c)) {
                if (followed++ >= limits.maxCases()) {
                    complete = false;
                    break;
                }
                Optional<SneakCase> found = follow(load, moment);
                if (found.isEmpty()) {
                    return Optional.empty();
                }
                groups.computeIfAbsent(found.get().group(), key -> new Group(load, fedIn, new ArrayList<>()))
                        .cases()
                        .add(found.get());
                watch.at(settings.count());
            }
        }
        return Optional.of(new Found(
                shown.judged, complete, sneaks(groups.values().stream().toList())));
    }

    /** With a fault one moment is told of each load, the worst. */
    private List<Moment> moments(Shown shown, int consumer) {
        return sound == null
                ? shown.all(consumer)
                : shown.worst(consumer).stream().toList();
    }

    private SolvedStep solve(long code, Step step) {
        return solved.at(code).stream()
                .filter(one -> one.step() == step)
                .findFirst()
                .orElseThrow();
    }

    /** The case solved in full; empty if the full solution says otherwise. */
    private Optional<SneakCase> follow(Consumer load, Moment moment) {
        SolvedStep one = solve(moment.seen().code(), moment.step());
        boolean same = one.solved()
                && !Intent.meantLive(load, one.plan(), moment.step())
                && SneakCase.feedOf(one, load).equals(moment.seen().feed())
                && (sound == null || sound.feedsLess(load, moment));
        return same
                ? Optional.of(
                        SneakCase.of(load, moment.seen().code(), moment.seen().changes(), one))
                : Optional.empty();
    }

    private boolean feedsLess(Consumer load, Moment moment) {
        SolvedStep here = solve(moment.seen().code(), moment.step());
        return !here.solved()
                || here.plan()
                        .findPart(load.id())
                        .filter(Consumer.class::isInstance)
                        .isEmpty()
                || SweepTask.isWorse(moment.seen().feed(), SneakCase.feedOf(here, load));
    }

    private List<Sneak> sneaks(List<Group> groups) {
        if (groups.isEmpty()) {
            return List.of();
        }
        solved.at(0);
        Set<String> bothWays = Clues.bothWays(solved.all());
        return groups.stream()
                .map(group -> sneak(group, bothWays))
                .sorted(Comparator.comparing(Sneak::severity))
                .toList();
    }

    private Sneak sneak(Group group, Set<String> bothWays) {
        List<SneakCase> smallestFirst = group.cases().stream()
                .sorted(Comparator.comparingInt(SneakCase::changes)
                        .thenComparing(SneakCase::feed)
                        .thenComparing(c -> c.solved().step()))
                .toList();
        Map<Step, SneakCase> byStep = new LinkedHashMap<>();
        smallestFirst.forEach(c -> byStep.putIfAbsent(c.solved().step(), c));
        SneakCase worst = byStep.values().stream()
                .min(Comparator.comparing(SneakCase::feed).thenComparingInt(SneakCase::changes))
                .orElseThrow();
        Severity severity = Verdicts.severity(
                group.load(), worst.feed().activity(), worst.feed().pulledIn());
        return new Sneak(
                group.load().id(),
                group.load().displayName(),
                severity,
                Verdicts.verdict(
                        group.load(), worst.occurrence(settings), worst.solved().wasActive(group.load())),
                group.fedIn(),
                smallestFirst.get(0).strongest(),
                byStep.values().stream().map(this::occurrence).toList(),
                Clues.of(worst, bothWays));
    }

    private SneakOccurrence occurrence(SneakCase one) {
        Occurrence told = one.occurrence(settings);
        return new SneakOccurrence(
                told.step(),
                told.words(),
                settings.positions(one.code(), true),
                settings.positions(one.code(), false),
                told.activity(),
                told.operated(),
                told.effectiveV(),
                told.currentA());
    }
}
