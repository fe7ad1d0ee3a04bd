package loomwright.network;

import loomwright.answer.InputErrors;

/**
 * How much work the solver takes on.
 *
 * @param maxNodes 1 to 1,000,000
 * @param maxElements 1 to 5,000,000
 * @param maxIterations Newton steps, and changes of state of one-way elements, per solution: 10 to 100,000
 */
public record NetworkLimits(int maxNodes, int maxElements, int maxIterations) {
    public NetworkLimits {
        new InputErrors()
                .range("/maxNodes", maxNodes, 1, 1_000_000)
                .range("/maxElements", maxElements, 1, 5_000_000)
                .range("/maxIterations", maxIterations, 10, 100_000)
                .reject();
    }

    public static NetworkLimits defaults() {
        return new NetworkLimits(20_000, 60_000, 400);
    }
}
