package loomwright.backfeed;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;

/** Goes through all settings of a plan in batches, on several threads. However it ends, no batch goes on after it. */
final class PooledScan {
    private static final int BATCH = 256;

    private final ExecutorService pool;
    private final int batchesAtOnce;
    private final Supplier<ScanTask> tasks;
    private final Queue<ScanTask> idle = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean stop = new AtomicBoolean();

    /**
     * Prepares a scan; it is run once.
     *
     * @param tasks makes the work space of one thread
     */
    PooledScan(ExecutorService pool, int batchesAtOnce, Supplier<ScanTask> tasks) {
        this.pool = pool;
        this.batchesAtOnce = batchesAtOnce;
        this.tasks = tasks;
    }

    /** Goes through the settings, as many as there is time for, and gathers what they show. */
    ScanResult run(int settings, SearchClock clock) {
        ScanTask first = tasks.get();
        ScanResult all = first.nothing();
        if (settings <= BATCH) {
            // Not worth a second thread; but a setting may be large, so that the clock is asked for each.
            all.addAll(first.run(0, settings, () -> !clock.at(0)));
            return all;
        }
        idle.add(first);
        Deque<Future<ScanResult>> running = new ArrayDeque<>();
        int next = 0;
        try {
            while (next < settings || !running.isEmpty()) {
                while (next < settings && running.size() < batchesAtOnce && !clock.isExpired()) {
                    int from = next;
                    int to = Math.min(settings, from + BATCH);
                    running.add(pool.submit(() -> batch(from, to)));
                    next = to;
                }
                if (running.isEmpty()) {
                    return all;
                }
                all.addAll(await(running.remove(), clock, all.settings));
                if (!clock.at(all.settings)) {
                    stop.set(true);
                }
            }
            return all;
        } finally {
            stop.set(true);
            running.forEach(future -> future.cancel(false));
        }
    }

    private ScanResult batch(int from, int to) {
        ScanTask ready = idle.poll();
        ScanTask task = ready == null ? tasks.get() : ready;
        ScanResult result = task.run(from, to, stop::get);
        idle.add(task);
        return result;
    }

    private ScanResult await(Future<ScanResult> future, SearchClock clock, int done) {
        while (true) {
            try {
                return future.get(SearchClock.TELL_EVERY_MS, TimeUnit.MILLISECONDS);
            } catch (TimeoutException stillAtWork) {
                if (!clock.at(done)) {
                    stop.set(true);
                }
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
}
