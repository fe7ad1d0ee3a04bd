package loomwright.drawing.sheet;

import loomwright.message.MessageCode;

/** What the bench sheet says to a mechanic. */
enum WorkText implements MessageCode {
    // The steps of the work.
    DISCONNECT_BATTERY,
    TAKE_OUT_WIRE,
    TAKE_OUT_PART,
    FIT_PART,
    ALTER_PART,
    EXCHANGE_PART,
    MOVE_WIRE_END,
    MOVE_WIRE,
    REPLACE_WIRE,
    REPLACE_MOVED_WIRE,
    ALTER_WIRE,
    RUN_WIRE,
    JOIN_CONNECTOR,
    PART_CONNECTOR,
    ALTER_CONNECTOR,
    LOOSE_END,
    CHECK_JOINTS,
    MEASURE_OHMS,
    RECONNECT_BATTERY,
    MEASURE_VOLTS,
    NOTHING_TO_DO,
    // Things in them.
    WIRE,
    WIRE_IN_PLACE,
    NEW_WIRE,
    TERMINAL,
    EARTHED_AT,
    // Beside a lead of the meter.
    WIRES_THERE,
    // What to buy.
    WIRE_TO_BUY,
    FORMED_TERMINALS_TO_BUY,
    TERMINALS_TO_BUY,
    TERMINALS_AT,
    PARTS_TO_BUY,
    SLACK,
    // Heads and notes.
    PICTURE_CAPTION,
    NOT_IN_PICTURE,
    FINDINGS_LEFT,
    FINDING_LEFT,
    FINDINGS_MORE,
    RECORD_HAS_MORE
}
