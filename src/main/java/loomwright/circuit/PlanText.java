package loomwright.circuit;

import loomwright.message.MessageCode;

/** How a sentence names what is not a part or a wire of a plan. */
enum PlanText implements MessageCode {
    TERMINAL
}
