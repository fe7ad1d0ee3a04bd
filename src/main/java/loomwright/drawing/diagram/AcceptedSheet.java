package loomwright.drawing.diagram;

import loomwright.message.MessageCode;

/** Which sheet of a plan can be asked for. */
enum AcceptedSheet implements MessageCode {
    NONE,
    OF_PLAN
}
