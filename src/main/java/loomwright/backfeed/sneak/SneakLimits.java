package loomwright.backfeed.sneak;

import loomwright.answer.InputErrors;

/**
 * How much work an exhaustive search takes on.
 *
 * @param maxCombinations of switch and contact positions: 1 to 4,194,304
 * @param maxCases smallest combinations that are followed in full: 1 to 100,000
 * @param threads that work on searches, all together: 1 to 64
 * @param timeMs how long it may take: 1 to 3,600,000 ms
 */
public record SneakLimits(int maxCombinations, int maxCases, int threads, int timeMs) {
    public SneakLimits {
        new InputErrors()
                .range("/maxCombinations", maxCombinations, 1, 4_194_304)
                .range("/maxCases", maxCases, 1, 100_000)
                .range("/threads", threads, 1, 64)
                .range("/timeMs", timeMs, 1, 3_600_000)
                .reject();
    }

    public static SneakLimits defaults() {
        return new SneakLimits(262_144, 400, 2, 60_000);
    }
}
