package loomwright.operation;

import static loomwright.message.Arg.arg;

import loomwright.answer.InputError;
import loomwright.answer.InputErrors;
import loomwright.answer.RejectedInput;
import loomwright.circuit.Plan;
import loomwright.circuit.TerminalRef;
import org.jspecify.annotations.Nullable;

/**
 * A place where a meter's lead can be put.
 *
 * @param terminal a terminal of the plan; absent for bare metal of the chassis
 */
public record Point(@Nullable TerminalRef terminal) {
    /** The word for the chassis. */
    public static final String EARTH_WORD = "earth";

    public static final Point EARTH = new Point(null);

    /**
     * Reads {@code part.terminal} or {@code earth}.
     *
     * @throws RejectedInput MALFORMED if it is neither
     */
    public static Point parse(String text) {
        if (text.equals(EARTH_WORD)) {
            return EARTH;
        }
        try {
            return new Point(TerminalRef.parse(text));
        } catch (RejectedInput rejected) {
            InputError fault = rejected.faults().get(0);
            throw new RejectedInput(
                    new InputError(fault.code(), "", text, AcceptedMove.POINT.with(arg("earth", EARTH_WORD))));
        }
    }

    /** Notes a fault if the plan has no such terminal. */
    public InputErrors check(Plan plan, String pointer, InputErrors faults) {
        TerminalRef ref = terminal;
        return ref == null
                ? faults
                : faults.check(
                        plan.findPart(ref.part())
                                .map(p -> p.terminals().contains(ref.terminal()))
                                .orElse(false),
                        InputError.Code.UNKNOWN_REFERENCE,
                        pointer,
                        ref,
                        AcceptedMove.POINT_OF_PLAN,
                        arg("earth", EARTH_WORD));
    }

    @Override
    public String toString() {
        return terminal == null ? EARTH_WORD : terminal.toString();
    }
}
