package loomwright.bulk;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Callable;
import java.util.concurrent.Executor;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/** Threads shared by several runs: whoever has work waiting gets one piece of it done in turn. */
public final class FairExecutor {
    private static final int KEEP_IDLE_S = 10;

    private final Executor threads;
    private final Deque<Share> ring = new ArrayDeque<>();

    /**
     * Shares threads.
     *
     * @param threads is asked once for each piece of work; which one it then does is decided here
     */
    public FairExecutor(Executor threads) {
        this.threads = threads;
    }

    /** So many threads of its own, that end when they have nothing to do. */
    public static FairExecutor of(int threads) {
        ThreadPoolExecutor pool = new ThreadPoolExecutor(
                threads, threads, KEEP_IDLE_S, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
                    Thread thread = new Thread(work, "bulk");
                    thread.setDaemon(true);
                    return thread;
                });
        pool.allowCoreThreadTimeOut(true);
        return new FairExecutor(pool);
    }

    /** A share for one run. */
    public Share share() {
        return new Share();
    }

    /** How many pieces of work wait for a thread. */
    public int waiting() {
        synchronized (ring) {
            return ring.stream().mapToInt(share -> share.waiting.size()).sum();
        }
    }

    private void doNext() {
        FutureTask<?> task;
        synchronized (ring) {
            Share share = ring.poll();
            if (share == null) {
                return;
            }
            task = share.waiting.remove();
            if (!share.waiting.isEmpty()) {
                ring.add(share);
            }
        }
        task.run();
    }

    /** What one run has waiting. */
    public final class Share {
        private final Deque<FutureTask<?>> waiting = new ArrayDeque<>();

        private Share() {}

        <T> Future<T> submit(Callable<T> work) {
            FutureTask<T> task = new FutureTask<>(work);
            synchronized (ring) {
                if (waiting.isEmpty()) {
                    ring.add(this);
                }
                waiting.add(task);
            }
            threads.execute(FairExecutor.this::doNext);
            return task;
        }

        /** Forgets what is waiting. */
        void clear() {
            synchronized (ring) {
                waiting.clear();
                ring.remove(this);
            }
        }
    }
}
