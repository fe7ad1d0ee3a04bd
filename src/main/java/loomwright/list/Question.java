package loomwright.list;

import java.util.List;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/**
 * Something that cannot be guessed. The plan is made with the first choice meanwhile.
 *
 * @param message what is asked
 * @param about ids of the parts and wires whose answers hang on it
 * @param at where the answer belongs
 * @param written what stands there; empty for nothing
 * @param choices what may be answered, the one taken meanwhile first
 */
public record Question(Message message, List<String> about, CellRef at, String written, List<String> choices) {

    /** The kinds of questions. */
    public enum Code implements MessageCode {
        TERMINAL_WITH_TWO_MEANINGS,
        WHICH_TERMINAL,
        WHAT_PART,
        WHAT_VALUE,
        WIRE_VALUE,
        FUSE_RATING,
        FUSE_MARKING,
        WHAT_SIZE,
        LENGTH,
        LENGTH_UNIT,
        COLOUR,
        POSITIONS,
        WORKS_WHEN,
        MISSING_END,
        NO_OUTPUT,
        SETTING
    }

    public Question {
        about = List.copyOf(about);
        choices = List.copyOf(choices);
    }

    /** What was taken until it is answered. */
    public String taken() {
        return choices.isEmpty() ? "" : choices.get(0);
    }
}
