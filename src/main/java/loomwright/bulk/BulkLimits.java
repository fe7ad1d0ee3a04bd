package loomwright.bulk;

import loomwright.answer.InputErrors;

/**
 * How much bulk work is taken on.
 *
 * @param threads that work on the lines of all runs together
 * @param windowLines most lines of one run that are read and not yet answered
 * @param windowBytes the same in bytes; one line more than this may be held
 * @param runs most runs at once
 * @param silenceMs how long a run may wait for a line, or for its reader, in ms
 */
public record BulkLimits(int threads, int windowLines, int windowBytes, int runs, int silenceMs) {
    private static final int WINDOW_LINES_PER_THREAD = 16;

    public BulkLimits {
        new InputErrors()
                .range("/threads", threads, 1, 1_000)
                .range("/windowLines", windowLines, 1, 100_000)
                .range("/windowBytes", windowBytes, 1, 1_000_000_000)
                .range("/runs", runs, 1, 1_000)
                .range("/silenceMs", silenceMs, 100, 86_400_000)
                .reject();
    }

    /** One thread for each processor. */
    public static BulkLimits defaults() {
        int processors = Runtime.getRuntime().availableProcessors();
        return new BulkLimits(processors, WINDOW_LINES_PER_THREAD * processors, 16_000_000, 8, 300_000);
    }
}
