package loomwright.circuit;

import java.util.Map;
import loomwright.message.MessageCode;

/** What a plan document accepts where a value does not fit. */
public enum AcceptedPlan implements MessageCode {
    ID,
    TERMINAL_NAME,
    TERMINAL,
    COLOUR,
    CONDITION_OF,
    SOURCE,
    WITHIN_SYSTEM,
    OTHER_END,
    PART_OF_KIND,
    POSITION_OF,
    EARTH_POINTS,
    EXISTING_TERMINAL,
    MORE_WIRES,
    TERMINAL_OF,
    UNUSED_ID,
    NOT_MOMENTARY,
    NO_POSITION,
    JOINED_TERMINALS,
    OHMS_OF_WORN;

    /** How a text of a plan is written, by the pattern that the contract states. */
    public static Map<String, MessageCode> forms() {
        return Map.of(
                "^" + Bounds.ID_FORM + "$", ID,
                "^" + Bounds.TERMINAL_FORM + "$", TERMINAL_NAME,
                "^" + TerminalRef.FORM + "$", TERMINAL,
                "^" + Wire.COLOUR_FORM + "$", COLOUR);
    }

    /** The lists in which an id stands once. */
    enum Among implements MessageCode {
        WIRES,
        PARTS,
        PARTS_AND_WIRES,
        CONNECTORS,
        HALVES
    }
}
