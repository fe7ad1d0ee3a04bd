package loomwright.answer;

import java.util.concurrent.TimeUnit;

/** A progress that ends the calculation when its time is up. The time begins when this is made. */
public final class Deadline implements Progress {
    private final int timeMs;
    private final long endNs;
    private final Progress told;

    /**
     * Begins.
     *
     * @param timeMs how long the calculation may take, in ms
     * @param told hears of the progress meanwhile
     */
    public Deadline(int timeMs, Progress told) {
        this.timeMs = timeMs;
        this.endNs = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(timeMs);
        this.told = told;
    }

    /** {@inheritDoc}
     *
     * @throws OutOfTime if the time is up
     */
    @Override
    public void at(long done, long of) {
        if (isOver()) {
            throw OutOfTime.afterMs(timeMs, done, of);
        }
        told.at(done, of);
    }

    /** {@inheritDoc}
     *
     * @throws OutOfTime if the time is up
     */
    @Override
    public void check() {
        told.check();
        if (isOver()) {
            throw OutOfTime.afterMs(timeMs);
        }
    }

    @Override
    public long leftMs() {
        return Math.min(told.leftMs(), TimeUnit.NANOSECONDS.toMillis(endNs - System.nanoTime()));
    }

    private boolean isOver() {
        return System.nanoTime() - endNs > 0;
    }
}
