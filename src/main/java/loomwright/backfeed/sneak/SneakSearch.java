package loomwright.backfeed.sneak;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;
import loomwright.answer.Severity;
import loomwright.backfeed.BackfeedReport.Occurrence;
import loomwright.backfeed.Verdicts;
import loomwright.backfeed.sneak.LeastChanges.Seen;
import loomwright.backfeed.sneak.SneakReport.Sneak;
import loomwright.backfeed.sneak.SneakReport.SneakOccurrence;
import loomwright.backfeed.sneak.SweepTask.Shown;
import loomwright.circuit.Consumer;
import loomwright.circuit.Plan;
import loomwright.network.NetworkLimits;
import loomwright.operation.Intent;
import loomwright.operation.PlanSolver;
import loomwright.operation.SolvedStep;
import loomwright.operation.Step;
import org.jspecify.annotations.Nullable;

/**
 * Finds every load that is fed unasked in any setting of the free switches and breaker contacts, with the smallest
 * settings that show it and the path of the current.
 *
 * <p>All settings are gone through by {@link loomwright.operation.Sweep}; the smallest that show something are solved again
 * in full, and what is reported are those figures. Should the two ever disagree, all settings are solved in full.
 *
 * <p>Cost: some tens of microseconds for each setting of a harness of 60 nodes, and some milliseconds for each that is
 * followed. May be used by several threads; they share its pool.
 */
public final class SneakSearch {
    private static final int BATCH = 256;
    private static final int TELL_EVERY_MS = 200;

    private final SneakLimits limits;
    private final NetworkLimits networkLimits;
    private final ExecutorService pool;

    public SneakSearch(SneakLimits limits, NetworkLimits networkLimits) {
        this.limits = limits;
        this.networkLimits = networkLimits;
        this.pool = Executors.newFixedThreadPool(limits.threads(), work -> {
            Thread thread = new Thread(work, "sneak-search");
            thread.setDaemon(true);
            return thread;
        });
    }

    /**
     * Searches a plan.
     *
     * @throws loomwright.answer.RejectedInput OVER_LIMIT if the switches make too many combinations
     * @throws OutOfTime if it takes too long
     */
    public SneakReport find(Plan plan, Progress progress) {
        Settings settings = Settings.of(plan, limits.maxCombinations());
        Run run = new Run(plan, settings, progress);
        SneakReport report = run.report(true);
        return report == null ? run.inFull() : report;
    }

    /** One search. */
    private final class Run {
        private final Plan plan;
        private final Settings settings;
        private final Progress progress;
        private final List<Consumer> consumers;
        private final PlanSolver solver = new PlanSolver(networkLimits);
        private final Map<Long, List<SolvedStep>> solved = new HashMap<>();
        private final AtomicBoolean stop = new AtomicBoolean();
        private final long endNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(limits.timeMs());
        private long toldNs = System.nanoTime();

        Run(Plan plan, Settings settings, Progress progress) {
            this.plan = plan;
            this.settings = settings;
            this.progress = progress;
            this.consumers = plan.listParts(Consumer.class);
        }

        SneakReport inFull() {
            SneakReport report = report(false);
            if (report == null) {
                throw new IllegalStateException("the full solution contradicts itself");
            }
            return report;
        }

        /** What was found; null if the quick solution said what the full one does not. */
        @Nullable
        SneakReport report(boolean quick) {
            Shown shown = sweep(quick);
            Map<String, List<SneakCase>> groups = new LinkedHashMap<>();
            boolean complete = true;
            int followed = 0;
            for (int c = 0; c < consumers.size(); c++) {
                for (Step step : Step.values()) {
                    complete &= !shown.at(step, c).full();
                    for (Seen seen : shown.at(step, c).list()) {
                        if (followed++ >= limits.maxCases()) {
                            complete = false;
                            break;
                        }
                        SneakCase found = follow(consumers.get(c), step, seen);
                        if (found == null) {
                            return null;
                        }
                        groups.computeIfAbsent(found.group(), key -> new ArrayList<>())
                                .add(found);
                        check(settings.count());
                    }
                }
            }
            Map<String, Integer> fedIn = new HashMap<>();
            for (int c = 0; c < consumers.size(); c++) {
                fedIn.put(consumers.get(c).id(), shown.fedIn[c]);
            }
            solve(0);
            Set<String> bothWays = Clues.bothWays(solved.values());
            List<Sneak> sneaks = groups.values().stream()
                    .map(cases -> sneak(cases, fedIn, bothWays))
                    .sorted(Comparator.comparing(Sneak::severity))
                    .toList();
            return new SneakReport(plan.name(), settings.count(), shown.judged, complete, sneaks);
        }

