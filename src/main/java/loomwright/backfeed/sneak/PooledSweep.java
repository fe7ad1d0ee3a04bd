package loomwright.backfeed.sneak;

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
final class PooledSweep {
    private static final int BATCH = 256;

    private final ExecutorService pool;
    private final int batchesAtOnce;
    private final Supplier<SweepTask> tasks;
    private final Queue<SweepTask> idle = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean stop = new AtomicBoolean();

    /**
     * Prepares a sweep; it is run once.
     *
     * @param tasks makes the work space of one thread
     */
    PooledSweep(ExecutorService pool, int batchesAtOnce, Supplier<SweepTask> tasks) {
        this.pool = pool;
        this.batchesAtOnce = batchesAtOnce;
        this.tasks = tasks;
    }

    /** Goes through the settings; ends when the watch throws. */
    Shown run(Settings settings, Shown all, Watch watch) {
        Deque<Future<Shown>> running = new ArrayDeque<>();
        int next = 0;
        int done = 0;
        try {
            while (done < settings.count()) {
                while (next < settings.count() && running.size() < batchesAtOnce) {
                    int from = next;
                    int to = Math.min(settings.count(), from + BATCH);
                    running.add(pool.submit(() -> batch(from, to)));
                    next = to;
                }
                all.addAll(await(running.remove(), watch, done));
                done = Math.min(settings.count(), done + BATCH);
                watch.at(done);
            }
        } finally {
            stop.set(true);
            running.forEach(future -> future.cancel(false));
        }
        return all;
    }

    private Shown batch(int from, int to) {
        SweepTask ready = idle.poll();
        SweepTask task = ready == null ? tasks.get() : ready;
        Shown shown = task.run(from, to, stop::get);
        idle.add(task);
        return shown;
    }

    private static Shown await(Future<Shown> future, Watch watch, int done) {
        while (true) {
            try {
                return future.get(Watch.TELL_EVERY_MS, TimeUnit.MILLISECONDS);
            } catch (TimeoutException stillAtWork) {
                watch.at(done);
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
