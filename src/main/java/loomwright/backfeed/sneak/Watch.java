package loomwright.backfeed.sneak;

import java.util.concurrent.TimeUnit;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;

/** Tells how far a search is, a few times in a second, and ends it when its time is up. For one thread. */
final class Watch {
    static final int TELL_EVERY_MS = 200;

    private final Progress progress;
    private final int timeMs;
    private final long all;
    private final long endNs;
    private long before;
    private long toldNs = System.nanoTime();

    /**
     * Begins to watch.
     *
     * @param all combinations there are to go through
     */
    Watch(Progress progress, int timeMs, long all) {
        this.progress = progress;
        this.timeMs = timeMs;
        this.all = all;
        this.endNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(timeMs);
    }

    /**
     * Is told how many combinations of the plan at hand are done.
     *
     * @throws OutOfTime if the search has taken too long
     */
    void at(long done) {
        long now = System.nanoTime();
        if (now - endNs > 0) {
            throw new OutOfTime("A search for sneak paths may take " + timeMs / 1000.0 + " s; " + (before + done)
                    + " of " + all + " combinations were done");
        }
        if (now - toldNs > TimeUnit.MILLISECONDS.toNanos(TELL_EVERY_MS)) {
            toldNs = now;
            progress.at(before + done, all);
        }
    }

    /** Is told that one plan is done; the next begins from nothing. */
    void finished(long combinations) {
        before += combinations;
        if (before >= all) {
            progress.at(all, all);
        }
    }
}
