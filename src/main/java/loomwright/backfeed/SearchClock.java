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
    private static final long LONGEST_MS = 3_600_000;

    private final Progress progress;
    private final long all;
    private final long endNs;
    private long before;
    private long toldNs = System.nanoTime();
    private boolean expired;

    /**
     * Begins.
     *
     * @param timeMs how long the search may take, and no longer than whoever watches gives it
     * @param all combinations there are to go through
     */
    SearchClock(Progress progress, long timeMs, long all) {
        this.progress = progress;
        this.all = all;
        this.endNs = System.nanoTime()
                + TimeUnit.MILLISECONDS.toNanos(Math.max(0, Math.min(Math.min(timeMs, LONGEST_MS), progress.leftMs())));
    }

    /**
     * Takes note of how many combinations of the plan at hand are done.
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

    /** How long the search may still take, in ms. */
    long leftMs() {
        long leftMs = TimeUnit.NANOSECONDS.toMillis(endNs - System.nanoTime());
        return expired ? 0 : Math.max(0, leftMs);
    }

    boolean isExpired() {
        return expired;
    }

    /** Takes note that one plan is done; the next begins from nothing. */
    void finished(long combinations) {
        before += combinations;
        if (before >= all && !expired) {
            tell(all);
        }
    }
}
