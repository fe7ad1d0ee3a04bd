package loomwright.list;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import loomwright.message.Message;
import loomwright.message.MessageCode;

/**
 * Something that cannot be guessed. The plan is made with the first choice meanwhile.
 *
 * @param message what is asked
 * @param about ids of the parts and wires whose answers depend on it
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
        WIRE_SIZE,
        LENGTH,
        LENGTH_UNIT,
        SIZE_UNIT,
        COLOUR,
        POSITIONS,
        WORKS_WHEN,
        MISSING_END,
        NO_OUTPUT,
        PART_WITHOUT_WIRE,
        ENGINE_STRAP,
        SETTING;

        private static final Set<Code> OF_CONNECTIONS = EnumSet.of(
                TERMINAL_WITH_TWO_MEANINGS,
                WHICH_TERMINAL,
                WHAT_PART,
                POSITIONS,
                MISSING_END,
                NO_OUTPUT,
                PART_WITHOUT_WIRE,
                ENGINE_STRAP);
    }

    public Question {
        about = List.copyOf(about);
        choices = List.copyOf(choices);
    }

    /** Whether what is connected to what depends on it, and not a figure only. */
    public boolean isOfConnections() {
        return message.code() instanceof Code code && Code.OF_CONNECTIONS.contains(code);
    }

    /** What was taken until it is answered. */
    public String taken() {
        return choices.isEmpty() ? "" : choices.get(0);
    }
}
