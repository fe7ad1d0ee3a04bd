package loomwright.diagnosis;

import loomwright.message.MessageCode;

/** What a reading, or a place out of reach, may be. */
enum AcceptedReading implements MessageCode {
    PART_OR_TERMINAL,
    NO_LEAD,
    TRUE_OR_NOTHING,
    ONLY_KEY_OFF,
    CONSUMER,
    FREE_SWITCH,
    POSITION
}
