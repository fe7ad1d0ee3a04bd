package loomwright.drawing.diagram;

import loomwright.message.MessageCode;

/** What stands on diagrams besides names and figures. */
public enum DiagramText implements MessageCode {
    /** What a wire is. */
    WIRE_WORDS,
    /** What it does; so the next two. */
    WIRE_LIVE,
    WIRE_DEAD,
    WIRE_CARRIES,
    /** What a terminal shows. */
    TERMINAL_FLOATING,
    /** A part, for a reader who does not see it; so the next. */
    PART_WORDS,
    CONNECTOR_WORDS,
    /** Meaning of a line; so the next eleven. */
    KEY_LIVE,
    KEY_RETURN,
    KEY_DEAD,
    KEY_BACKFEED,
    KEY_ADDED,
    KEY_REMOVED,
    KEY_CHANGED,
    KEY_CURRENT,
    KEY_REVERSED,
    KEY_COLOURS,
    KEY_VOLTS,
    /** Above the cautions. */
    CAUTIONS_HEAD,
    /** One mark of the legend. */
    MARK_LINE,
    /** Title of two plans as one. */
    COMPARISON_TITLE,
    /** The line under the title: the step and its supply. */
    MOMENT,
    /** In the same line: where a switch or contact stands. */
    POSITION,
    /** For a reader who does not see the picture. */
    DESCRIPTION,
    /** The same, of a picture of the wiring alone. */
    WIRING_DESCRIPTION,
    /** Title of the meaning of lines, where it is a picture of its own. */
    KEYS_TITLE,
    /** The same, of what is marked. */
    DESCRIPTION_MARKS,
    /** Title of one sheet of several. */
    SHEET_TITLE,
    /** Beside a part: the other sheets that it is on. */
    SHEET_REFERENCE
}
