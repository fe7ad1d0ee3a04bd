package loomwright.backfeed;

import java.util.concurrent.TimeUnit;
import loomwright.answer.OutOfTime;
import loomwright.answer.Progress;

/**
 * Tells how far a search is, a few times in a second, and says when its time is up. A search that is out of time tells what it
 * has found; so an {@link OutOfTime} of whoever watches ends the search, not the answer. For one thread.
 */
final class SearchClock {
    static final int TELL_EVERY_MS = 200;

    private final Progress progress;
    private final long all;
    private final long endNs;
    private long before;
    private long toldNs = System.nanoTime();
    private boolean expired;

    /**
     * Begins.
     *
     * @param all combinations there are to go through
     */
    SearchClock(Progress progress, int timeMs, long all) {
        this.progress = progress;
        this.all = all;
        this.endNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(timeMs);
    }

    /**
     * Is told how many combinations of the plan at hand are done.
     *
     * @return whether there is time left
     */
    boolean at(long done) {
        long now = System.nanoTime();
        expired |= now - endNs > 0;
        if (!expired && now - toldNs > TimeUnit.MILLISECONDS.toNanos(TELL_EVERY_MS)) {
            toldNs = now;
            tell(before + done);
        }
        return !expired;
    }

    private void tell(long done) {
        try {
            progress.at(Math.min(done, all), all);
        } catch (OutOfTime over) {
            expired = true;
        }
    }

    boolean isExpired() {
        return expired;
    }

    /** Is told that one plan is done; the next begins from nothing. */
    void finished(long combinations) {
        before += combinations;
        if (before >= all && !expired) {
            tell(all);
        }
    }
}
