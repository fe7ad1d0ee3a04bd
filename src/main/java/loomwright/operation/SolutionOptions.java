package loomwright.operation;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What of a plan is to be solved.
 *
 * @param after moves after which the plan is solved, in order; absent or empty: all steps of the plan as drawn
 */
public record SolutionOptions(List<String> after) {
    /** All steps of the plan as drawn. */
    public static final SolutionOptions USUAL = new SolutionOptions(List.of());

    public SolutionOptions {
        after = orNone(after);
    }

    private static List<String> orNone(@Nullable List<String> after) {
        return after == null ? List.of() : List.copyOf(after);
    }

    /**
     * The moves.
     *
     * @throws loomwright.answer.RejectedInput with the place of each that cannot be read
     */
    List<Move> moves() {
        return Move.parse(after);
    }
}
