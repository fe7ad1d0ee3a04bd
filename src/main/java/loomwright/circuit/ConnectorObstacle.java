package loomwright.circuit;

import loomwright.message.MessageCode;

/** Why two connector halves cannot be pushed together. */
enum ConnectorObstacle implements MessageCode {
    OTHER_FORM,
    OTHER_WIDTH,
    SAME_GENDER,
    OTHER_WAYS
}
