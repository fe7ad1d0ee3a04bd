package loomwright.backfeed;

import loomwright.answer.InputErrors;

/**
 * How much work a search takes on.
 *
 * @param maxCombinations of switch and contact positions: 1 to 65,536
 * @param maxPaths ways of the current that are told for one load: 1 to 100
 * @param maxTrials remedies that are tried for one load: 1 to 1,000
 */
public record BackfeedLimits(int maxCombinations, int maxPaths, int maxTrials) {
    public BackfeedLimits {
        new InputErrors()
                .range("/maxCombinations", maxCombinations, 1, 65_536)
                .range("/maxPaths", maxPaths, 1, 100)
                .range("/maxTrials", maxTrials, 1, 1_000)
                .reject();
    }

    public static BackfeedLimits defaults() {
        return new BackfeedLimits(64, 6, 40);
    }
}
