package loomwright.list;

import loomwright.message.MessageCode;

/** What a row of readings may hold. */
enum AcceptedMeter implements MessageCode {
    SWITCH_POSITION,
    POINT,
    KNOWN_POINT,
    CONDITION,
    READING
}
