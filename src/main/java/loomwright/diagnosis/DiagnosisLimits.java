package loomwright.diagnosis;

import loomwright.answer.InputErrors;

/**
 * How much work a diagnosis takes on.
 *
 * @param maxSolutions of the plan with a single fault in it: 1 to 1,000,000
 * @param maxPairs of faults that are tried: 0 to 100,000
 * @param timeMs how long it may take: 1 to 3,600,000 ms
 */
public record DiagnosisLimits(int maxSolutions, int maxPairs, int timeMs) {
    public DiagnosisLimits {
        new InputErrors()
                .range("/maxSolutions", maxSolutions, 1, 1_000_000)
                .range("/maxPairs", maxPairs, 0, 100_000)
                .range("/timeMs", timeMs, 1, 3_600_000)
                .reject();
    }

    /** The same amount of work in another time. */
    public DiagnosisLimits within(int otherTimeMs) {
        return new DiagnosisLimits(maxSolutions, maxPairs, otherTimeMs);
    }

    public static DiagnosisLimits defaults() {
        return new DiagnosisLimits(40_000, 800, 60_000);
    }
}
