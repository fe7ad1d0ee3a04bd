package loomwright.operation;

import static loomwright.message.Arg.arg;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.answer.Accepted;
import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import org.jspecify.annotations.Nullable;

/**
 * What of a plan is to be solved, and how much of it is reported.
 *
 * @param after moves after which the plan is solved, in order; absent or empty: all steps of the plan as drawn
 * @param step the steps to tell; absent or empty: all of them
 * @param only the tables to tell; absent or empty: all of them
 * @param full whether to tell rows in which nothing flows, and steps that repeat an earlier one; false unless said
 */
public record SolutionOptions(List<String> after, Set<Step> step, Set<Rows> only, Boolean full) {
    /** The tables of a step. */
    public enum Rows {
        NODES,
        WIRES,
        PARTS,
        CONNECTORS
    }

    /** All steps of the plan as drawn, without idle rows. */
    public static final SolutionOptions USUAL = new SolutionOptions(List.of(), Set.of(), Set.of(), false);

    public SolutionOptions {
        after = orNone(after);
        step = orAll(step, Step.class);
        only = orAll(only, Rows.class);
        full = orFalse(full);
        new InputErrors()
                .check(
                        after.isEmpty() || step.size() == Step.values().length,
                        InputError.Code.CONTRADICTION,
                        "/step",
                        null,
                        Accepted.NOT_BOTH,
                        arg("first", "step"),
                        arg("second", "after"))
                .reject();
    }

    private static List<String> orNone(@Nullable List<String> after) {
        return after == null ? List.of() : List.copyOf(after);
    }

    private static <E extends Enum<E>> Set<E> orAll(@Nullable Set<E> chosen, Class<E> of) {
        return chosen == null || chosen.isEmpty() ? EnumSet.allOf(of) : EnumSet.copyOf(chosen);
    }

    private static Boolean orFalse(@Nullable Boolean value) {
        return value != null && value;
    }

    /** The last of the steps to tell; what comes after it has no bearing on them. */
    Step lastStep() {
        return Collections.max(step);
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