        private Shown sweep(boolean quick) {
            Shown all = new Shown(settings, consumers.size());
            Queue<SweepTask> idle = new ConcurrentLinkedQueue<>();
            Deque<Future<Shown>> running = new ArrayDeque<>();
            int next = 0;
            int done = 0;
            try {
                while (done < settings.count()) {
                    while (next < settings.count() && running.size() < 4 * limits.threads()) {
                        int from = next;
                        next = Math.min(settings.count(), from + BATCH);
                        int to = next;
                        running.add(pool.submit(() -> batch(idle, from, to, quick)));
                    }
                    all.addAll(await(running.remove(), done));
                    done = Math.min(settings.count(), done + BATCH);
                    check(done);
                }
            } finally {
                stop.set(true);
                running.forEach(future -> future.cancel(false));
            }
            stop.set(false);
            progress.at(settings.count(), settings.count());
            return all;
        }

        private Shown batch(Queue<SweepTask> idle, int from, int to, boolean quick) {
            SweepTask ready = idle.poll();
            SweepTask task = ready == null ? new SweepTask(plan, settings, quick, networkLimits) : ready;
            Shown shown = task.run(from, to, () -> stop.get());
            idle.add(task);
            return shown;
        }

        private Shown await(Future<Shown> future, int done) {
            while (true) {
                try {
                    return future.get(TELL_EVERY_MS, TimeUnit.MILLISECONDS);
                } catch (TimeoutException stillAtWork) {
                    check(done);
                } catch (ExecutionException e) {
                    if (e.getCause() instanceof RuntimeException cause) {
                        throw cause;
                    }
                    throw new IllegalStateException(e.getCause());
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    throw new IllegalStateException("interrupted while searching", e);
                }
            }
        }

        private void check(int done) {
            long now = System.nanoTime();
            if (now - endNs > 0) {
                throw new OutOfTime("A search for sneak paths may take " + limits.timeMs() / 1000 + " s; " + done
                        + " of " + settings.count() + " combinations were done");
            }
            if (now - toldNs > TimeUnit.MILLISECONDS.toNanos(TELL_EVERY_MS)) {
                toldNs = now;
                progress.at(done, settings.count());
            }
        }

        private List<SolvedStep> solve(long code) {
            return solved.computeIfAbsent(code, c -> solver.solve(settings.planAt(c)));
        }

        private @Nullable SneakCase follow(Consumer load, Step step, Seen seen) {
            List<SolvedStep> steps = solve(seen.code());
            for (SolvedStep one : steps) {
                if (one.step() == step) {
                    boolean same = one.solved()
                            && !Intent.meantLive(load, one.plan(), step)
                            && SneakCase.feedOf(one, load).equals(seen.feed());
                    return same ? SneakCase.of(load, seen.code(), seen.changes(), one) : null;
                }
            }
            throw new IllegalStateException("no such step: " + step);
        }

        private Sneak sneak(List<SneakCase> cases, Map<String, Integer> fedIn, Set<String> bothWays) {
            List<SneakCase> smallestFirst = cases.stream()
                    .sorted(Comparator.comparingInt(SneakCase::changes)
                            .thenComparing(SneakCase::feed)
                            .thenComparing(c -> c.solved().step()))
                    .toList();
            Map<Step, SneakCase> byStep = new LinkedHashMap<>();
            smallestFirst.forEach(c -> byStep.putIfAbsent(c.solved().step(), c));
            SneakCase worst = byStep.values().stream()
                    .min(Comparator.comparing(SneakCase::feed).thenComparingInt(SneakCase::changes))
                    .orElseThrow();
            Consumer load = worst.load();
            Severity severity = Verdicts.severity(
                    load, worst.feed().activity(), worst.feed().pulledIn());
            return new Sneak(
                    load.id(),
                    load.called(),
                    severity,
                    Verdicts.verdict(load, worst.occurrence(settings)),
                    fedIn.getOrDefault(load.id(), 0),
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
}
