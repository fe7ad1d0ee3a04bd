package loomwright.operation;

import loomwright.message.MessageCode;

/** How a moved switch, or a point of the meter, is written. */
enum AcceptedMove implements MessageCode {
    MOVE,
    KEY_STEP,
    SWITCH,
    POSITION,
    POINT,
    POINT_OF_PLAN
}
