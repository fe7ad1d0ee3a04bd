package loomwright.mistakes;

import loomwright.answer.InputErrors;

/**
 * How much work a list of mistakes takes on.
 *
 * @param maxSolutions mistakes times settings of the free switches: 1 to 100,000
 */
public record MistakesLimits(int maxSolutions) {
    public MistakesLimits {
        new InputErrors().range("/maxSolutions", maxSolutions, 1, 100_000).reject();
    }

    public static MistakesLimits defaults() {
        return new MistakesLimits(2_000);
    }
}
