package loomwright.circuit;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import loomwright.answer.InputError;
import loomwright.answer.RejectedInput;

/**
 * A terminal of a part, written {@code part.terminal}.
 *
 * @param part id of the part
 * @param terminal its terminal
 */
public record TerminalRef(String part, String terminal) {

    public static final String FORM = Bounds.ID_FORM + "\\." + Bounds.TERMINAL_FORM;

    @JsonCreator
    public static TerminalRef parse(String text) {
        int dot = text.indexOf('.');
        if (dot >= 0) {
            String part = text.substring(0, dot);
            String terminal = text.substring(dot + 1);
            if (Bounds.isId(part) && Bounds.isTerminal(terminal)) {
                return new TerminalRef(part, terminal);
            }
        }
        throw new RejectedInput(new InputError(InputError.Code.MALFORMED, "", text, AcceptedPlan.TERMINAL.with()));
    }

    @JsonValue
    @Override
    public String toString() {
        return part + "." + terminal;
    }
}
