package loomwright.comparison;

import loomwright.message.MessageCode;

/** What to do about something that leads nowhere. */
enum LeftoverRemedy implements MessageCode {
    DISCONNECT_FED_END,
    REMOVE_OR_TIE_BACK,
    REMOVE_OR_KEEP_WIRE,
    REMOVE_PART_AND_FEED,
    REMOVE_OR_KEEP_PART
}
