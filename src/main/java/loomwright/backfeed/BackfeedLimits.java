package loomwright.backfeed;

import loomwright.answer.InputErrors;

/**
 * How much work a search takes on.
 *
 * @param maxCombinations of switch and contact positions that are gone through; beyond that some switches are held as they are
 *     drawn: 1 to 4,194,304
 * @param solvedCombinations of these that are solved with all figures, for the checks of a review and to prove remedies: 1 to
 *     65,536
 * @param maxPaths ways of the current that are reported for one load: 1 to 100
 * @param maxTrials remedies that are tried for one load: 0 to 1,000
 * @param timeMs how long the search itself may take: 1 to 3,600,000 ms
 */
public record BackfeedLimits(int maxCombinations, int solvedCombinations, int maxPaths, int maxTrials, int timeMs) {
    public BackfeedLimits {
        new InputErrors()
                .range("/maxCombinations", maxCombinations, 1, 4_194_304)
                .range("/solvedCombinations", solvedCombinations, 1, 65_536)
                .range("/maxPaths", maxPaths, 1, 100)
                .range("/maxTrials", maxTrials, 0, 1_000)
                .range("/timeMs", timeMs, 1, 3_600_000)
                .reject();
    }

    /** For a picture, which shows none. */
    public BackfeedLimits withoutRemedies() {
        return new BackfeedLimits(maxCombinations, solvedCombinations, maxPaths, 0, timeMs);
    }

    public static BackfeedLimits defaults() {
        return new BackfeedLimits(262_144, 64, 6, 40, 20_000);
    }
}
